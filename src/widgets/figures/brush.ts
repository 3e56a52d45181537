/**
 * A canvas for a picture in motion: the same marks as in SVG, in the looks that the style sheet gives them, without
 * a text or an element for each. It takes over the surfaces alone; words, handles and measures stay in the picture.
 */
import type { Light } from '../../drawing/pen/lit.ts'
import { darkOf, shadowOf } from '../../drawing/pen/lit.ts'
import type { ArtMark, Fade, InkShape, Mark, Matrix, PathMark, Point } from '../../drawing/pen/marks.ts'
import {
  classOf,
  FADE_STOPS,
  GLOW_STOPS,
  pictureMatrix,
  sheetClass,
  styleOf,
} from '../../drawing/pen/svg-values.ts'
import type { Size } from '../../drawing/view/camera.ts'
import { FULL, paceAfter } from './pace.ts'

/** Paints marks of an SVG picture under it, where they stand in it; with none the canvas is put away. */
export type Brush = (picture: SVGSVGElement, marks: readonly Mark[]) => void

/** How a path is drawn. Colours as the canvas takes them. */
interface Look {
  readonly fill: string
  readonly fillOpacity: number
  readonly stroke: string
  readonly strokeOpacity: number
  readonly width: number
  readonly dashes: readonly number[]
  readonly cap: CanvasLineCap
  readonly join: CanvasLineJoin
  readonly blend: GlobalCompositeOperation
  readonly shown: boolean
}

/** The order of the canvas is that of SVG. */
type Sixfold = [number, number, number, number, number, number]

type Colour = readonly [red: number, green: number, blue: number]

/** What the style sheet says of a picture's marks, asked once for each class of them. */
interface Looks {
  /**
   * Puts into the page what stands for marks that were not there yet: before any of them is asked for, since each
   * asking after such a change lets the browser work its styles out anew.
   */
  meet(marks: readonly Mark[]): void
  /** Of a mark beside the surfaces. */
  of(mark: PathMark): Look
  /** Of what lies on a surface. */
  on(sheet: PathMark): OnSheet
  /** What a gradient is made of, by kind. */
  gradient(kind: Fade['kind']): CanvasGradient
  readonly shade: Colour
  readonly light: Light
  end(): void
}

interface OnSheet {
  /** Its paper under full light. */
  readonly paper: Colour
  of(mark: PathMark): Look
}

const SVG = 'http://www.w3.org/2000/svg'

const BARE: PathMark = { mark: 'path', runs: [], closed: true, role: 'bare' }

/** One of each kind of mark that may lie on a surface. */
const ON_SHEET: readonly PathMark[] = [
  BARE,
  ...(['shade', 'shadow', 'fade', 'glow'] as const).map((role) => ({ ...BARE, role })),
  ...(['dip', 'brow', 'edge'] as const).map((role) => ({ ...BARE, role, closed: false })),
]

const FACES = ['front', 'back'] as const

/** Any colour of a style sheet in red, green and blue of 255. */
function colours(): (name: string) => Colour {
  const dot = new OffscreenCanvas(1, 1).getContext('2d', { willReadFrequently: true })
  const known = new Map<string, Colour>()
  return (name) => {
    let colour = known.get(name)
    if (!colour && dot) {
      dot.fillStyle = name
      dot.fillRect(0, 0, 1, 1)
      const [red = 0, green = 0, blue = 0] = dot.getImageData(0, 0, 1, 1).data
      colour = [red, green, blue]
      known.set(name, colour)
    }
    return colour ?? [0, 0, 0]
  }
}

const between = (a: Colour, b: Colour, part: number): string =>
  `rgb(${a.map((from, k) => Math.round(from + ((b[k] as number) - from) * part)).join(' ')})`

const number = (text: string, otherwise: number): number => {
  const value = Number.parseFloat(text)
  return Number.isNaN(value) ? otherwise : value
}

