import type { FourBar } from './mechanisms/four-bar.ts'

/** A point or direction in space, mm. World frame: see the README of the kernel in `index.ts`. */
export type Vec3 = [x: number, y: number, z: number]

/** A point of a flat panel, mm: distance from the crease it hangs on, and distance along that crease. */
export type Flat = readonly [across: number, along: number]

/** The two sides of a crease. */
export type Side = 'left' | 'right'

/** How a fold runs as seen from inside the card. */
export type Fold = 'mountain' | 'valley'

export interface Card {
  /** One page, gutter to edge, mm. */
  readonly width: number
  /** Along the gutter, mm. */
  readonly height: number
  /** Thickness of the card, mm. */
  readonly caliper: number
}

/** What every mechanism has, whatever its kind. */
export interface Placed {
  readonly id: string
  readonly kind: string
  /** The host crease: `gutter`, or `<id>/<crease>` of an earlier mechanism. */
  readonly on: string
}

/**
 * A rigid motion of the plane (a mirroring allowed) that takes the flat coordinates of one
 * crease's side into the flat coordinates of a panel: point = origin + along * run + across * off.
 */
export interface Lay {
  readonly origin: Flat
  /** Unit direction of "along". */
  readonly run: Flat
  /** Unit direction of "across". */
  readonly off: Flat
}

/** One number of a mechanism that a reader can set. */
export interface Field {
  /** The key in the design file. */
  readonly name: string
  /** What the reader sees. */
  readonly label: string
  readonly unit: 'mm' | 'deg'
  /** Allowed range, both ends included. */
  readonly min: number
  readonly max: number
  /** One sentence: what it is, and from where it is measured. */
  readonly help: string
  /** The file may leave it out. */
  readonly optional?: boolean
  /** A short way of writing other fields in the file; `complete` writes it out, and it is never set by hand. */
  readonly shorthand?: boolean
}

/** Fields of one mechanism and their new values; `left.base` names `base` inside `left`. */
export type Change = Readonly<Record<string, number | string>>

/** A field that takes one of a few words or numbers. The first is the default. */
export interface Choice {
  readonly name: string
  readonly label: string
  readonly values: readonly (string | number)[]
  /** What the reader sees for each of them. */
  readonly words: readonly string[]
  readonly help: string
  /** True if the file must say it. */
  readonly required?: boolean
}

/** A number that follows from the fields and can be set in their stead (the wedge angle, say). */
export interface Derived<M extends Placed> {
  readonly name: string
  readonly label: string
  readonly unit: 'mm' | 'deg'
  readonly help: string
  readonly min: number
  readonly max: number
  get(m: M): number
  /** The fields that give this value; the others stay. */
  set(m: M, value: number): Change
}

/** A point of the flat sheet that can be dragged. */
export interface Handle<M extends Placed> {
  readonly name: string
  readonly label: string
  /** The fields or derived numbers it sets: the first is moved across the crease, the second along it. */
  readonly across?: string
  readonly along?: string
  /** Where it lies now, in the flat coordinates of the host crease's right side (left if `side` says so). */
  readonly side?: Side
  /** Or in the coordinates of a piece of its own card, by part. */
  readonly piece?: string
  at(m: M): Flat
  /** The fields that bring it as near to this place as it can go. */
  drag(m: M, to: Flat): Change
}

/**
 * What a mechanism adds to its host crease, flat and at no opening in particular.
 * Coordinates of the host: across from the crease on either side, along from its origin.
 */
