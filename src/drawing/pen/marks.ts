/**
 * What every drawing is made of. A drawing knows nothing of its medium; a pen (SVG, PDF, a test)
 * knows nothing of paper. Coordinates are in the drawing's own box, y downwards.
 */
export type Point = readonly [x: number, y: number]

/**
 * What a line, dot or word means. The medium gives it its look: dash pattern and weight first,
 * colour second.
 */
export type Role =
  // lines of the flat sheet
  | 'cut'
  | 'mountain'
  | 'valley'
  | 'glue'
  | 'place' // the edge of a place that is glued, or the line along which a part is taped
  | 'behind' // a place that is glued on the other face
  | 'crease'
  | 'care' // beside what is to be cut or glued more exactly than all the rest
  | 'grain' // beside a fold: that way the paper's fibres should run
  | 'picture' // an outline of what is drawn on the paper, to be coloured in
  | 'edge' // the outer edge of the paper, or of a panel in the view
  // surfaces
  | 'paper' // a flat surface seen straight on
  | 'facet' // a surface in space, shaded (see Paint)
  | 'bare' // the same without its shade, for what is drawn on it
  | 'shade' // and the shade over that
  | 'slice' // a sheet of card seen edge-on where a section cuts it (see Paint)
  | 'shadow' // several that overlap, each faint, make one soft shadow
  | 'fade' // the dark that gathers towards a crease (see Fade)
  | 'glow' // by night: the light of a flame on paper (see Fade)
  | 'haze' // by night: the same in the air
  | 'dip' // a fold whose hollow is seen
  | 'brow' // a fold whose back is seen
  // measuring
  | 'dimension' // the red rise line and other measured lengths
  | 'halo' // the ground's colour under a line that must stand out on card
  | 'guide' // thin helping line, no meaning of its own
  | 'square' // the 10 mm squares
  | 'axis'
  | 'curve' // a graph
  | 'swing' // the path of a point through the whole motion
  | 'ghost' // where something was, or would be
  // doing
  | 'handle' // can be dragged: blue
  | 'fault' // a failed check: red dashed outline
  | 'hand' // where fingers or blades act in a step figure
  | 'note'

// words

/** How a surface is coloured: which card it is cut from, how much light it gets, which face shows. */
export interface Paint {
  /** 0 the base card, 1 the first mechanism, 2 … in turn; 5 sticky tape; 6 of a line: dark by day and pale by night. */
  readonly card: number
  /** `#rrggbb` where the design names its paper. */
  readonly paper?: string
  /** Straight from the lamp, 0 to 1. */
  readonly light: number
  /** From all round, 0 to 1; 1 if left out. */
  readonly sky?: number
  /** Left in the dark on purpose: its edges hardly show. */
  readonly dim?: true
  readonly face: 'front' | 'back'
}

/** x' = a x + c y + e, y' = b x + d y + f: the order of SVG. */
export type Matrix = readonly [a: number, b: number, c: number, d: number, e: number, f: number]

/**
 * A dark or a light that thins out, in the frame of its matrix: from the line x = 0 to x = 1, for y from 0 to 1
 * (`band`), or from the origin to the unit circle: a quarter of it (`corner`), the half above y = 0 (`round`), or all
 * of it, for light (`glow`).
 */
export interface Fade {
  readonly kind: 'band' | 'corner' | 'round' | 'glow'
  readonly matrix: Matrix
}

/** A shape drawn on paper. Colours are `#rrggbb`. */
export interface InkShape {
  /** Points; where `bends` is true a start and then three for each cubic: two that steer and its end. */
  readonly runs: readonly (readonly Point[])[]
  readonly bends: boolean
  readonly closed: boolean
  readonly fill: string | null
  readonly line: string | null
  /** Of the line, in the unit of the points. */
  readonly width: number
  /** An address of what fills it: its points are the lower left, lower right, upper right and upper left corner. */
  readonly picture?: string
}

/**
 * Shapes drawn on a surface. Without a matrix for all of them each may have its own; without either its points lie
 * in the drawing's own box.
 */
export interface ArtMark {
  readonly mark: 'art'
  readonly shapes: readonly InkShape[]
  readonly matrix: Matrix | null
  /** One for each shape. */
  readonly own?: readonly (Matrix | null)[]
}

export interface PathMark {
  readonly mark: 'path'
  /** One or more runs of points; a closed path is filled by the non-zero rule if its role is a surface. */
  readonly runs: readonly (readonly Point[])[]
  readonly closed: boolean
  readonly role: Role
  readonly paint?: Paint
  /** The panel, crease, mechanism or check it stands for. */
  readonly of?: string
  /** Tells several curves of one graph apart, by dash pattern: 0, 1, 2 … */
  readonly series?: number
  /** Arrow head at the end of each run, at both ends, or none. */
  readonly arrow?: 'end' | 'both'
  /** What lies on a surface: painted after it and clipped to it. */
  readonly on?: readonly (PathMark | ArtMark)[]
  readonly fade?: Fade
  /** It belongs to something else than what is looked at. */
  readonly quiet?: boolean
  /** How strong a shadow, fade or glow is, 0 to 1. */
  readonly strength?: number
}

export interface DotMark {
  readonly mark: 'dot'
  readonly at: Point
  readonly radius: number
  readonly role: Role
  readonly of?: string
}

export interface WordMark {
  readonly mark: 'word'
  readonly at: Point
  readonly text: string
  readonly role: Role
  readonly anchor: 'start' | 'middle' | 'end'
  /** Height of the type in the drawing's units. */
  readonly size: number
  readonly bold?: boolean
  /** Degrees, clockwise on the page. */
  readonly turn?: number
  readonly of?: string
}

export type Mark = PathMark | DotMark | WordMark

export interface Drawing {
  /** Left, top, width, height. */
  readonly box: readonly [number, number, number, number]
  /** `mm`: true-size paper; `px`: a figure on screen. */
  readonly unit: 'mm' | 'px'
  readonly marks: readonly Mark[]
  /** What it stands on: nothing, or a table with a tone of its own. */
  readonly ground?: 'table'
  /** What it shows, for those who do not see it: one sentence with the numbers. */
  readonly says: string
}

/** Length and half width of an arrow head. */
const HEADS = { px: { long: 9, half: 3.5 }, mm: { long: 2.2, half: 0.8 } } as const

/** A line's arrow heads: triangles to be filled, in the drawing's unit. Empty where `arrow` is absent. */
export function arrowHeads(mark: PathMark, unit: Drawing['unit'] = 'px'): readonly (readonly Point[])[] {
  if (!mark.arrow) return []
  return mark.runs.flatMap((run) => {
    const heads = [headAt(run, HEADS[unit])]
    if (mark.arrow === 'both') heads.push(headAt([...run].reverse(), HEADS[unit]))
    return heads.filter((head) => head.length > 0)
  })
}

function headAt(run: readonly Point[], { long, half }: { long: number; half: number }): readonly Point[] {
  const tip = run[run.length - 1]
  if (!tip) return []
  // The direction is taken over the head's own length, so that a fine curve does not turn it.
  const from = [...run].reverse().find((p) => Math.hypot(p[0] - tip[0], p[1] - tip[1]) >= long) ?? run[0]
  const reach = from ? Math.hypot(tip[0] - from[0], tip[1] - from[1]) : 0
  if (!from || reach === 0) return []
  const [ux, uy] = [(tip[0] - from[0]) / reach, (tip[1] - from[1]) / reach]
  const [bx, by] = [tip[0] - long * ux, tip[1] - long * uy]
  return [tip, [bx - half * uy, by + half * ux], [bx + half * uy, by - half * ux]]
}