function looksOf(picture: SVGSVGElement, context: CanvasRenderingContext2D, marks: readonly Mark[]): Looks {
  const colour = colours()
  // Beside the picture, in the same place of the page: what a style sheet says of one it says of the other.
  const bench = document.createElementNS(SVG, 'svg')
  bench.setAttribute('class', picture.getAttribute('class') ?? '')
  bench.setAttribute('style', 'position:absolute;width:0;height:0;visibility:hidden')
  bench.setAttribute('aria-hidden', 'true')
  picture.after(bench)
  const put = (parent: Element, tag: string, attributes: Readonly<Record<string, string | undefined>>) => {
    const element = document.createElementNS(SVG, tag)
    for (const [name, value] of Object.entries(attributes)) if (value) element.setAttribute(name, value)
    parent.append(element)
    return element
  }
  const read = (element: Element): Look => {
    const style = getComputedStyle(element)
    return {
      fill: style.fill,
      fillOpacity: number(style.fillOpacity, 1),
      stroke: style.stroke,
      strokeOpacity: number(style.strokeOpacity, 1),
      width: number(style.strokeWidth, 1),
      dashes:
        style.strokeDasharray === 'none' ? [] : style.strokeDasharray.split(/[ ,]+/).map((n) => number(n, 0)),
      cap: style.strokeLinecap as CanvasLineCap,
      join: style.strokeLinejoin as CanvasLineJoin,
      blend:
        style.mixBlendMode === 'normal' ? 'source-over' : (style.mixBlendMode as GlobalCompositeOperation),
      shown: style.display !== 'none',
    }
  }
  const stand = (parent: Element, mark: PathMark): (() => Look) => {
    const element = put(parent, 'path', {
      class: classOf(mark),
      style: styleOf(mark),
      'data-of': mark.of,
    })
    let look: Look | null = null
    return () => (look ??= read(element))
  }
  const beside = new Map<string, () => Look>()
  const keyBeside = (mark: PathMark) => `${classOf(mark)} ${mark.paint?.paper ?? ''} ${mark.of === 'table'}`
  const sheets = new Map<string, () => OnSheet>()
  const keyOn = (sheet: PathMark) => `${sheetClass(sheet)} ${sheet.paint?.paper ?? ''}`
  const standSheet = (sheet: PathMark): (() => OnSheet) => {
    const element = put(bench, 'g', { class: sheetClass(sheet), style: styleOf(sheet) })
    // On one surface all that has one role looks the same.
    const roles = new Map(ON_SHEET.map((mark) => [mark.role, stand(element, mark)]))
    const of = (mark: PathMark): Look => {
      const look = roles.get(mark.role) ?? stand(element, mark)
      roles.set(mark.role, look)
      return look()
    }
    let made: OnSheet | null = null
    return () => (made ??= { paper: colour(of(BARE).fill), of })
  }
  const meet: Looks['meet'] = (marks) => {
    for (const mark of marks) {
      if (mark.mark !== 'path') continue
      if (!mark.on) {
        const key = keyBeside(mark)
        if (!beside.has(key)) beside.set(key, stand(bench, mark))
        continue
      }
      const { paint } = mark
      if (sheets.has(keyOn(mark))) continue
      // Its other face comes to sight in some frame to come.
      for (const sheet of paint ? FACES.map((face) => ({ ...mark, paint: { ...paint, face } })) : [mark])
        sheets.set(keyOn(sheet), standSheet(sheet))
    }
  }
  const stop = (className?: string) => put(put(bench, 'linearGradient', { class: className }), 'stop', {})
  const [hollow, flame] = [stop(), stop('glow')]
  const shade = stand(bench, { ...BARE, role: 'shade' })
  const thinning = (gradient: CanvasGradient, from: Element, stops: typeof GLOW_STOPS): CanvasGradient => {
    const dark = colour(getComputedStyle(from).stopColor).join(' ')
    for (const [at, left] of stops) gradient.addColorStop(at, `rgb(${dark} / ${left})`)
    return gradient
  }
  const round = () => context.createRadialGradient(0, 0, 0, 0, 0, 1)
  meet(marks)
  // All stands: from here on styles are read.
  const gradients = {
    band: thinning(context.createLinearGradient(0, 0, 1, 0), hollow, FADE_STOPS),
    round: thinning(round(), hollow, FADE_STOPS),
    glow: thinning(round(), flame, GLOW_STOPS),
  }
  const own = getComputedStyle(bench)
  const air = number(own.getPropertyValue('--air'), 0.65)
  const lamp = number(own.getPropertyValue('--lamp'), 0)
  return {
    meet,
    of: (mark) => (beside.get(keyBeside(mark)) as () => Look)(),
    on: (sheet) => (sheets.get(keyOn(sheet)) as () => OnSheet)(),
    gradient: (kind) => gradients[kind === 'corner' ? 'round' : kind],
    shade: colour(shade().fill),
    light: { air, lamp },
    end: () => bench.remove(),
  }
}

/** A canvas under a picture. */
interface Easel {
  readonly picture: SVGSVGElement
  readonly canvas: HTMLCanvasElement
  readonly context: CanvasRenderingContext2D
  readonly small: OffscreenCanvasRenderingContext2D | null
  readonly images: Map<string, SVGImageElement>
  looks: Looks | null
}

