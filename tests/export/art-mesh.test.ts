// What is drawn on paper as flat colour in triangles: areas by hand, and by polyclip-ts for what bends.
import { readFileSync } from 'node:fs'
import { intersection } from 'polyclip-ts'
import { expect, test } from 'vitest'
import { straight } from '../../src/drawing/art/outlines.ts'
import { artOn } from '../../src/drawing/art/shapes.ts'
import { inkPatches } from '../../src/export/art-mesh.ts'
import type { Design, Flat } from '../../src/paper/index.ts'
import { modelOf, parseDesign, patchesOf } from '../../src/paper/index.ts'

const area = (ring: readonly (readonly [number, number])[]): number =>
  ring.reduce((sum, [x, y], k) => {
    const [u, v] = ring[(k + 1) % ring.length] as readonly [number, number]
    return sum + (x * v - u * y) / 2
  }, 0)

const PAGE: readonly Flat[] = [
  [0, 0],
  [105, 0],
  [105, 148],
  [0, 148],
]

const drawn = (...art: readonly object[]): Design =>
  parseDesign({
    hingebook: 1,
    title: 'Shapes',
    card: { width: 105, height: 148, caliper: 0.25 },
    mechanisms: [],
    art: art.map((one) => ({ on: 'page/right', ...one })),
  })

const SQUARE = [
  [95, 20],
  [115, 20],
  [115, 40],
  [95, 40],
]

const sum = (outlines: readonly (readonly Flat[])[]): number =>
  outlines.reduce((all, outline) => all + area(outline), 0)

test('a square half over the edge is cut there, whichever way round it was drawn', () => {
  for (const shape of [SQUARE, [...SQUARE].reverse()]) {
    const [patch, ...more] = inkPatches(drawn({ shape, fill: 'moon' }), 'page/right', [PAGE])
    expect(more).toEqual([])
    expect(sum(patch?.outlines ?? [])).toBeCloseTo(10 * 20, 9)
    for (const [x] of patch?.outlines.flat() ?? []) expect(x).toBeLessThanOrEqual(105)
  }
})

test('a fine line is as wide as it says', () => {
  const [patch] = inkPatches(
    drawn({
      shape: [
        [10, 20],
        [40, 60],
      ],
      closed: false,
      fill: null,
      line: true,
      lineColour: 'moon',
      lineWidth: 0.5,
    }),
    'page/right',
    [PAGE],
  )
  expect(sum(patch?.outlines ?? [])).toBeCloseTo(0.5 * 50, 9)
})

test('what is drawn later lies above, and the back has its own', () => {
  const patches = inkPatches(
    drawn(
      { shape: SQUARE, fill: 'moon' },
      { shape: SQUARE, fill: 'night' },
      { shape: SQUARE, fill: 'dusk', face: 'back' },
    ),
    'page/right',
    [PAGE],
  )
  expect(patches.map(({ face }) => face)).toEqual(['front', 'front', 'back'])
  const [low = 0, high = 0] = patches.map(({ above }) => above)
  expect(low).toBeGreaterThan(0)
  expect(high).toBeGreaterThan(low)
})

test.each(['beak', 'moth'])('%s: each shape that bends covers what polyclip-ts leaves of it', (name) => {
  const file = new URL(`../../content/dummies/${name}.hingebook.json`, import.meta.url)
  const design = parseDesign(JSON.parse(readFileSync(file, 'utf8')))
  const model = modelOf(design)
  let compared = 0
  model.panels.forEach((panel, index) => {
    const paper = patchesOf(model)
      .filter((patch) => patch.panel === index)
      .map(({ outline }) => outline)
    const patches = inkPatches(design, panel.name, paper).filter(({ face }) => face === 'front')
    const art = artOn(design, panel.name, 'front')
    for (const shape of [...(art?.shapes ?? []), ...(art?.lit ?? [])]) {
      // Of one outline and filled alone: then a patch is a shape.
      if (shape.fill === null || shape.line !== null || shape.runs.length > 1) continue
      const ring = (points: readonly Flat[]) => [points.map(([x, y]): [number, number] => [x, y])]
      const outline = straight(shape.runs[0] ?? [], shape)
      const left = paper
        .flatMap((patch) => intersection(ring(outline), ring(patch)))
        .reduce((all, rings) => all + rings.reduce((own, one) => own + area(one), 0), 0)
      const box = outline.map(([x, y]) => `${x.toFixed(6)} ${y.toFixed(6)}`)
      const same = patches.filter(({ ink, outlines }) => {
        const corners = outlines.flat().map(([x, y]) => `${x.toFixed(6)} ${y.toFixed(6)}`)
        return 'colour' in ink && ink.colour === shape.fill && corners.some((corner) => box.includes(corner))
      })
      if (same.length === 0) continue
      compared++
      expect(
        same.some(({ outlines }) => Math.abs(sum(outlines) - left) < 0.01 + 0.001 * left),
        `${panel.name}: ${left}`,
      ).toBe(true)
    }
  })
  expect(compared).toBeGreaterThan(4)
})
