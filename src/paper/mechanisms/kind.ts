import type { Flat } from '../plane/lay.ts'
import type { Build, Side } from './build.ts'

/** What every mechanism has, whatever its kind. */
export interface Placed {
  readonly id: string
  readonly kind: string
  /** The host crease: `gutter`, or `<id>/<crease>` of an earlier mechanism. */
  readonly on: string
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
  /** The file may leave it out. */
  readonly optional?: boolean
  /** What below and above nought means: along the host crease or away from it, turned, wider, to either side. */
  readonly sense?: 'along' | 'across' | 'turn' | 'widening' | 'sides' | undefined
  /** A short way of writing other fields in the file; `complete` writes it out, and it is never set by hand. */
  readonly shorthand?: boolean
  /** How exactly it is made moves nothing (a glue tab's width): no slip of the hand is sought in it. */
  readonly idle?: boolean
  /** The field of the same size on the mechanism's other side: a ruler often cannot tell the two apart. */
  readonly twin?: string
  readonly said?: Said
}

/** How a sentence speaks of a number that came out wrong. Left out: a size, called by its label. */
export interface Said {
  /** A size, a place along the host crease, a shift along it, or the size of both sides at once. */
  readonly as?: 'size' | 'place' | 'shift' | 'both'
  /** What it is the size, place or shift of, where the label does not say it. */
  readonly of?: string
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
  /** True if the file must say it. */
  readonly required?: boolean
}

/** A number that follows from the fields and can be set in their stead (the wedge angle, say). */
export interface Derived<M extends Placed> {
  readonly name: string
  readonly label: string
  readonly unit: 'mm' | 'deg'
  readonly min: number
  readonly max: number
  readonly sense?: Field['sense']
  readonly said?: Said
  /** It is an angle between the host crease and this crease of the mechanism: the flat drawing shows it as an arc. */
  readonly arc?: string
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

/** A field that holds points `[across, along]`. */
export interface Points {
  readonly name: string
  /** True if the file must say it. */
  readonly required?: boolean
  /** They are measured along the host crease, from its start: farther along it they go with the mechanism. */
  readonly onHost?: boolean
}

/** How far several numbers can all be shifted, at most by `shift`, before the first leaves the range. */
export const together = (
  shift: number,
  values: readonly number[],
  { min, max }: { readonly min: number; readonly max: number },
): number => Math.min(max - Math.max(...values), Math.max(min - Math.min(...values), shift))

/**
 * The paper a mechanism is made of.
 *
 * Cut loose from its host: `loose` is what a maker calls the part that its cuts set free.
 *
 * Or of its own card, glued on; `held` is how it is held while the glue dries:
 *   joints  one piece, folded over at the crease that carries its tip, which runs along x = 0 of the piece, and laid
 *           on the host's left panel; shutting the card presses its right joint on
 *   walls   from above, on walls that stand on the host: the pieces with tabs are those walls
 *   face    flat on the one panel that it sits on
 */
export type Stock =
  | { readonly from: 'host'; readonly loose: string }
  | { readonly from: 'own-card'; readonly held: 'joints' | 'walls' | 'face' }

/** Where a new mechanism is to find a place on a crease, or on a panel; mm. */
export interface Room {
  /** The free stretch of the crease. */
  readonly from: number
  readonly to: number
  /** How far free paper reaches square to the crease over a stretch of it: on the side where it is less. */
  depth(from: number, to: number): number
  /** How far the card reaches beyond the crease at a place of it when it is shut. */
  beyond(along: number): number
  /** How thick the card's paper is: tabs are as wide as it asks for. */
  readonly caliper?: number
  /** Whether the crease is the card's own fold, which starts at the reader's end. */
  readonly isGutter?: boolean
  /** Of a panel: the middle and the radius of the largest circle that is free on it. */
  readonly spot?: { readonly at: Flat; readonly radius: number }
}

/** How much of its room a new mechanism takes, as shares: along the crease, square to it, and where in the stretch (0 its start). */
export interface Share {
  readonly long: number
  readonly deep: number
  readonly at: number
}

/** One way in which a kind fits a room. */
export interface Fitted<M extends Placed> {
  /** What a maker would call it beside its kind: `towards the end`, `outside`; empty where there is only one way. */
  readonly variant: string
  readonly fields: Omit<M, keyof Placed>
}

/**
 * What a new one of a kind would be in a room, every variant once and always in this order, in whole mm and degrees;
 * null for a variant that would be too small to make. Whether it is sound is for the checks to say.
 */
export type Fits<M extends Placed> = (room: Room, share: Share) => readonly (Fitted<M> | null)[]

/** One kind of mechanism. A kind is one file in `mechanisms/` and one line in `registry.ts`. */
export interface Kind<M extends Placed> {
  readonly kind: M['kind']
  /** What the trade calls it. */
  readonly label: string
  /** What a new one is called by, with a number: a file's id begins so. */
  readonly word: string
  readonly stock: Stock
  readonly fields: readonly Field[]
  readonly derived: readonly Derived<M>[]
  readonly handles: readonly Handle<M>[]
  /** Keys of the file that hold points `[across, along]`. */
  readonly points: readonly Points[]
  /** Keys of the file that take one of a few values. */
  readonly choices?: readonly Choice[]
  /** Keys of the file that hold a list of numbers. */
  readonly lists?: readonly Field[]
  /** The settings by which `aim` brings the tip to a place. */
  readonly aims: readonly string[]
  /** A mechanism that can be popped up in place: what sets its two states. */
  readonly pops?: { readonly up: Change; readonly down: Change }
  /** What it sits on: a crease unless said otherwise. */
  readonly sitsOn?: 'crease' | 'panel'
  /** The same mechanism with every optional field filled in. */
  complete(m: M): M
  /** Range rules that tie several fields together: null, or the field, a sentence and the nearest value that works. */
  limits?(m: M): Fault | null
  build(m: M): Build
  /** Where what is drawn on it goes when it is changed so; null: it stays where it is on its panels. */
  carries?(before: M, after: M): ((drawn: Flat) => Flat) | null
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
