import { expect, test } from 'vitest'
import { parseDesign } from '../../src/paper/index.ts'
import { readLink } from '../../src/widgets/link/read-link.ts'
import { linkTo } from '../../src/widgets/model/address.ts'
import { benchModel } from '../../src/widgets/model/bench-model.ts'
import { offeredBy } from '../../src/widgets/model/offered.ts'

const moth = parseDesign({
  hingebook: 1,
  title: 'Moth',
  card: { width: 105, height: 148 },
  mechanisms: [
    {
      id: 'moth',
      kind: 'glued-v-fold',
      on: 'gutter',
      apex: 40,
      toward: 1,
      base: 60,
      facet: 45,
      foot: 50,
      ridge: 50,
    },
  ],
})

const fields = [
  { id: 'moth', field: 'pop' },
  { id: 'moth', field: 'base' },
]

const bench = () => benchModel(moth, { fields, readings: ['rise', 'stop'] })

/** The bench's one choice: popped or still down. */
const popOf = (b: ReturnType<typeof bench>) => {
  const [choice] = offeredBy(b).choices
  if (!choice) throw new Error('the bench offers no choice')
  return choice
}

test('popped or still down is a choice, and the base angle a number', () => {
  const b = bench()
  expect(offeredBy(b).choices.map(({ key }) => key)).toEqual(['moth.pop'])
  expect(offeredBy(b).fields.map(({ key }) => key)).toEqual(['moth.base'])
  expect(popOf(b).options.map(({ says }) => says)).toEqual(['Popped', 'Still down'])
})

test('the reader flips the piece down and undoes it; the tip moves and comes back', () => {
  const b = bench()
  const rise = () => b.readings.value.find(({ name }) => name === 'rise')?.value ?? Number.NaN
  const up = rise()
  const choice = popOf(b)
  b.step(choice.key, (state) => choice.set(state, 'down'))
  b.rest()
  expect(choice.get(b.state.value)).toBe('down')
  expect(rise()).toBeLessThan(up - 5)
  b.undo()
  expect(choice.get(b.state.value)).toBe('up')
  expect(rise()).toBe(up)
})

test('a link brings the choice back, and a wrong word is told and left out', () => {
  const b = bench()
  const choice = popOf(b)
  b.step(choice.key, (state) => choice.set(state, 'down'))
  b.rest()
  expect(linkTo(b)).toBe('moth.pop=down')
  expect(readLink(linkTo(b), b.start).state.design).toEqual(b.state.value.design)
  const wrong = readLink('moth.pop=sideways&opening=50', b.start)
  expect(wrong.faults).toEqual([
    'The link’s state (moth.pop) must be up or down, not “sideways”. The page’s own value stands.',
  ])
  expect(wrong.state.opening).toBe(50)
  expect(wrong.state.design).toEqual(moth)
})

// cos^2(t/2) = (cos^2 a - cos^2 b) / sin^2 b: base 60, facet 45 stops at arccos(-1/3), the octahedron's
// dihedral angle (Coxeter, Regular Polytopes, table I [memory]).
test('the strip says how far the card opens', () => {
  const stop = bench().readings.value.find(({ name }) => name === 'stop')
  expect(stop?.value).toBeCloseTo((Math.acos(-1 / 3) * 180) / Math.PI, 6)
})
