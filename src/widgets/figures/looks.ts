/** What the style sheet says of the marks of a moving picture: asked for where it is painted, read in the page. */
import type { Light } from '../../drawing/pen/lit.ts'
import type { Mark, PathMark, Role } from '../../drawing/pen/marks.ts'
import { classOf, sheetClass, styleOf } from '../../drawing/pen/svg-values.ts'

/** How a path is drawn. Colours as the canvas takes them. */
export interface Look {
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

/** What all marks share. Colours as the canvas takes them. */
export interface Ground {
  /** The dark that gathers in a hollow, a flame's light, the shade over what is turned from the lamp. */
  readonly hollow: string
  readonly flame: string
  readonly shade: string
  readonly light: Light
}

export interface Looks {
  /** Of marks beside the surfaces, by `keyBeside`. */
  readonly beside: ReadonlyMap<string, Look>
  /** Of what lies on a surface, by `keyOn` and by its role: all that has one role there looks the same. */
  readonly on: ReadonlyMap<string, ReadonlyMap<Role, Look>>
  readonly ground: Ground
}

/** Marks that stand for all of their kind. */
export interface Kinds {
  readonly beside: readonly PathMark[]
  readonly on: readonly PathMark[]
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

export const keyBeside = (mark: PathMark): string =>
  `${classOf(mark)} ${mark.paint?.paper ?? ''} ${mark.of === 'table'}`

export const keyOn = (sheet: PathMark): string => `${sheetClass(sheet)} ${sheet.paint?.paper ?? ''}`

/** One mark of each kind whose look is not known. A surface is asked for with both its faces: the other comes to sight. */
export function unknownKinds(marks: readonly Mark[], known: Looks | null): Kinds {
  const beside = new Map<string, PathMark>()
  const on = new Map<string, PathMark>()
  for (const mark of marks) {
    if (mark.mark !== 'path') continue
    const key = mark.on ? keyOn(mark) : keyBeside(mark)
    if ((mark.on ? known?.on : known?.beside)?.has(key)) continue
    const { on: _, fade: __, ...kind } = mark
    const { paint } = kind
    const bare = { ...kind, runs: [] }
    if (!mark.on) beside.set(key, bare)
    else
      for (const one of paint ? FACES.map((face) => ({ ...bare, paint: { ...paint, face } })) : [bare])
        on.set(keyOn(one), one)
  }
  return { beside: [...beside.values()], on: [...on.values()] }
}

const number = (text: string, otherwise: number): number => {
  const value = Number.parseFloat(text)
  return Number.isNaN(value) ? otherwise : value
}

function lookOf(element: Element): Look {
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
    blend: style.mixBlendMode === 'normal' ? 'source-over' : (style.mixBlendMode as GlobalCompositeOperation),
    shown: style.display !== 'none',
  }
}

/**
 * The looks of these kinds in a picture, as its style sheet has them now. All that stands for them is put into the page
 * first and asked afterwards: after each such change the browser works its styles out anew.
 */
export function readLooks(picture: SVGSVGElement, { beside, on }: Kinds): Looks {
  // Beside the picture, in the same place of the page: what a style sheet says of one it says of the other.
  const bench = document.createElementNS(SVG, 'svg')
  bench.setAttribute('class', picture.getAttribute('class') ?? '')
  bench.setAttribute('style', 'position:absolute;width:0;height:0;visibility:hidden')
  bench.setAttribute('aria-hidden', 'true')
  const put = (parent: Element, tag: string, attributes: Readonly<Record<string, string | undefined>>) => {
    const element = document.createElementNS(SVG, tag)
    for (const [name, value] of Object.entries(attributes)) if (value) element.setAttribute(name, value)
    parent.append(element)
    return element
  }
  const stand = (parent: Element, mark: PathMark): Element =>
    put(parent, 'path', { class: classOf(mark), style: styleOf(mark), 'data-of': mark.of })
  const stop = (className?: string): Element =>
    put(put(bench, 'linearGradient', { class: className }), 'stop', {})
  const [hollow, flame, shade] = [stop(), stop('glow'), stand(bench, { ...BARE, role: 'shade' })]
  const alone = beside.map((mark) => [keyBeside(mark), stand(bench, mark)] as const)
  const sheets = on.map((sheet) => {
    const group = put(bench, 'g', { class: sheetClass(sheet), style: styleOf(sheet) })
    return [keyOn(sheet), ON_SHEET.map((mark) => [mark.role, stand(group, mark)] as const)] as const
  })
  picture.after(bench)
  const own = getComputedStyle(bench)
  const looks: Looks = {
    beside: new Map(alone.map(([key, element]) => [key, lookOf(element)])),
    on: new Map(
      sheets.map(([key, roles]) => [key, new Map(roles.map(([role, element]) => [role, lookOf(element)]))]),
    ),
    ground: {
      hollow: getComputedStyle(hollow).stopColor,
      flame: getComputedStyle(flame).stopColor,
      shade: lookOf(shade).fill,
      light: {
        air: number(own.getPropertyValue('--air'), 0.65),
        lamp: number(own.getPropertyValue('--lamp'), 0),
      },
    },
  }
  bench.remove()
  return looks
}
