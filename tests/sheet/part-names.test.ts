// Steps call a part that is cut from the card by its name: the name stands on that part and on no other. Within which
// lines it lies is told by the winding of angles (mathematics), which the layout does not use.
import { expect, test } from 'vitest'
import { pieces } from '../../src/paper/index.ts'
import type { SheetLines } from '../../src/sheet/index.ts'
import { onPage } from '../../src/sheet/marks/piece-marks.ts'
import { extent } from '../../src/sheet/marks/setting.ts'
import { dummy, laid } from './designs.ts'

type Point = readonly [number, number]

/** Whether points lie all round another: no gap between their directions is half a turn. */
function isAmong([x, y]: Point, points: readonly Point[]): boolean {
  const ways = points.map(([u, v]) => Math.atan2(v - y, u - x)).sort((a, b) => a - b)
  return ways.every((way, k) => (ways[k + 1] ?? (ways[0] as number) + 2 * Math.PI) - way < Math.PI)
}

function namesOn(name: string, lines: SheetLines) {
  const design = dummy(name)
  const card = pieces(design).find(({ id }) => id === 'card')
  const pages = laid(design, { paper: 'a4', lines, care: [] })
  return pages.flatMap(({ marks, placed }) => {
    const place = placed.find(({ piece }) => piece === 'card')?.place
    if (!place || !card) return []
    const of = (id: string): readonly Point[] =>
      card.lines
        .filter((line) => line.of.split('/')[0] === id)
        .flatMap(({ points }) => points.map((point): Point => onPage(place, point)))
    return marks.flatMap((mark) => {
      if (mark.mark !== 'word' || !(mark.of ?? '').endsWith('/name')) return []
      const [l, t, r, b] = extent(mark)
      return [
        {
          text: mark.text,
          corners: [
            [l, t],
            [r, t],
            [r, b],
            [l, b],
          ] as readonly Point[],
          of,
        },
      ]
    })
  })
}

test.each(['front', 'back'] as const)('lines %s: eyes and lids are told apart', (lines) => {
  const found = namesOn('eyes', lines)
  expect(found.map(({ text }) => text).sort()).toEqual([
    'beak',
    'jaw',
    'left eye',
    'left lid',
    'right eye',
    'right lid',
  ])
  for (const { text, corners, of } of found) {
    const id = text.replace(' ', '-')
    for (const corner of corners) {
      expect(isAmong(corner, of(id)), `${text} on its part`).toBe(true)
      // The lid is cut from the eye, and the eye from the beak.
      const inner = { 'left-eye': ['left-lid'], 'right-eye': ['right-lid'], beak: ['left-eye', 'right-eye'] }[
        id
      ]
      for (const other of inner ?? []) expect(isAmong(corner, of(other)), `${text} on ${other}`).toBe(false)
    }
  }
})

test('every reed has its own name; a good copy has none', () => {
  expect(namesOn('reeds', 'back').map(({ text }) => text)).toHaveLength(7)
  expect(namesOn('eyes', 'ticks')).toEqual([])
})

test('the name of a part stands on none that is cut from within it, though there would be room', () => {
  const names = namesOn('garden', 'front')
  const lantern = names.find(({ text }) => text === 'lantern')
  expect(names.map(({ text }) => text)).toContain('window')
  for (const corner of lantern?.corners ?? []) {
    expect(isAmong(corner, lantern?.of('lantern') ?? [])).toBe(true)
    expect(isAmong(corner, lantern?.of('window') ?? [])).toBe(false)
  }
  expect(lantern?.corners).toHaveLength(4)
})

test('a name leaves small shapes of the picture free where there is other room', () => {
  const design = dummy('eyes')
  const [page] = laid(design, { paper: 'a4', lines: 'front', art: 'colour', care: [] })
  const names = (page?.marks ?? []).filter(({ of }) => /eye.name$/.test(of ?? '')).map(extent)
  expect(names).toHaveLength(2)
  // The light in the heron's pupils is a round of 4.8 mm.
  const lights = (page?.painting?.panels ?? [])
    .filter(({ of }) => /^(left|right)-eye/.test(of))
    .flatMap(({ shapes }) => shapes.flatMap(({ runs }) => runs))
    .map((run) => extent({ mark: 'path', runs: [run], closed: true, role: 'picture' }))
    .filter(([l, t, r, b]) => Math.max(r - l, b - t) < 7)
  expect(lights.length).toBeGreaterThan(1)
  for (const [l, t, r, b] of lights)
    for (const [x, y, u, v] of names) expect(x < r && u > l && y < b && v > t).toBe(false)
})

test.each([
  ['class-card', 'name'],
  ['scene', 'lantern'],
  ['tree', 'wall'],
])('%s: a part that is the only one has its name too', (name, part) => {
  for (const lines of ['front', 'back'] as const)
    expect(namesOn(name, lines).map(({ text }) => text)).toEqual([part])
})
