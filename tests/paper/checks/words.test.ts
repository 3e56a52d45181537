// What the checks say, as sentences: names as a reader would say them, and sizes said once.
import { expect, test } from 'vitest'
import { mm } from '../../../src/paper/checks/phrases.ts'
import { check } from '../../../src/paper/index.ts'
import * as says from '../../../src/paper/words/checks.ts'
import { layer, tent } from '../shared/check-designs.ts'
import { design } from '../shared/designs.ts'

test('a gap too small to be told is said once to be small', () => {
  const said = (gap: number): string => says.clearUntold('the owl', 'the reed', 'when open', mm(gap))
  expect(said(0.0001)).toMatch(/the gap is too small, less than 0\.001 mm\.$/)
  expect(said(0.3)).toMatch(/the gap is too small, 0\.3 mm\.$/)
})

test('what glue runs over is called by its name, not by its id', () => {
  const made = design([layer('layer-1', 'gutter', 45, 75, 34), { ...tent(), id: 'big-moon' }])
  const said = check(made, { repairs: false, names: ['glue'] }).flatMap(({ ok, sentence }) =>
    ok ? [] : [sentence],
  )
  expect(said.join(' ')).toMatch(/^The big moon’s glue runs .* over the cut and folds of the layer 1 on /)
  expect(said.join(' ')).not.toMatch(/layer-1/)
})
