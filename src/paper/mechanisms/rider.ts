import type { Build, Flat, Kind, Placed } from '../types.ts'
import { sameLay } from '../vector.ts'

/** A piece of any shape stuck on one panel: it rides with it. */
export interface Rider extends Placed {
  readonly kind: 'rider'
  /** Its outline, and the part of it that is glued, in the panel's flat coordinates. */
  readonly shape: readonly Flat[]
  readonly glue: readonly Flat[]
}

/** The corner farthest from the crease the panel hangs on. */
const farthest = (shape: readonly Flat[]): Flat =>
  shape.reduce<Flat>((far, p) => (p[0] > far[0] ? p : far), [0, 0])

function build(m: Rider): Build {
  return {
    creases: [],
    panels: [
      {
        part: 'face',
        crease: 'host',
        side: 'right',
        outline: m.shape,
        flat: { panel: 'piece', lay: sameLay },
      },
    ],
    notch: null,
    span: [0, 0],
    cuts: { left: [], right: [] },
    tip: { crease: 'host', along: farthest(m.shape)[1], across: farthest(m.shape)[0] },
    pieces: [
      {
        part: 'piece',
        outline: m.shape,
        lines: [{ kind: 'glue', points: m.glue, closed: true, of: m.id }],
      },
    ],
    glue: [{ panel: 'host', outline: m.glue, closed: true }],
    turns: () => {},
    place: () => true,
  }
}

export const rider: Kind<Rider> = {
  kind: 'rider',
  label: 'Piece stuck on a face',
  sitsOn: 'panel',
  fields: [],
  points: [
    { name: 'shape', help: 'The outline of the piece, in the panel’s flat coordinates.', required: true },
    { name: 'glue', help: 'The part of it that is glued, in the same coordinates.', required: true },
  ],
  derived: [],
  aims: [],
  handles: [],
  complete: (m) => m,
  limits: (m) =>
    m.shape.length < 3
      ? { field: 'shape', sentence: `must hold at least 3 points, not ${m.shape.length}` }
      : m.glue.length < 3
        ? { field: 'glue', sentence: `must hold at least 3 points, not ${m.glue.length}` }
        : null,
  build,
}
