import * as says from '../../content/words/site/choose.ts'
import * as asks from '../../content/words/site/hands.ts'
import type { Design } from '../paper/index.ts'
import { measure, thickest, wayOf } from '../paper/index.ts'
import type { Choice } from './Choices.tsx'
import { answer, inText } from './cells/number.ts'
import { handsOf } from './hands.ts'

const millimetres = (value: number): string => inText({ value, unit: 'mm' }, 0)

/** Less than this along its fold is no way to speak of, mm. */
const ALONG = 1

/** How hard one mechanism is to make, from 1: by its cuts, folds and glue places together. */
const WORK = [
  { most: 8, says: says.easy },
  { most: 12, says: says.someCare },
  { most: Number.POSITIVE_INFINITY, says: says.patientHands },
] as const

/** How much work a card is, of three, and its cuts, folds and glue places in words. */
export function workOf(design: Design): Pick<Choice, 'level' | 'work'> {
  const { cuts, folds, glued } = handsOf(design)
  const level = WORK.findIndex(({ most }) => cuts + folds + glued <= most)
  const counts = [
    ...(cuts > 0 ? [asks.cuts(cuts)] : []),
    ...(folds > 0 ? [asks.folds(folds)] : []),
    ...(glued > 0 ? [asks.gluePlaces(glued)] : []),
  ]
  return { level: level + 1, work: says.workIs(WORK[level]?.says, counts) }
}

/** What is said of a mechanism in numbers: at a right angle, and in the shut card. */
export function factsOf(design: Design, subject: string): Choice['facts'] {
  const { value: rise } = answer(design, { of: 'rise', id: subject, at: 90 })
  const along = Math.abs(wayOf(design, subject).outward)
  const shut = measure(design, 0).tips[subject]?.standOff ?? Number.NaN
  return [
    [
      says.height,
      along < ALONG
        ? says.heightIs(millimetres(rise))
        : says.heightIsAndAlong(millimetres(rise), millimetres(along)),
    ],
    [says.room, says.roomIs(millimetres(shut))],
    [says.layers, says.layersAre(thickest(design).layers)],
  ]
}