export interface Build {
  /** New creases, in the order in which `place` writes their frames. */
  readonly creases: readonly CreasePart[]
  /** New panels. */
  readonly panels: readonly PanelPart[]
  /** What is cut loose from the host's two panels: outline from the crease and back to it. */
  readonly notch: { readonly left: readonly Flat[]; readonly right: readonly Flat[] } | null
  /** The stretch of the host crease that is no longer a fold of the host. */
  readonly span: readonly [from: number, to: number]
  /** Lines to be cut through, on the host's left and right side. */
  readonly cuts: { readonly left: readonly (readonly Flat[])[]; readonly right: readonly (readonly Flat[])[] }
  /** Which crease carries the point that rises: its tip lies at this distance along it. */
  readonly tip: { readonly crease: string; readonly along: number; readonly across?: number }
  /** Pieces of its own card, flat; none for a mechanism cut from its host. */
  readonly pieces?: readonly OwnPiece[]
  /** On a valley its own pieces, as given, are seen from their back: the model lays them down mirrored. */
  readonly fromBack?: boolean
  /** Where it is glued on its host's panels: an outline each, or an open line to be taped along. */
  readonly glue?: readonly {
    readonly panel: string
    readonly outline: readonly Flat[]
    readonly closed: boolean
  }[]
  /** How far it is from shutting flat (degrees or mm); 0 or absent: it shuts flat. */
  readonly shutGap?: ShutGap
  /** True if its panels lie in the host's two panels through the whole motion: not pushed through yet. */
  readonly lies?: boolean
  /** The openings of the host crease (degrees) between which it moves; absent: 0 to 180. */
  readonly range?: readonly [least: number, most: number]
  /**
   * Writes the frames of the new creases for the host's frame; returns false if the mechanism
   * cannot reach this opening and was left at its stop.
   */
  place(host: Frame, out: readonly Frame[]): boolean
  /**
   * How fast the new creases turn: for host angles `from` to `to` (radians, inside angle), bounds on the
   * first and second derivative of each new crease's angle by the host's, without their signs, written in
   * pairs in the order of `creases`. They must hold for certain: the checks of the motion are proofs that
   * stand on them. Left out: not known, and the checks say that they cannot tell.
   */
  turns?(from: number, to: number, out: Float64Array): void
  /** In place of `turns`: the four-bar that it is, whose bounds `turning.ts` works out when a check asks. */
  readonly linkage?: FourBar
}

export interface ShutGap {
  /** First side's sum less the second's. */
  readonly gap: number
  readonly unit: 'mm' | 'deg'
}

/** A flat piece of card of the mechanism's own, seen from its front, mm. */
export interface OwnPiece {
  readonly part: string
  readonly outline: readonly (readonly [x: number, y: number])[]
  /** Lines beside its creases and outline: tab folds, glue areas. */
  readonly lines: readonly PieceLine[]
}

export interface CreasePart {
  readonly part: string
  /** A frame for a panel to hang on, and no crease that a guest could sit on. */
  readonly hidden?: boolean
  readonly length: number
  /** Of a cut mechanism, told by its host; of a glued one, as seen from the front of its own card. */
  readonly fold: 'as-host' | 'against-host' | Fold
  readonly left: Hang
  readonly right: Hang
}

/** The panel on one side of a crease, and how the crease lies in it. */
export interface Hang {
  /** `host-left`, `host-right`, or a part of the same mechanism. */
  readonly panel: string
  readonly lay: Lay
}

export interface PanelPart {
  readonly part: string
  /** The new crease, and its side, whose flat coordinates this panel uses. */
  readonly crease: string
  readonly side: Side
  readonly outline: readonly Flat[]
  /**
   * Where it lies on a flat piece: in the coordinates of `host-left` or `host-right` (across may run
   * past the crease), or of one of the mechanism's own pieces, by part.
   */
  readonly flat: Hang
}

/**
 * A crease at one opening: 14 numbers.
 *   0-2 origin, 3-5 x, 6-8 d (direction), 9-11 n (half-way between the two panels, inside),
 *   12 sine and 13 cosine of half the inside angle.
 * Across the right panel = S x + C n; across the left one = -S x + C n. All of x, d, n are unit and square.
 *
 *        l \  n  / r        looking along d
 *           \ ^ /
 *            \|/
 *             o---> x
 */
export type Frame = Float64Array

/** One kind of mechanism. A kind is one file in `mechanisms/` and one line in `registry.ts`. */
export interface Kind<M extends Placed> {
  readonly kind: M['kind']
  /** What the trade calls it. */
  readonly label: string
  readonly fields: readonly Field[]
  readonly derived: readonly Derived<M>[]
  readonly handles: readonly Handle<M>[]
  /** Keys of the file that hold points `[across, along]`. */
  readonly points: readonly { readonly name: string; readonly help: string; readonly required?: boolean }[]
  /** Keys of the file that take one of a few values. */
  readonly choices?: readonly Choice[]
  /** Keys of the file that hold a list of numbers. */
  readonly lists?: readonly Field[]
  /** The settings by which `aim` brings the tip to a place. */
  readonly aims: readonly string[]
  /** What it sits on: a crease unless said otherwise. */
  readonly sitsOn?: 'crease' | 'panel'
  /** The same mechanism with every optional field filled in. */
  complete(m: M): M
  /** Range rules that tie several fields together: null, or the field, a sentence and the nearest value that works. */
  limits?(m: M): Fault | null
  build(m: M): Build
  /** Where the slit lies in the host's flat coordinates, if two of this kind may share it. */
  slit?(m: M): { readonly foot: Flat; readonly end: Flat }
  /** The fields that bring this mechanism's slit to the given one, the rest kept as far as can be. */
  moveSlit?(m: M, slit: { readonly foot: Flat; readonly end: Flat }): Change
}

