// What the slip that mends offers for one fault alone: never a change of what is kept, and no change twice.
import { describe, expect, test } from 'vitest'
import type { Design } from '../../../src/paper/index.ts'
import { check, parseDesign } from '../../../src/paper/index.ts'
import { singleRepairs } from '../../../src/widgets/dummy/model/single-repairs.ts'

/** The slit goes past both side edges: on either page a fault, and one size mends both. */
const wide: Design = parseDesign({
  hingebook: 1,
  title: 'Wide',
  card: { width: 105, height: 148 },
  mechanisms: [{ id: 'v-fold-1', kind: 'cut-v-fold', on: 'gutter', apex: 26, run: 96, cut: 110 }],
})

const failed = check(wide).filter(({ ok }) => !ok)

describe('single repairs', () => {
  test('stand there once, however many faults they mend', () => {
    const changes = failed.flatMap(({ repair }) => (repair ? [JSON.stringify(repair.change)] : []))
    // The case is one: the checks name one change more than once.
    expect(new Set(changes).size).toBeLessThan(changes.length)
    const offered = singleRepairs(wide, failed, []).flatMap(({ repair }) => repair ?? [])
    expect(offered.map(({ change }) => JSON.stringify(change))).toEqual([...new Set(changes)])
    expect(singleRepairs(wide, failed, []).filter(({ isAbove }) => isAbove)).toHaveLength(
      changes.length - offered.length,
    )
  })

  test('do not set what is kept, and say what is', () => {
    const singles = singleRepairs(wide, failed, ['v-fold-1.cut'])
    expect(singles.map(({ check: one }) => one)).toEqual(failed)
    for (const { repair } of singles)
      for (const { fields } of repair?.change ?? []) expect(Object.keys(fields)).not.toContain('cut')
    expect(singles.some(({ kept }) => kept?.id === 'v-fold-1' && kept.label === 'Slit')).toBe(true)
  })

  test('nor what follows from a size: a kept wedge angle keeps the slit', () => {
    const singles = singleRepairs(wide, failed, ['v-fold-1.wedge'])
    expect(singles.some(({ kept }) => kept?.label === 'Wedge angle')).toBe(true)
    expect(singles.flatMap(({ repair }) => repair ?? [])).toEqual([])
  })

  test('of other parts are offered all the same', () => {
    expect(singleRepairs(wide, failed, ['v-fold-1.apex'])).toEqual(singleRepairs(wide, failed, []))
  })
})
