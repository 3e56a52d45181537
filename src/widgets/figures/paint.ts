/**
 * A card painted on a canvas: the same marks as in SVG, in the looks that the style sheet gives them, without a text or
 * an element for each. Nothing here is of a page: looks and pictures are brought.
 */
import { darkOf, shadowOf } from '../../drawing/pen/lit.ts'
import type { ArtMark, Fade, InkShape, Mark, Matrix, PathMark, Point } from '../../drawing/pen/marks.ts'
import { FADE_STOPS, GLOW_STOPS, pictureMatrix } from '../../drawing/pen/svg-values.ts'
import type { Size } from '../../drawing/view/camera.ts'
import type { Look, Looks } from './looks.ts'
import { keyBeside, keyOn } from './looks.ts'

type Context = OffscreenCanvasRenderingContext2D

/** What a card is painted on and with. */
interface Easel {
  readonly context: Context
  /** For what is blurred. */
  readonly small: Context
  readonly looks: Looks
  readonly images: ReadonlyMap<string, ImageBitmap>
}

/** The order of the canvas is that of SVG. */
type Sixfold = [number, number, number, number, number, number]

type Colour = readonly [red: number, green: number, blue: number]

const known = new Map<string, Colour>()

let dot: Context | null = null

/** Any colour of a style sheet in red, green and blue of 255. */
function colour(name: string): Colour {
  let found = known.get(name)
  if (found) return found
  dot ??= new OffscreenCanvas(1, 1).getContext('2d', { willReadFrequently: true })
  if (!dot) return [0, 0, 0]
  dot.fillStyle = name
  dot.fillRect(0, 0, 1, 1)
  const [red = 0, green = 0, blue = 0] = dot.getImageData(0, 0, 1, 1).data
  found = [red, green, blue]
  known.set(name, found)
  return found
}

const between = (a: Colour, b: Colour, part: number): string =>
  `rgb(${a.map((from, k) => Math.round(from + ((b[k] as number) - from) * part)).join(' ')})`

function thinning(gradient: CanvasGradient, from: string, stops: typeof GLOW_STOPS): CanvasGradient {
  for (const [at, left] of stops) gradient.addColorStop(at, `rgb(${colour(from).join(' ')} / ${left})`)
  return gradient
}

type Gradients = Readonly<Record<Fade['kind'], CanvasGradient>>

const made = new WeakMap<Looks['ground'], Gradients>()

/** What a gradient is made of, by kind: each in a frame of its own. */
function gradientsOf({ context, looks: { ground } }: Easel): Gradients {
  let found = made.get(ground)
  if (!found) {
    const round = () => context.createRadialGradient(0, 0, 0, 0, 0, 1)
    const corner = thinning(round(), ground.hollow, FADE_STOPS)
    found = {
      band: thinning(context.createLinearGradient(0, 0, 1, 0), ground.hollow, FADE_STOPS),
      corner,
      round: corner,
      glow: thinning(round(), ground.flame, GLOW_STOPS),
    }
    made.set(ground, found)
  }
  return found
}

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