type Context = CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D

function trace(context: Context, { runs, closed }: PathMark): void {
  context.beginPath()
  for (const run of runs) {
    // Two thousand points a frame: by number, since taking a pair apart costs more than the line.
    const start = run[0]
    if (start) context.moveTo(start[0], start[1])
    for (let k = 1; k < run.length; k++) {
      const at = run[k] as Point
      context.lineTo(at[0], at[1])
    }
    if (closed) context.closePath()
  }
}

/** A mark as its class says; `alpha` in place of the class's own opacity where light has a say in it. */
function drawPath(context: Context, mark: PathMark, look: Look, alpha = look.fillOpacity): void {
  if (!look.shown) return
  trace(context, mark)
  context.globalCompositeOperation = look.blend
  if (look.fill !== 'none') {
    context.globalAlpha = alpha
    context.fillStyle = look.fill
    context.fill()
  }
  if (look.stroke !== 'none') {
    context.globalAlpha = look.strokeOpacity
    context.strokeStyle = look.stroke
    context.lineWidth = look.width
    context.lineCap = look.cap
    context.lineJoin = look.join
    context.setLineDash(look.dashes as number[])
    context.stroke()
  }
  context.globalAlpha = 1
  context.globalCompositeOperation = 'source-over'
}

/** What a fade covers of its own frame: left, top, width, height. */
const COVERED: Readonly<Record<Fade['kind'], readonly [number, number, number, number]>> = {
  band: [0, 0, 1, 1],
  corner: [0, 0, 1, 1],
  round: [-1, 0, 2, 1],
  glow: [-1, -1, 2, 2],
}

function drawFade(
  context: CanvasRenderingContext2D,
  mark: PathMark,
  fade: Fade,
  look: Look,
  fill: CanvasGradient,
) {
  if (!look.shown) return
  context.save()
  context.transform(...(fade.matrix as Sixfold))
  context.globalCompositeOperation = look.blend
  context.globalAlpha = mark.strength ?? 1
  context.fillStyle = fill
  context.fillRect(...(COVERED[fade.kind] as [number, number, number, number]))
  context.restore()
}

/** Shapes in a frame of their own are the same in every frame. */
const shapes = new WeakMap<InkShape, Path2D>()

function shapePath(shape: InkShape): Path2D {
  const path = new Path2D()
  for (const run of shape.runs) {
    const [start] = run
    if (!start) continue
    path.moveTo(start[0], start[1])
    if (shape.bends)
      for (let k = 1; k + 2 < run.length; k += 3) {
        const [a, b, c] = [run[k], run[k + 1], run[k + 2]] as [Point, Point, Point]
        path.bezierCurveTo(a[0], a[1], b[0], b[1], c[0], c[1])
      }
    else for (let k = 1; k < run.length; k++) path.lineTo((run[k] as Point)[0], (run[k] as Point)[1])
    if (shape.closed) path.closePath()
  }
  return path
}

function drawShape(context: Context, shape: InkShape, isFramed: boolean): void {
  const path = (isFramed ? shapes.get(shape) : undefined) ?? shapePath(shape)
  if (isFramed) shapes.set(shape, path)
  if (shape.fill !== null) {
    context.fillStyle = shape.fill
    context.fill(path)
  }
  if (shape.line !== null) {
    context.strokeStyle = shape.line
    context.lineWidth = shape.width
    context.stroke(path)
  }
}

/** A picture that the SVG picture holds already. */
function drawImage({ context, picture, images }: Easel, shape: InkShape): void {
  const { picture: address = '', runs } = shape
  let image = images.get(address)
  if (!image) {
    image = [...picture.querySelectorAll('image')].find((one) => one.getAttribute('href') === address)
    if (!image) return
    images.set(address, image)
  }
  context.save()
  context.transform(...(pictureMatrix(runs[0] ?? []) as Sixfold))
  context.drawImage(image, 0, 0, 1, 1)
  context.restore()
}

function drawArt(easel: Easel, art: ArtMark): void {
  const { context } = easel
  const turned = (matrix: Matrix | null | undefined) => {
    if (matrix) context.transform(...(matrix as Sixfold))
  }
  context.save()
  turned(art.matrix)
  context.lineCap = 'round'
  context.lineJoin = 'round'
  context.setLineDash([])
  art.shapes.forEach((shape, k) => {
    const own = art.own?.[k]
    if (own) {
      context.save()
      turned(own)
    }
    if (shape.picture === undefined) drawShape(context, shape, Boolean(own ?? art.matrix))
    else drawImage(easel, shape)
    if (own) context.restore()
  })
  context.restore()
}

