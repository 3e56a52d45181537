import type { AnyKind, Mechanism } from './registry.ts'

/** By the name of a field, derived number or choice: one sentence on what it is, and from where it is measured. */
type Help = Readonly<Record<string, string>>

/** Of every kind of its own card that has glue tabs. */
const tab: Help = {
  tab: 'How wide the glue tabs are. Zero: no tabs, tape along the joint.',
  tabs: 'Glued on the card, or pushed through a slit in it and glued behind, where nobody sees them.',
}

/** Of every four-bar. */
const states: Help = {
  side: 'Inside the host’s fold, or on the outside of it.',
  pop: 'Popped up, or still lying down in the fold.',
}

/** Apart from the kinds: it is asked for where a number is set, and never while the card moves. */
const help: Readonly<Record<Mechanism['kind'], Help>> = {
  'cut-v-fold': {
    apex: 'Where the two folds meet on the host crease, measured from its start: on the gutter, from your end.',
    run: 'How far the slit lies from the apex along the crease. Below zero: towards the crease’s start.',
    cut: 'How deep the slit goes, measured square to the crease.',
    lean: 'How far the slit’s end is shifted along the crease. Zero: the slit is square to it.',
    wedge: 'The angle at the apex between the crease and a fold.',
  },
  'cut-layer': {
    start: 'Where the first cut crosses the host crease.',
    end: 'Where the second cut crosses the host crease.',
    left: 'How deep the cuts go on the left.',
    right: 'How deep the cuts go on the right.',
    depth: 'How deep the cuts go on both sides.',
  },
  'cut-trapezoid': {
    start: 'Where the first cut crosses the host crease.',
    end: 'Where the second cut crosses the host crease.',
    startCut: 'How deep the first cut goes, square to the crease.',
    endCut: 'How deep the second cut goes, square to the crease.',
    wedge: 'The angle between the crease and a fold. Zero: the two cuts are equal.',
  },
  'glued-v-fold': {
    'left.base': 'From the host crease to the left joint.',
    'left.facet': 'From the left joint to the ridge.',
    'right.base': 'From the host crease to the right joint.',
    'right.facet': 'From the right joint to the ridge.',
    apex: 'Where the two joints meet on the host crease.',
    foot: 'How long the glued or taped joint is.',
    ridge: 'How long the ridge is, from the apex to the tip.',
    toward: 'Which way along the host crease the joints run: 1 outward, -1 back.',
    base: 'From the host crease to the joint; both sides turn together.',
    facet: 'From the joint to the ridge; both sides change together.',
    ...tab,
    ...states,
  },
  'glued-tent': {
    start: 'Where it begins along the host crease.',
    end: 'Where it ends along the host crease.',
    leftFoot: 'From the host crease to the left joint.',
    rightFoot: 'From the host crease to the right joint.',
    leftWall: 'From the left joint to the ridge.',
    rightWall: 'From the right joint to the ridge.',
    wall: 'Joint to ridge on both sides; both change together.',
    foot: 'Host crease to joint on both sides; both change together.',
    ...tab,
    ...states,
  },
  'floating-layer': {
    start: 'Where it begins along the host crease.',
    end: 'Where it ends along the host crease.',
    height: 'How high the walls are.',
    left: 'How far the platform reaches to the left of its crease.',
    right: 'How far the platform reaches to the right of its crease.',
    walls: 'Where the walls stand, left of the host crease below zero.',
    ...tab,
  },
  rider: {
    across: 'How far it is shifted away from the crease its panel hangs on.',
    along: 'How far it is shifted along that crease.',
    turn: 'How far it is turned about the middle of its glue.',
    size: 'The longest way across it. The glue keeps its own size.',
    face: 'The side of the panel it is stuck on. Front: the side seen from inside the open card.',
  },
}

/** What a number or choice of a kind is, in a sentence. Throws a RangeError if nothing is said of it. */
export function helpOn({ kind }: AnyKind, name: string): string {
  const says = help[kind as Mechanism['kind']][name]
  if (says === undefined) throw new RangeError(`nothing is said of ${name} of a ${kind}`)
  return says
}
