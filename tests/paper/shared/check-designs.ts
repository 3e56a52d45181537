// What the tests of the checks share: designs by hand, and one check's results.
import type { Card, Check, CheckName, Design } from '../../../src/paper/index.ts'
import { check } from '../../../src/paper/index.ts'
import { design } from './designs.ts'

export { mirrored } from './twins.ts'

export const fold = (id: string, on: string, apex: number, run: number, cut: number, more: object = {}) => ({
  id,
  kind: 'cut-v-fold',
  on,
  apex,
  run,
  cut,
  ...more,
})

export const layer = (id: string, on: string, start: number, end: number, left: number, right = left) => ({
  id,
  kind: 'cut-layer',
  on,
  start,
  end,
  left,
  right,
})

/** The results of one check, repairs left out unless asked for. */
export const only = (
  name: CheckName,
  of: Design,
  options: Parameters<typeof check>[1] = { repairs: false },
) => check(of, options).filter((one) => one.name === name)

export const first = (name: CheckName, mechanisms: readonly object[], card: Partial<Card> = {}): Check =>
  only(name, design(mechanisms, card))[0] as Check

/** A tent of its own card over the gutter. */
export const tent = (more: object = {}) => ({
  id: 'tent',
  kind: 'glued-tent',
  on: 'gutter',
  start: 40,
  end: 80,
  leftFoot: 30,
  rightFoot: 30,
  leftWall: 40,
  rightWall: 40,
  ...more,
})
