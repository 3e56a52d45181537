// The night garden's dummies: every file is read, checked, shut, printed.
import { readdirSync, readFileSync } from 'node:fs'
import { difference, intersection } from 'polyclip-ts'
import { describe, expect, test } from 'vitest'
import type { Design } from '../../../src/paper/index.ts'
import {
  check,
  kindOf,
  kinds,
  measure,
  modelOf,
  parseDesign,
  pieces,
  poseAt,
  settingOf,
} from '../../../src/paper/index.ts'
import { fitOn, layOut, paperOf } from '../../../src/sheet/index.ts'

const FOLDER = new URL('../../../content/dummies/', import.meta.url)

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

type Ring = [number, number][]

const ring = (points: readonly (readonly [number, number])[]): Ring => points.map(([x, y]) => [x, y])

/** A line as a strip a thousandth of a millimetre wide, so that a polygon clipper can hold it against a panel. */
function strip([a, b]: readonly [readonly [number, number], readonly [number, number]]): Ring {
  const long = Math.hypot(b[0] - a[0], b[1] - a[1])
  const [x, y] = [(-(b[1] - a[1]) / long) * 5e-4, ((b[0] - a[0]) / long) * 5e-4]
  return [
    [a[0] - x, a[1] - y],
    [b[0] - x, b[1] - y],
    [b[0] + x, b[1] + y],
    [a[0] + x, a[1] + y],
  ]
}

test('the folder holds what the chapters and the command line show', () => {
  expect(names).toEqual(
    expect.arrayContaining([
      'card',
      'beak',
      'heron',
      'layers',
      'lantern',
      'reeds',
      'eyes',
      'moth',
      'owl',
      'moon',
      'hedgehog',
      'pond',
      'night-garden',
    ]),
  )
})

test('together they use every kind there is', () => {
  const used = new Set(names.flatMap((name) => dummy(name).mechanisms.map((m) => m.kind)))
  expect([...used].sort()).toEqual(kinds.map(({ kind }) => kind).sort())
})

