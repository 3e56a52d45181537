// The night garden's dummies: every file is read, checked, shut, printed.
import { readdirSync, readFileSync } from 'node:fs'
import { difference } from 'polyclip-ts'
import { describe, expect, test } from 'vitest'
import type { Design } from '../../src/paper/index.ts'
import { check, kindOf, measure, parseDesign, pieces, poseAt, settingOf } from '../../src/paper/index.ts'
import { fitOn, layOut, paperOf } from '../../src/sheet/index.ts'

const FOLDER = new URL('../../content/dummies/', import.meta.url)
const ENDING = '.hingebook.json'

const names = readdirSync(FOLDER)
  .filter((file) => file.endsWith(ENDING))
  .map((file) => file.slice(0, -ENDING.length))

const dummy = (name: string): Design =>
  parseDesign(JSON.parse(readFileSync(new URL(name + ENDING, FOLDER), 'utf8')))

const mechanism = (name: string, id: string) => {
  const found = dummy(name).mechanisms.find((m) => m.id === id)
  if (!found) throw new Error(`${name} has no ${id}`)
  return found
}

/** mm² of rounding that no pencil shows. */
const NOTHING = 1e-6

const area = (shapes: [number, number][][][]): number =>
  shapes.flat().reduce(
    (sum, ring) =>
      sum +
      Math.abs(
        ring.reduce((twice, [x, y], k) => {
          const [u, v] = ring[(k + 1) % ring.length] as [number, number]
          return twice + x * v - u * y
        }, 0) / 2,
      ),
    0,
  )

test('the folder holds what the chapters and the command line show', () => {
  expect(names).toEqual(expect.arrayContaining(['card', 'beak', 'heron', 'layers', 'lantern', 'reeds']))
})

describe.each(names)('%s', (name) => {
  const design = dummy(name)
  const { width, height } = design.card

  test('is cut from half a sheet of A4', () => {
    // ISO 216: A5 is 148 x 210 mm, half of A4; one page of the card is A6, 105 x 148 mm.
    expect([2 * width, height]).toEqual([210, 148])
  })

  test('works as paper: every check holds, with 5 mm left between cuts', () => {
    const checks = check(design)
    expect(checks.length).toBeGreaterThan(0)
    expect(checks.filter(({ ok }) => !ok).map(({ sentence }) => sentence)).toEqual([])
  })

  test('is a number at every whole opening', () => {
    for (let opening = 0; opening <= 180; opening++) {
      const { panels, stopped } = poseAt(design, opening)
      expect(stopped).toEqual([])
      expect(Object.values(panels).flat(2).every(Number.isFinite), `${opening} degrees`).toBe(true)
    }
  })

  test('is hidden when shut: no panel lies outside the page', () => {
    // Against a general polygon clipper: what is left of the shut panels outside the page is nothing.
    const page: [number, number][][][] = [
      [
        [
          [0, 0],
          [width, 0],
          [width, height],
          [0, height],
        ],
      ],
    ]
    for (const [panel, outline] of Object.entries(poseAt(design, 0).panels)) {
      for (const [x] of outline) expect(Math.abs(x)).toBeLessThan(NOTHING)
      const lying: [number, number][][][] = [[outline.map(([, y, z]): [number, number] => [z, y])]]
      expect(area(difference(lying, page)), panel).toBeLessThan(NOTHING)
    }
  })

  test('has no line off the sheet', () => {
    const points = pieces(design).flatMap(({ lines }) => lines.flatMap((line) => line.points))
    for (const [x, y] of points) {
      expect(Math.abs(x)).toBeLessThanOrEqual(width + NOTHING)
      expect(y).toBeGreaterThanOrEqual(-NOTHING)
      expect(y).toBeLessThanOrEqual(height + NOTHING)
    }
  })

  test('has cuts that school scissors reach', () => {
    // Common practice, no source: blades of about 60 mm cut 50 mm deep in one go.
    for (const m of design.mechanisms)
      for (const { name: field } of kindOf(m).fields)
        if (['cut', 'left', 'right', 'startCut', 'endCut'].includes(field)) {
          expect(settingOf(m, field), `${m.id} ${field}`).toBeGreaterThanOrEqual(8)
          expect(settingOf(m, field), `${m.id} ${field}`).toBeLessThanOrEqual(50)
        }
  })

  test.each(['a4', 'letter'] as const)('prints on one page of %s at true size', (paper) => {
    expect(fitOn(design, paperOf(paper)).sentence).toBe('')
    const placed = layOut(design, { paper }).flatMap((page) => page.placed)
    expect(placed.map(({ piece }) => piece)).toEqual(['card'])
  })
})

describe('what the chapters say of them', () => {
  test.each([
    ['heron', 'beak'],
    ['lantern', 'layers'],
  ])('the %s holds all of the %s', (whole, part) => {
    for (const m of dummy(part).mechanisms) expect(mechanism(whole, m.id)).toEqual(m)
  })

  test('the heron’s eyes stand on folds that its beak made', () => {
    const eyes = dummy('heron').mechanisms.filter((m) => m.on.startsWith('beak/'))
    expect(eyes.map((m) => m.on)).toEqual(['beak/left', 'beak/right'])
  })

  test('the lantern’s body stands as high at 90° as its cuts are deep', () => {
    // A square: all four sides are 32 mm. The ledge is a rectangle.
    const { tips } = measure(dummy('layers'), 90)
    expect(tips.body?.rise).toBeCloseTo(settingOf(mechanism('layers', 'body'), 'left'), 9)
    expect(tips.ledge?.rise).toBeCloseTo(settingOf(mechanism('layers', 'ledge'), 'right'), 9)
  })

  test('no two reeds are equally tall', () => {
    const reeds = dummy('reeds').mechanisms.filter((m) => m.id.startsWith('reed-'))
    expect(reeds.length).toBeGreaterThan(3)
    expect(new Set(reeds.map((m) => settingOf(m, 'left'))).size).toBe(reeds.length)
  })
})
