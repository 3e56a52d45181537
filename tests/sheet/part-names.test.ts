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

/** How far the corners and the middles of a name's sides are from a stretch, by plain search. */
const apart = (corners: readonly Point[], [a, b]: readonly [Point, Point]): number => {
  const round = corners.flatMap(([x, y], k): Point[] => {
    const [u, v] = corners[(k + 1) % corners.length] as Point
    return Array.from({ length: 41 }, (_, i) => [x + ((u - x) * i) / 40, y + ((v - y) * i) / 40])
  })
  const line = Array.from(
    { length: 201 },
    (_, i): Point => [a[0] + ((b[0] - a[0]) * i) / 200, a[1] + ((b[1] - a[1]) * i) / 200],
  )
  return Math.min(...round.flatMap(([x, y]) => line.map(([u, v]) => Math.hypot(x - u, y - v))))
}

test.each(['scene', 'eyes', 'heron', 'tree'])('%s: a name is read apart from folds and cuts', (name) => {
  const design = dummy(name)
  const card = pieces(design).find(({ id }) => id === 'card')
  const [page] = laid(design, { paper: 'a4', lines: 'front', care: [] })
  const place = page?.placed.find(({ piece }) => piece === 'card')?.place
  if (!card || !page || !place) throw new Error('no card')
  for (const { text, corners } of namesOn(name, 'front'))
    for (const { kind, points } of card.lines)
      points.slice(1).forEach((b, k) => {
        if (kind === 'glue') return
        const far = apart(corners, [onPage(place, points[k] as Point), onPage(place, b)])
        // In a small eye, and in its lid, there is less room.
        const isSmall = / (eye|lid)$/.test(text)
        expect(far, `${text} beside a ${kind}`).toBeGreaterThan(isSmall ? 0.55 : kind === 'cut' ? 1.4 : 1.9)
      })
})

test.each(['front', 'back'] as const)(
  'lines %s: names of the two eyes, and of the two lids, stand alike',
  (lines) => {
    const design = dummy('eyes')
    const [page] = laid(design, { paper: 'a4', lines, care: [] })
    const gutter = onPage(page?.placed[0]?.place ?? { origin: [0, 0], mirrored: false }, [0, 0])[0]
    const found = namesOn('eyes', lines)
    for (const part of ['eye', 'lid']) {
      const [left, right] = ['left', 'right'].map((side) => {
        const corners = found.find(({ text }) => text === `${side} ${part}`)?.corners ?? []
        const mean = (k: 0 | 1) => corners.reduce((sum, corner) => sum + corner[k], 0) / corners.length
        const height = Math.max(...corners.map(([, y]) => y)) - Math.min(...corners.map(([, y]) => y))
        return { x: mean(0), y: mean(1), height }
      })
      if (!left || !right) throw new Error(`no ${part}`)
      // What hangs below a line of words lies at the right of one that runs up.
      expect(Math.abs((left.x + right.x) / 2 - gutter)).toBeLessThan(0.4)
      expect(left.y).toBeCloseTo(right.y, 3)
      // Both lie, or both stand.
      expect(Math.abs(left.height - right.height)).toBeLessThan(3)
    }
  },
)