describe.each(names)('%s', (name) => {
  const design = dummy(name)
  const { width, height } = design.card

  test('is cut from half a sheet of A4, or the whole of one', () => {
    // ISO 216: A4 is 297 x 210 mm, half of it A5, 148 x 210; one page of that card is A6, 105 x 148 mm.
    // US Letter is 279.4 x 215.9 mm (ANSI/ASME Y14.1): the large card goes on both.
    if (name.endsWith('garden') || name.endsWith('large')) {
      expect(2 * width).toBeLessThanOrEqual(279)
      expect(height).toBeLessThanOrEqual(210)
    } else expect([2 * width, height]).toEqual([210, 148])
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

  test('keeps 3 mm to the edge when shut', () => {
    // Common practice, no source: less shows at once if the card is folded a little askew.
    if (design.mechanisms.length > 0) expect(measure(design, 0).margin).toBeGreaterThanOrEqual(3)
  })

  test('is glued on paper: on one panel, never over its edge, a cut or a fold', () => {
    // Against a general polygon clipper: what is left of the glue outside its panel is nothing.
    const { glue, panels, builds } = modelOf(design)
    for (const { owner, panel, outline, closed } of glue) {
      const under = panels[panel]
      if (!under) throw new Error(`there is no panel ${panel}`)
      const id = builds[owner]?.mechanism.id
      const spread = closed
        ? [ring(outline)]
        : outline.slice(1).map((p, k) => strip([outline[k] as [number, number], p]))
      for (const glued of spread) {
        // A joint may end on the panel's edge: half the strip lies past it there.
        const slack = closed ? NOTHING : 1e-5
        expect(area(difference([glued], [ring(under.outline)])), `${id} past ${under.name}`).toBeLessThan(
          slack,
        )
        for (const notch of under.notches)
          expect(area(intersection([glued], [ring(notch.outline)])), `${id} over a cut`).toBeLessThan(slack)
      }
    }
  })

  test('is stuck on by glue that lies under its own piece', () => {
    for (const m of design.mechanisms)
      if (m.kind === 'rider')
        expect(area(difference([ring(m.glue)], [ring(m.shape)])), m.id).toBeLessThan(NOTHING)
  })

  test('has no line off the sheet', () => {
    const [card] = pieces(design)
    const points = card?.lines.flatMap((line) => line.points) ?? []
    for (const [x, y] of points) {
      expect(Math.abs(x)).toBeLessThanOrEqual(width + NOTHING)
      expect(y).toBeGreaterThanOrEqual(-NOTHING)
      expect(y).toBeLessThanOrEqual(height + NOTHING)
    }
  })

  test('has cuts that school scissors reach', () => {
    // Common practice, no source: blades of about 60 mm cut 50 mm deep in one go.
    for (const m of design.mechanisms.filter(({ kind }) => kind.startsWith('cut-')))
      for (const { name: field } of kindOf(m).fields)
        if (['cut', 'left', 'right', 'startCut', 'endCut'].includes(field)) {
          expect(settingOf(m, field), `${m.id} ${field}`).toBeGreaterThanOrEqual(8)
          expect(settingOf(m, field), `${m.id} ${field}`).toBeLessThanOrEqual(50)
        }
  })

  test.each(['a4', 'letter'] as const)('prints on %s at true size, every piece once', (paper) => {
    expect(fitOn(design, paperOf(paper)).sentence).toBe('')
    const placed = layOut(design, { paper }).flatMap((page) => page.placed)
    expect(placed.map(({ piece }) => piece).sort()).toEqual(
      pieces(design)
        .map(({ id }) => id)
        .sort(),
    )
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

  test('the night garden holds 25 mechanisms of the seven kinds of the first eight chapters', () => {
    const { mechanisms } = dummy('night-garden')
    expect(mechanisms.length).toBe(25)
    expect(new Set(mechanisms.map((m) => m.kind)).size).toBe(7)
  })

  test('the heron’s lids are cut three levels deep', () => {
    const eyes = dummy('eyes')
    const depth = (id: string): number => {
      const on = eyes.mechanisms.find((m) => m.id === id)?.on ?? 'gutter'
      return on === 'gutter' ? 1 : 1 + depth(on.split('/')[0] ?? '')
    }
    expect(eyes.mechanisms.map(({ id }) => depth(id))).toEqual([1, 1, 2, 2, 3, 3])
  })

  test('the moth is the corner of a sheet, folded edge to edge', () => {
    // A corner is a right angle: half of it is 45°, for joint and facet alike.
    const moth = mechanism('moth', 'moth')
    for (const side of ['left', 'right'])
      for (const angle of ['base', 'facet']) expect(settingOf(moth, `${side}.${angle}`)).toBe(45)
    expect(measure(dummy('moth'), 90).tips.moth?.rise).toBeCloseTo((2 / 3) * settingOf(moth, 'ridge'), 9)
  })

  test('the owl’s tail stands off the back, its wings on the joints', () => {
    expect(dummy('owl').mechanisms.map(({ id, on }) => [id, on])).toEqual([
      ['body', 'gutter'],
      ['left-wing', 'body/left'],
      ['right-wing', 'body/right'],
      ['tail', 'body/ridge'],
    ])
  })

  test('the hedgehog has an equal tent and an unequal one, and both shut flat', () => {
    // A foot and its wall are together as long on the left as on the right.
    const sides = (id: string) => {
      const tent = mechanism('hedgehog', id)
      return ['leftFoot', 'leftWall', 'rightFoot', 'rightWall'].map((name) => settingOf(tent, name)) as [
        number,
        number,
        number,
        number,
      ]
    }
    const [a, c, b, d] = sides('body')
    expect([a, c]).toEqual([b, d])
    const [e, g, f, h] = sides('heap')
    expect(e).not.toBe(f)
    expect(e + g).toBe(f + h)
  })
})
