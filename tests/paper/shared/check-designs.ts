// What the tests of the checks share: designs by hand, one check's results, and the mirrored twin.
import type { Card, Check, CheckName, Design, Mechanism } from '../../../src/paper/index.ts'
import { check } from '../../../src/paper/index.ts'
import { design } from './designs.ts'

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

const swapped = (on: string): string =>
  on.replace(/\/(left|right)$/, (_, side: string) => (side === 'left' ? '/right' : '/left'))

/** The design seen in a mirror that stands on the gutter: left and right change places. */
export const mirrored = (of: Design): Design => ({
  ...of,
  mechanisms: of.mechanisms.map((m): Mechanism => {
    const on = swapped(m.on)
    return m.kind === 'cut-layer'
      ? { ...m, on, left: m.right as number, right: m.left as number }
      : ({ ...m, on } as Mechanism)
  }),
})
