// Two parts that fail a check alike, far from each other: asked about one, a check tells nothing of the other.
import { expect, test } from 'vitest'
import { subjectOf } from '../../../src/paper/checks/subject.ts'
import { examiners } from '../../../src/paper/checks/table.ts'
import type { CheckName } from '../../../src/paper/index.ts'
import { fold, layer } from '../shared/check-designs.ts'
import { design } from '../shared/designs.ts'

const tent = (id: string, start: number) => ({
  id,
  kind: 'glued-tent',
  on: 'gutter',
  start,
  end: start + 20,
  leftFoot: 20,
  rightFoot: 20,
  leftWall: 30,
  rightWall: 34,
})

const moon = (id: string, along: number) => {
  const shape = [
    [90, along],
    [120, along],
    [120, along + 30],
    [90, along + 30],
  ]
  return { id, kind: 'rider', on: 'page/right', shape, glue: shape }
}

/** Each fails its check twice: once about `one`, once about `two`. */
const failing: readonly (readonly [CheckName, readonly object[]])[] = [
  ['shuts-flat', [tent('one', 20), tent('two', 80)]],
  ['stays-inside', [layer('one', 'gutter', 20, 40, 60), layer('two', 'gutter', 80, 100, 60)]],
  [
    'inside-fold',
    [
      layer('lamp', 'gutter', 10, 50, 30),
      layer('reed', 'gutter', 80, 120, 30),
      layer('one', 'lamp/ridge', 20, 45, 9),
      layer('two', 'reed/ridge', 20, 45, 9),
    ],
  ],
  ['cuts-inside', [layer('one', 'gutter', 20, 40, 110, 5), layer('two', 'gutter', 80, 100, 110, 5)]],
  [
    'cuts-apart',
    [
      layer('one', 'gutter', 10, 40, 20),
      layer('lamp', 'gutter', 30, 50, 20),
      layer('two', 'gutter', 80, 110, 20),
      layer('reed', 'gutter', 100, 130, 20),
    ],
  ],
  ['bridge', [fold('one', 'gutter', 60, -40, 102), fold('two', 'gutter', 130, -40, 102)]],
  ['narrow', [layer('one', 'gutter', 20, 23, 20), layer('two', 'gutter', 80, 83, 20)]],
  ['glue', [moon('one', 10), moon('two', 80)]],
]

test.each(failing)('%s', (name, mechanisms) => {
  const made = design(mechanisms)
  const examiner = examiners.find((one) => one.name === name)
  const told = (about: { ids: ReadonlySet<string>; alone: boolean } | null): string[] => {
    const subject = subjectOf(made, { bridge: 5, thickness: 2 }, about, { left: 1e6 })
    const found = examiner?.examine(subject, new Set()).filter(({ ok }) => !ok) ?? []
    return [...new Set(found.flatMap(({ ids }) => ids.filter((id) => id === 'one' || id === 'two')))].sort()
  }
  expect(told(null)).toEqual(['one', 'two'])
  expect(told({ ids: new Set(['one']), alone: false })).toEqual(['one'])
  expect(told({ ids: new Set(['two']), alone: false })).toEqual(['two'])
  // Alone, with all that it fails against.
  expect(told({ ids: new Set(['two', 'reed']), alone: true })).toEqual(['two'])
})

test('what has no part in it is told by no check that looks at parts', () => {
  for (const [name, mechanisms] of failing) {
    const made = design([...mechanisms, layer('step', 'gutter', 140, 146, 5)])
    const subject = subjectOf(
      made,
      { bridge: 1, thickness: 2 },
      { ids: new Set(['owl']), alone: false },
      { left: 1e6 },
    )
    const examiner = examiners.find((one) => one.name === name)
    expect(examiner?.examine(subject, new Set()).filter(({ ok }) => !ok)).toEqual([])
  }
})
