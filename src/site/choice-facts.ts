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
  { most: 8, says: 'easy' },
  { most: 12, says: 'some care' },
  { most: Number.POSITIVE_INFINITY, says: 'patient hands' },
] as const

/** How much work a card is, of three, and its cuts, folds and glue places in words. */
export function workOf(design: Design): Pick<Choice, 'level' | 'work'> {
  const { cuts, folds, glued } = handsOf(design)
  const level = WORK.findIndex(({ most }) => cuts + folds + glued <= most)
  const counts = [
    ...(cuts > 0 ? [`${cuts} ${cuts === 1 ? 'cut' : 'cuts'}`] : []),
    ...(folds > 0 ? [`${folds} folds`] : []),
    ...(glued > 0 ? [`${glued} glue places`] : []),
  ]
  return { level: level + 1, work: `${WORK[level]?.says}: ${counts.join(', ')}` }
}

/** What is said of a mechanism in numbers: at a right angle, and in the shut card. */
export function factsOf(design: Design, subject: string): Choice['facts'] {
  const { value: rise } = answer(design, { of: 'rise', id: subject, at: 90 })
  const along = Math.abs(wayOf(design, subject).outward)
  const shut = measure(design, 0).tips[subject]?.standOff ?? Number.NaN
  return [
    [
      'Height',
      `${millimetres(rise)} at 90°${along < ALONG ? '' : `, and ${millimetres(along)} along its fold`}`,
    ],
    ['Room', `${millimetres(shut)} from the gutter when shut`],
    ['Layers', `${thickest(design).layers} when shut`],
  ]
}
