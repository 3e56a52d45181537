// What the checks say, as sentences: names as a reader would say them, and sizes said once.
import { expect, test } from 'vitest'
import * as names from '../../../src/paper/checks/names.ts'
import { mm } from '../../../src/paper/checks/phrases.ts'
import { check } from '../../../src/paper/index.ts'
import * as says from '../../../src/paper/words/checks.ts'
import { layer, tent } from '../shared/check-designs.ts'
import { design } from '../shared/designs.ts'

test('a gap too small to be told is said once to be small', () => {
  const said = (gap: number): string => says.clearUntold('the owl', 'the reed', 'when open', mm(gap))
  expect(said(0.0001)).toMatch(/the gap is less than 0\.001 mm\.$/)
  expect(said(0.3)).toMatch(/the gap is 0\.3 mm or less\.$/)
})

test('a name that begins with its article has one', () => {
  expect(names.The('the-big-moon')).toBe('The big moon')
  expect(names.the('the-big-moon')).toBe('the big moon')
  expect(names.place('the-big-moon/ridge')).toBe('the big moon’s ridge')
  // Its own word, not the beginning of another.
  expect(names.The('theatre')).toBe('The theatre')
  expect(names.the('theatre')).toBe('the theatre')
})

test('what glue runs over is called by its name, not by its id', () => {
  const made = design([layer('layer-1', 'gutter', 45, 75, 34), { ...tent(), id: 'the-big-moon' }])
  const said = check(made, { repairs: false, names: ['glue'] }).flatMap(({ ok, sentence }) =>
    ok ? [] : [sentence],
  )
  expect(said.join(' ')).toMatch(/^The big moon’s glue runs .* over the cut and folds of the layer 1 on /)
  expect(said.join(' ')).not.toMatch(/layer-1|[Tt]he the/)
})
