import type { Frame } from '../plane/frame.ts'
import type { Flat, Lay } from '../plane/lay.ts'
import type { FourBar } from './shared/four-bar.ts'

/** The two sides of a crease. */
export type Side = 'left' | 'right'

/** How a fold runs as seen from inside the card. */
export type Fold = 'mountain' | 'valley'

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
  /**
   * On a valley its own pieces, as given, are seen from their back: the model lays them down mirrored.
   * Of a piece stuck on a panel: it is stuck on that panel's back.
   */
  readonly fromBack?: boolean
  /**
   * Where it is glued on its host's panels, or on its own: an outline each, which begins with the two ends of its
   * joint if it has one, or that joint alone, to be taped along.
   */
  readonly glue?: readonly {
    readonly panel: string
    readonly outline: readonly Flat[]
    readonly closed: boolean
    /** The face of its panel, where it is stuck flat; of a joint `jointsOf` tells the faces. */
    readonly face?: 'front' | 'back'
    /** A point off the joint, on the side of it where the tab lies or the tape would; none where it is stuck flat. */
    readonly aside?: Flat
    /** The slit through which its tab goes to the other face, where it is glued. */
    readonly slit?: readonly [Flat, Flat]
  }[]
  /** How far it is from shutting flat (degrees or mm); 0 or absent: it shuts flat. */
  readonly shutGap?: ShutGap
  /** True if its panels lie in the host's two panels through the whole motion: not pushed through yet. */
  readonly lies?: boolean
  /** The openings of the host crease (degrees) between which it moves; least beyond most: at none; absent: 0 to 180. */
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
  /** In place of `turns`: the cosine of the wedge by which two folds lie to their ridge, mirrored in it. */
  readonly wedge?: number
  /** Or the four-bar that it is, whose bounds `turning.ts` works out when a check asks. */
  readonly linkage?: FourBar
}

/** True if its parts do not come together at any opening of its host crease. */
export const closesNowhere = ({ range }: Pick<Build, 'range'>): boolean =>
  range !== undefined && range[0] > range[1]

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

export type LineKind = 'cut' | 'mountain' | 'valley' | 'glue' | 'crease'

/** A line on a flat piece, mm. `of` names the crease, mechanism or edge it belongs to. */
export interface PieceLine {
  readonly kind: LineKind
  readonly points: readonly (readonly [x: number, y: number])[]
  readonly closed?: boolean
  readonly of: string
}