function drawFade(easel: Easel, mark: PathMark, { kind, matrix }: Fade, look: Look): void {
  if (!look.shown) return
  const { context } = easel
  context.save()
  context.transform(...(matrix as Sixfold))
  context.globalCompositeOperation = look.blend
  context.globalAlpha = mark.strength ?? 1
  context.fillStyle = gradientsOf(easel)[kind]
  context.fillRect(...COVERED[kind])
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

function drawImage({ context, images }: Easel, { picture = '', runs }: InkShape): void {
  const image = images.get(picture)
  if (!image) return
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

/** The lines along a surface's rim. */
const isRim = ({ role }: PathMark): boolean => role === 'edge' || role === 'dip' || role === 'brow'

/** A line on the rim is half hidden where it is clipped; where it is not, it is so much thinner. */
const RIM = 0.55

/**
 * A surface and what lies on it, clipped to it. A worker's canvas clips in whole dots: the rim of one that is `whole`,
 * and not parted by others that pass through, is drawn over the steps unclipped.
 */
function drawSheet(easel: Easel, sheet: PathMark, whole: boolean): void {
  const { context, looks } = easel
  const { light, shade } = looks.ground
  const { paint } = sheet
  const on = looks.on.get(keyOn(sheet))
  const paper = on?.get('bare')
  if (!on || !paper) return
  const dark = paint ? darkOf(paint, light) : 0
  const lit = between(colour(paper.fill), colour(shade), dark)
  context.save()
  trace(context, sheet)
  context.fillStyle = lit
  context.fill()
  context.strokeStyle = lit
  context.lineWidth = 0.6
  context.setLineDash([])
  context.stroke()
  context.clip()
  const rims: PathMark[] = []
  for (const one of sheet.on ?? []) {
    if (one.mark === 'art') {
      drawArt(easel, one)
      continue
    }
    const look = on.get(one.role)
    if (!look) continue
    if (whole && isRim(one)) rims.push(one)
    else if (one.fade) drawFade(easel, one, one.fade, look)
    else if (one.role === 'shade') drawPath(context, one, look, dark)
    else if (one.role === 'shadow') drawPath(context, one, look, shadowOf(one.strength ?? 1, paint, light))
    else drawPath(context, one, look)
  }
  context.restore()
  for (const rim of rims) {
    const look = on.get(rim.role) as Look
    drawPath(context, rim, { ...look, width: RIM * look.width })
  }
}

/** A shadow on the table has no sharp edge: it is drawn so many times as small, and stretched. */
const SOFT = 6

const isOnTable = (mark: Mark): boolean => mark.role === 'shadow' && mark.of === 'table'

function drawTableShadows({ context, small, looks }: Easel, marks: readonly Mark[], size: Size): void {
  const [wide, high] = [Math.ceil(size.width / SOFT), Math.ceil(size.height / SOFT)]
  small.canvas.width = wide
  small.canvas.height = high
  small.setTransform(1 / SOFT, 0, 0, 1 / SOFT, 0, 0)
  for (const mark of marks) {
    const look = mark.mark === 'path' && looks.beside.get(keyBeside(mark))
    if (look) drawPath(small, mark, look)
  }
  context.drawImage(small.canvas, 0, 0, wide * SOFT, high * SOFT)
}

function drawMark(easel: Easel, mark: Mark, pieces: ReadonlyMap<PathMark['on'], number>): void {
  if (mark.mark !== 'path' || isOnTable(mark)) return
  if (mark.on) {
    drawSheet(easel, mark, pieces.get(mark.on) === 1)
    return
  }
  const look = easel.looks.beside.get(keyBeside(mark))
  if (!look) return
  if (mark.fade) drawFade(easel, mark, mark.fade, look)
  else drawPath(easel.context, mark, look)
}

/** The pictures of dots that marks show. */
export function picturesIn(marks: readonly Mark[]): readonly string[] {
  const found = new Set<string>()
  for (const mark of marks)
    for (const one of mark.mark === 'path' ? (mark.on ?? []) : [])
      if (one.mark === 'art')
        for (const { picture } of one.shapes) if (picture !== undefined) found.add(picture)
  return [...found]
}

/** Paints marks of a picture of `size` px, each px `fine` dots wide. */
export function paint(easel: Easel, marks: readonly Mark[], { width, height }: Size, fine: number): void {
  const { context } = easel
  const { canvas } = context
  const [wide, high] = [Math.round(width * fine), Math.round(height * fine)]
  if (canvas.width !== wide || canvas.height !== high) {
    canvas.width = wide
    canvas.height = high
  }
  context.setTransform(fine, 0, 0, fine, 0, 0)
  context.clearRect(0, 0, width, height)
  drawTableShadows(easel, marks.filter(isOnTable), { width, height })
  // What lies on a surface is one and the same for all pieces that it is parted into.
  const pieces = new Map<PathMark['on'], number>()
  for (const mark of marks)
    if (mark.mark === 'path' && mark.on) pieces.set(mark.on, (pieces.get(mark.on) ?? 0) + 1)
  for (const mark of marks) drawMark(easel, mark, pieces)
}