export interface Fault {
  readonly field: string
  readonly sentence: string
  readonly nearest?: number
  /** A file may have it so: only a hand that drags or types is brought to the nearest. */
  readonly drawable?: boolean
}

/** The model at one opening. */
export interface Pose {
  /** Degrees, 0 shut to 180 flat. */
  opening: number
  /** Every panel's whole outline in space, mm; what children took out of it is not taken out here. */
  panels: Record<string, Vec3[]>
  creases: Record<string, { start: Vec3; end: Vec3; angle: number }>
  /** Ids of mechanisms that cannot reach this opening; they stay at their stop. */
  stopped: string[]
}

export type LineKind = 'cut' | 'mountain' | 'valley' | 'glue' | 'crease'

/** A line on a flat piece, mm. `of` names the crease, mechanism or edge it belongs to. */
export interface PieceLine {
  readonly kind: LineKind
  readonly points: readonly (readonly [x: number, y: number])[]
  readonly closed?: boolean
  readonly of: string
}

/**
 * A flat piece to print. The card itself lies with its gutter on x = 0, right page at x > 0,
 * the reader's end at y = 0, seen from inside.
 */
export interface Piece {
  readonly id: string
  /** The outer edge, also present among the lines as a cut. */
  readonly outline: readonly (readonly [x: number, y: number])[]
  readonly lines: readonly PieceLine[]
}

/** A nearest change of one field that satisfies a check. */
export interface Repair {
  readonly id: string
  readonly field: string
  readonly label: string
  readonly unit: 'mm' | 'deg'
  readonly from: number
  readonly to: number
  /** The whole changed design's fields: apply these to the mechanisms named. */
  readonly change: readonly { readonly id: string; readonly fields: Readonly<Record<string, number>> }[]
  /** True if every other check that held before still holds after. */
  readonly keepsRest: boolean
}

export type CheckName =
  | 'shuts-flat'
  | 'opens-flat'
  | 'stays-inside'
  | 'cuts-inside'
  | 'bridge'
  | 'inside-fold'
  | 'cuts-apart'
  | 'clear-motion'
  | 'thickness'
  | 'glue'
  | 'narrow'

/** The verdict of one check. */
export interface Check {
  readonly name: CheckName
  readonly ok: boolean
  /** What was measured, in `unit`. */
  readonly value: number
  readonly unit: 'mm' | 'deg'
  /** What it must reach (`at-least`) or keep below (`at-most`). */
  readonly limit: number
  readonly sense: 'at-least' | 'at-most'
  /** Mechanisms and panels concerned. */
  readonly ids: readonly string[]
  /** Opening in degrees where it is worst, where that makes sense. */
  readonly opening?: number
  /** Where on the flat sheet (mm, as in `Piece`), and in space at `opening`, to point at. */
  readonly flat?: readonly (readonly [x: number, y: number])[]
  /** The piece that `flat` is on; the card itself if left out. */
  readonly piece?: string
  readonly space?: Vec3
  /** Advice from practice, not geometry: it folds all the same, but may tear or bulge. */
  readonly caution?: boolean
  /** What is known of the motion: proved clear, seen to touch, or neither. `ok` means proved. */
  readonly verdict?: 'clear' | 'touches' | 'undecided'
  /** One plain sentence, in mm and degrees. */
  readonly sentence: string
  /** It cannot be told before another check is mended, and has no repair of its own. */
  readonly waits?: boolean
  /** Absent when the check holds, waits, or repairs were not asked for; null if no single change that was tried mends it. */
  readonly repair?: Repair | null
}
