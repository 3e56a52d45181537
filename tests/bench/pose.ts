// How long a pose takes, beside other ways to get one. Printed, not judged.
import assert from 'node:assert/strict'
import type { Design, Vec3 } from '../../src/paper/index.ts'
import { compile, measure, parseDesign, poseAt } from '../../src/paper/index.ts'
import { hinged, ready } from '../sources/hinged.ts'
import { tipByLeastSquares } from './rivals/least-squares.ts'
import { sketch } from './rivals/sketch.ts'
import { table } from './rivals/table.ts'

const card = { width: 297, height: 420 }

const read = (mechanisms: readonly object[]): Design =>
  parseDesign({ hingebook: 1, title: 'Bench', card, mechanisms })

const beak = { id: 'beak', kind: 'cut-v-fold', on: 'gutter', apex: 110, run: -60, cut: 60 }

const one = read([beak])

/** Each on the ridge or a side fold of the one before: as deep as it goes. */
const nested = read(
  Array.from({ length: 25 }, (_, k) => ({
    id: `m${k}`,
    kind: 'cut-v-fold',
    on: k === 0 ? 'gutter' : `m${k - 1}/${['ridge', 'left', 'right'][k % 3]}`,
    apex: k === 0 ? 20 : 2,
    run: 300 * 0.85 ** k,
    cut: 180 * 0.85 ** k,
  })),
)

/** Every opening is a little on from the last, to and fro, as under a hand. */
const openings = Array.from({ length: 1000 }, (_, k) => 90 + 50 * Math.sin((2 * Math.PI * k) / 1000))

let last = 0

const each = (times: number, act: (opening: number) => void): void => {
  for (let k = 0; k < times; k++) {
    last = (last + 1) % openings.length
    act(openings[last] as number)
  }
}

/** The closed form of the rise alone: one number, no model. */
function riseAlone(opening: number): number {
  const half = (opening * Math.PI) / 360
  return 60 * Math.sin(2 * Math.atan(Math.cos(half))) * Math.sin(half)
}

/** The three knots of a V-fold's tip, and its distances from them. */
const folds = (opening: number): [Vec3, Vec3, Vec3] => {
  const half = (opening * Math.PI) / 360
  const [x, z] = [60 * Math.sin(half), 60 * Math.cos(half)]
  return [
    [0, 110, 0],
    [-x, 50, z],
    [x, 50, z],
  ]
}

const far = [60, 60, 60]

/** Half-way up: from here the solver finds the popped tip at every opening of the bench. */
const start: Vec3 = [0, 80, 45]

// Nothing is timed that does not do the same.
const opening = 72

const near = (a: readonly number[], b: readonly number[], within: number) => {
  assert.ok(Math.hypot(...a.map((value, k) => value - (b[k] as number))) < within, `${a} is not ${b}`)
}

for (const made of [one, nested])
  for (const [name, points] of Object.entries(sketch(card, made.mechanisms, opening).panels))
    points.forEach((p, k) => {
      near(p, poseAt(made, opening).panels[name]?.[k] as Vec3, 1e-6)
    })

near([riseAlone(opening)], [measure(one, opening).tips.beak?.rise ?? Number.NaN], 1e-9)

for (const at of openings)
  near(tipByLeastSquares(folds(at), far, start), poseAt(one, at).creases['beak/ridge']?.end as Vec3, 1e-6)

await ready()

const engine = hinged(one, opening)

engine.turnTo(90, 1, 9)

const there = poseAt(one, 90).creases['beak/ridge']

near(
  engine.ridge()[0].map((value) => 60 * value),
  there?.end.map((value, k) => value - (there.start[k] as number)) ?? [],
  0.05,
)

const poser = compile(one)

await table(
  'one V-fold',
  [
    { name: 'compiled pose', times: 2000, run: (times) => each(times, poser) },
    { name: 'plain poseAt', times: 100, run: (times) => each(times, (at) => poseAt(one, at)) },
    { name: 'rise’s closed form alone', times: 5000, run: (times) => each(times, riseAlone) },
    {
      name: 'array-of-arrays sketch',
      times: 100,
      run: (times) => each(times, (at) => sketch(card, one.mechanisms, at)),
    },
    {
      name: 'least squares (ml-levenberg-marquardt)',
      times: 10,
      run: (times) =>
        each(times, (at) => {
          tipByLeastSquares(folds(at), far, start)
        }),
    },
    {
      name: 'rigid bodies on hinges (rapier3d), 10 steps',
      times: 1,
      run: (times) => each(times, (at) => engine.turnTo(at, 1, 9)),
    },
  ],
  true,
)

const deep = compile(nested)

await table(
  '25 mechanisms, each on the last',
  [
    { name: 'compiled pose', times: 100, run: (times) => each(times, deep) },
    { name: 'plain poseAt', times: 10, run: (times) => each(times, (at) => poseAt(nested, at)) },
    {
      name: 'array-of-arrays sketch',
      times: 5,
      run: (times) => each(times, (at) => sketch(card, nested.mechanisms, at)),
    },
  ],
  true,
)