/** A surface and what lies on it, clipped to it. */
function drawSheet(easel: Easel, looks: Looks, sheet: PathMark): void {
  const { context } = easel
  const { paint } = sheet
  const dark = paint ? darkOf(paint, looks.light) : 0
  const on = looks.on(sheet)
  const lit = between(on.paper, looks.shade, dark)
  context.save()
  trace(context, sheet)
  context.fillStyle = lit
  context.fill()
  context.strokeStyle = lit
  context.lineWidth = 0.6
  context.setLineDash([])
  context.stroke()
  context.clip()
  for (const one of sheet.on ?? []) {
    if (one.mark === 'art') drawArt(easel, one)
    else if (one.fade) drawFade(context, one, one.fade, on.of(one), looks.gradient(one.fade.kind))
    else if (one.role === 'shade') drawPath(context, one, on.of(one), dark)
    else if (one.role === 'shadow')
      drawPath(context, one, on.of(one), shadowOf(one.strength ?? 1, paint, looks.light))
    else drawPath(context, one, on.of(one))
  }
  context.restore()
}

/** A shadow on the table has no sharp edge: it is drawn so many times as small, and stretched. */
const SOFT = 6

const isOnTable = (mark: Mark): boolean => mark.role === 'shadow' && mark.of === 'table'

function drawTableShadows({ context, small }: Easel, looks: Looks, marks: readonly Mark[], size: Size): void {
  if (!small) return
  const [wide, high] = [Math.ceil(size.width / SOFT), Math.ceil(size.height / SOFT)]
  small.canvas.width = wide
  small.canvas.height = high
  small.setTransform(1 / SOFT, 0, 0, 1 / SOFT, 0, 0)
  for (const mark of marks) if (mark.mark === 'path') drawPath(small, mark, looks.of(mark))
  context.drawImage(small.canvas, 0, 0, wide * SOFT, high * SOFT)
}

function drawMark(easel: Easel, looks: Looks, mark: Mark): void {
  const { context } = easel
  if (mark.mark !== 'path' || isOnTable(mark)) return
  if (mark.on) drawSheet(easel, looks, mark)
  else if (mark.fade) drawFade(context, mark, mark.fade, looks.of(mark), looks.gradient(mark.fade.kind))
  else drawPath(context, mark, looks.of(mark))
}

const easels = new WeakMap<SVGSVGElement, Easel>()

function easelOf(picture: SVGSVGElement): Easel | null {
  const known = easels.get(picture)
  if (known) return known
  const canvas = document.createElement('canvas')
  const context = canvas.getContext('2d')
  if (!context) return null
  canvas.setAttribute('aria-hidden', 'true')
  canvas.className = 'canvas'
  picture.before(canvas)
  const small = new OffscreenCanvas(1, 1).getContext('2d')
  const easel: Easel = { picture, canvas, context, small, images: new Map(), looks: null }
  easels.set(picture, easel)
  return easel
}

/** What this machine keeps up with. */
let pace = FULL

const paint: Brush = (picture, marks) => {
  const easel = marks.length > 0 ? easelOf(picture) : easels.get(picture)
  if (!easel) return
  const { canvas, context } = easel
  canvas.hidden = marks.length === 0
  if (canvas.hidden) {
    easel.looks?.end()
    easel.looks = null
    return
  }
  // Day, night or a projector may have come since the hand rested.
  if (easel.looks) easel.looks.meet(marks)
  else easel.looks = looksOf(picture, context, marks)
  const { width, height } = picture.viewBox.baseVal
  const begun = performance.now()
  // By then the browser has turned what is painted here into dots, where no graphics card does it.
  setTimeout(() => {
    pace = paceAfter(pace, performance.now() - begun)
  })
  const fine = devicePixelRatio * pace.fine
  const [wide, high] = [Math.round(width * fine), Math.round(height * fine)]
  if (canvas.width !== wide || canvas.height !== high) {
    canvas.width = wide
    canvas.height = high
    canvas.style.width = `${width}px`
    canvas.style.height = `${height}px`
  }
  context.setTransform(fine, 0, 0, fine, 0, 0)
  context.clearRect(0, 0, width, height)
  drawTableShadows(easel, easel.looks, marks.filter(isOnTable), { width, height })
  for (const mark of marks) drawMark(easel, easel.looks, mark)
}

/** None where colours are the reader's own: there a picture has no light, and its elements take them by themselves. */
export const brush: Brush | undefined = matchMedia('(forced-colors: active)').matches ? undefined : paint
