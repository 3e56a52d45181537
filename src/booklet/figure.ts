/** What a step looks like: in which state the card is drawn, and how far open. */
import type { Drawing } from '../drawing/pen/marks.ts'
import type { StepMotion } from '../drawing/steps/motion.ts'
import { stepMotion } from '../drawing/steps/motion.ts'
import { only } from '../drawing/steps/scene.ts'
import type { StepOptions, StepState } from '../drawing/steps/steps.ts'
import { stepFigure } from '../drawing/steps/steps.ts'
import type { Size } from '../drawing/view/camera.ts'
import type { Design } from '../paper/index.ts'
import { openingRange } from '../paper/index.ts'
import { isOutside } from '../sheet/marks/instructions.ts'
import type { Work } from './order.ts'

const FIGURES: Readonly<Record<Work['does'], StepState>> = {
  'cut-out': 'flat',
  slits: 'flat',
  colour: 'coloured',
  cut: 'cutting',
  crease: 'creased',
  push: 'reversing',
  pieces: 'piece',
  thread: 'threading',
  lay: 'glued',
  close: 'closing',
  tape: 'taping',
  pop: 'popping',
  stand: 'glued',
  stick: 'glued',
  press: 'shut',
  open: 'open',
  cover: 'covering',
}

/** The same of what is built on the outside of a fold: no page shuts on it. */
const OUTSIDE: Partial<Record<Work['does'], StepState>> = { lay: 'astride', close: 'saddled' }

function stateOf(design: Design, { does, of }: Work): StepState {
  const sits = design.mechanisms.some((m) => of.includes(m.id) && isOutside(m))
  return (sits ? OUTSIDE[does] : undefined) ?? FIGURES[does]
}

/** Openings at which steps are shown, degrees: as far as the card goes. */
const AT: Partial<Record<Work['does'], number>> = {
  thread: 150,
  lay: 150,
  stand: 180,
  stick: 120,
  tape: 120,
  pop: 110,
  push: 110,
  open: 110,
  cover: 150,
}

/** Work at which all that will be made is already drawn on the paper. */
const WHOLE: ReadonlySet<Work['does']> = new Set(['cut-out', 'slits', 'colour', 'cut', 'crease', 'pieces'])

/** The design as far as it is made when a piece of work is done. */
function madeSoFar(design: Design, work: Work): Design {
  if (WHOLE.has(work.does) && work.inHand === undefined) return design
  return only(design, [...under(work), ...work.of])
}

/** What is there before a piece of work, and the platforms that are in the hand. */
const under = ({ there, inHand = [] }: Work): readonly string[] => [...inHand, ...there]

/** The design so far, and how its step is drawn. */
function drawnOf(design: Design, work: Work): { readonly part: Design; readonly options: StepOptions } {
  const part = madeSoFar(design, work)
  const { inHand } = work
  // A platform in the hand lies flat, as it does over the open card.
  const wanted = inHand && work.does === 'thread' ? 180 : AT[work.does]
  const [least, most] = openingRange(part)
  const opening = wanted === undefined ? undefined : Math.max(least, Math.min(most, wanted))
  return {
    part,
    options: {
      ...(opening === undefined ? {} : { opening }),
      ...(inHand ? { inHand } : {}),
      ...(work.of.length > 0 ? { of: work.of, there: under(work) } : {}),
    },
  }
}

/** What a piece of work looks like, in a box of `size`, px; its words `text` px high. */
export function figureOf(design: Design, work: Work, size: Size, text?: number): Drawing {
  const { part, options } = drawnOf(design, work)
  return stepFigure(part, stateOf(design, work), size, {
    ...options,
    ...(text === undefined ? {} : { text }),
  })
}

/** How a piece of work moves what it shows; null where nothing moves. */
export function motionOf(design: Design, work: Work, size: Size): StepMotion | null {
  const { part, options } = drawnOf(design, work)
  return stepMotion(part, stateOf(design, work), size, options)
}
