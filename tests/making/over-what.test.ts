// What lies over what: tape on the face that it is stuck to, by hand.
import { expect, test } from 'vitest'
import { tapes } from '../../src/making/gluing.ts'
import { compile, surfaces } from '../../src/paper/index.ts'
import { design, gluedMoth } from '../paper/shared/designs.ts'

test.each([
  // On the page, and on the moth that lies on it.
  ['inside', [1, 2]],
  // Behind the page lies the moth; its own tape lies behind that, which is on its front. The page's is on its inside.
  ['outside', [-2, 1]],
] as const)('tape of a piece on the %s of the gutter lies on the front of what it holds', (side, layers) => {
  const poser = compile(design([gluedMoth({ side })]))
  poser(90)
  const found = tapes(surfaces(poser), poser, 0).map(({ layer }) => layer)
  expect([...new Set(found)].sort((a, b) => a - b)).toEqual(layers)
})
