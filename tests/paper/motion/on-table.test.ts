// The pieces of several mechanisms, side by side on the table.
import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { loose } from '../../../src/making/gluing.ts'
import { parseDesign } from '../../../src/paper/index.ts'

const dummy = (name: string) =>
  parseDesign(
    JSON.parse(
      readFileSync(new URL(`../../../content/dummies/${name}.hingebook.json`, import.meta.url), 'utf8'),
    ),
  )

test.each([
  ['owl', ['body', 'left-wing', 'right-wing', 'tail']],
  ['moon', ['hill', 'moon', 'cloud', 'tree', 'star']],
  ['hedgehog', ['body', 'heap', 'pond', 'head', 'left-coat', 'right-coat']],
])('the pieces of the %s lie apart, flat, no wider than the open card', (name, ids) => {
  const design = dummy(name)
  const { paper } = loose(design, ids, false)
  const pieces = new Map<number, { id: string; box: [number, number, number, number] }>()
  for (const { leaf, panel, points } of paper) {
    const box = pieces.get(leaf)?.box ?? [1e9, -1e9, 1e9, -1e9]
    for (const [x, y, z] of points) {
      expect(z).toBe(0)
      box[0] = Math.min(box[0], x)
      box[1] = Math.max(box[1], x)
      box[2] = Math.min(box[2], y)
      box[3] = Math.max(box[3], y)
    }
    pieces.set(leaf, { id: panel.split('/')[0] ?? '', box })
  }
  const all = [...pieces.values()]
  expect(new Set(all.map(({ id }) => id))).toEqual(new Set(ids))
  all.forEach(({ box: [a0, a1, b0, b1] }, k) => {
    for (const {
      box: [c0, c1, d0, d1],
    } of all.slice(k + 1))
      expect(a1 < c0 || c1 < a0 || b1 < d0 || d1 < b0).toBe(true)
  })
  const wide = Math.max(...all.map(({ box }) => box[1])) - Math.min(...all.map(({ box }) => box[0]))
  expect(wide).toBeLessThanOrEqual(2 * design.card.width)
})
