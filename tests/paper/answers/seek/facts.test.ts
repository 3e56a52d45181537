// What a new part asks of a maker, counted on paper.
import { expect, test } from 'vitest'
import { factsOf } from '../../../../src/paper/answers/seek/facts.ts'
import { layer } from '../../shared/check-designs.ts'
import { design } from '../../shared/designs.ts'

const tent = {
  id: 'tent',
  kind: 'glued-tent',
  on: 'gutter',
  start: 90,
  end: 130,
  leftFoot: 20,
  rightFoot: 20,
  leftWall: 30,
  rightWall: 30,
  tab: 8,
}

test('a tent: one piece of its walls and tabs, two places to glue', () => {
  const facts = factsOf(design([tent]), new Set(['tent']))
  // 8 + 30 + 30 + 8 wide, 40 long.
  expect(facts.paper).toHaveLength(1)
  expect(facts.paper[0]?.width).toBeCloseTo(76, 6)
  expect(facts.paper[0]?.height).toBeCloseTo(40, 6)
  expect(facts.area).toBeCloseTo(76 * 40, 4)
  expect([facts.joints, facts.pieces]).toEqual([2, 1])
  // Shut: two pages, and of the piece two walls, and where a tab lies its layer too.
  expect(facts.layers).toBeGreaterThanOrEqual(4)
  expect(facts.thickness).toBeCloseTo(facts.layers * 0.25, 9)
})

test('a layer: nothing but what is there', () => {
  const facts = factsOf(design([tent, layer('step', 'gutter', 20, 60, 20)]), new Set(['step']))
  expect(facts).toMatchObject({ paper: [], area: 0, joints: 0, pieces: 0 })
})
