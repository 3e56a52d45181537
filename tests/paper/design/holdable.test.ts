// Whatever a hand sets or drags, a file can hold what comes of it: the reader of design files is the judge.
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Design } from '../../../src/paper/index.ts'
import {
  change,
  dragHandle,
  fieldsFor,
  handlesOf,
  kinds,
  parseDesign,
  pieces,
  settable,
  settingOf,
  settled,
} from '../../../src/paper/index.ts'
import { design, designs, gluedMoth, gluedPond, runs, vFold } from '../shared/designs.ts'

/** One of every kind, unequal where it can be, and two halves of a beak that share their slit. */
const everyKind = (): Design =>
  design([
    vFold('beak', 'gutter', 140, -30, 50),
    { ...vFold('jaw', 'gutter', 85, 25, 50), cut: 30 * Math.tan((50 * Math.PI) / 180) },
    { id: 'step', kind: 'cut-layer', on: 'beak/ridge', start: 5, end: 20, left: 8, right: 6 },
    { id: 'roof', kind: 'cut-trapezoid', on: 'gutter', start: 40, end: 60, startCut: 10, endCut: 20 },
    {
      id: 'moth',
      kind: 'glued-v-fold',
      on: 'gutter',
      apex: 20,
      toward: -1,
      left: { base: 150, facet: 170 },
      right: { base: 40, facet: 60 },
      foot: 30,
      ridge: 30,
      tab: 8,
    },
    {
      id: 'tent',
      kind: 'glued-tent',
      on: 'gutter',
      start: 5,
      end: 30,
      leftFoot: 20,
      rightFoot: 30,
      leftWall: 40,
      rightWall: 30,
    },
    { ...gluedPond, on: 'tent/ridge', start: 2, end: 20 },
    {
      id: 'star',
      kind: 'rider',
      on: 'moth/left',
      shape: [
        [5, 5],
        [15, 5],
        [15, 15],
      ],
      glue: [
        [8, 6],
        [12, 6],
        [12, 9],
      ],
    },
  ])

test('the design has every kind', () => {
  expect(new Set(everyKind().mechanisms.map(({ kind }) => kind))).toEqual(
    new Set(kinds.map(({ kind }) => kind)),
  )
})

/** From nothing to far beyond any range, and what no field can be. */
const wild = fc.oneof(
  fc.double({ min: -200, max: 200, noNaN: true }),
  fc.double({ min: -5000, max: 5000, noNaN: true }),
  fc.constantFrom(0, -0, 1, 89, 90, 179, 180, 2000, 2001, -2000, 1e9, Infinity, -Infinity, Number.NaN),
)

interface Step {
  readonly which: number
  readonly what: number
  readonly to: readonly [number, number]
  readonly drag: boolean
}

const steps: fc.Arbitrary<readonly Step[]> = fc.array(
  fc.record({ which: fc.nat(), what: fc.nat(), to: fc.tuple(wild, wild), drag: fc.boolean() }),
  { minLength: 1, maxLength: 12 },
)

function stepped(now: Design, { which, what, to, drag }: Step): Design {
  const handles = handlesOf(now)
  const handle = handles[what % Math.max(1, handles.length)]
  if (drag && handle) return dragHandle(now, handle.id, handle.name, to)
  const m = now.mechanisms[which % now.mechanisms.length]
  const all = m ? settable(m) : []
  const field = all[what % Math.max(1, all.length)]
  if (!m || !field) return now
  return settled(change(now, m.id, fieldsFor(m, field.name, to[0]))) ?? now
}

const asFile = (one: Design): Design => parseDesign(JSON.parse(JSON.stringify(one)))

describe('any settings and drags, one after another, give a design that a file may hold', () => {
  test('of every kind', () => {
    fc.assert(
      fc.property(steps, (all) => {
        let now = everyKind()
        for (const step of all) {
          now = stepped(now, step)
          expect(asFile(now).mechanisms).toEqual(JSON.parse(JSON.stringify(now.mechanisms)))
        }
      }),
      runs(600),
    )
  })

  test('of random designs', () => {
    fc.assert(
      fc.property(designs({ most: 4 }), steps, (made, all) => {
        let now = made
        for (const step of all) {
          now = stepped(now, step)
          asFile(now)
        }
      }),
      runs(300),
    )
  })
})

describe('two sides that are set together stop where the first of them must', () => {
  const [moth] = design([
    gluedMoth({
      base: undefined,
      facet: undefined,
      left: { base: 150, facet: 120 },
      right: { base: 40, facet: 60 },
    }),
  ]).mechanisms

  test.each([
    // Left is 110 degrees more than right: at 179 it stops, and right with it at 69; at 1 right stops first.
    ['base', 100, 69, 179],
    ['base', -20, 1, 111],
    // Left is 60 degrees more.
    ['facet', 150, 119, 179],
    ['facet', 0, 1, 61],
  ] as const)('%s wished to be %d', (name, wish, right, left) => {
    if (!moth) throw new Error('no moth')
    const after = change(design([moth]), 'moth', fieldsFor(moth, name, wish)).mechanisms[0]
    expect(after && settingOf(after, `right.${name}`)).toBeCloseTo(right, 9)
    expect(after && settingOf(after, `left.${name}`)).toBeCloseTo(left, 9)
  })
})

test('a wedge wider than the widest cut gives the widest cut', () => {
  // 40 mm times the tangent of 89 degrees is 2292 mm: more than the 2000 mm that a cut may be.
  const [m] = design([vFold('beak', 'gutter', 110, -40, 45)]).mechanisms
  expect(m && fieldsFor(m, 'wedge', 89)).toEqual({ cut: 2000 })
})

test('a joint of no length has no glue, and no number of its pieces is boundless', () => {
  for (const tab of [0, 8]) {
    const made = design([
      gluedMoth({ foot: 0, tab }),
      gluedMoth({ id: 'owl', foot: 0, tab, base: 120, facet: 150 }),
    ])
    for (const { outline, lines } of pieces(made))
      for (const point of [outline, ...lines.map(({ points }) => points)].flat(2))
        expect(Number.isFinite(point)).toBe(true)
  }
})
