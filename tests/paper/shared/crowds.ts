// Crowded cards: many mechanisms, without faults and with those that cost most to judge.
import type { Design } from '../../../src/paper/index.ts'
import { parseDesign } from '../../../src/paper/index.ts'

const many = (count: number, one: (k: number) => object | readonly object[]): object[] =>
  Array.from({ length: count }, (_, k) => one(k)).flat()

const card = (mechanisms: readonly object[], width = 300, height = 1000): Design =>
  parseDesign({
    hingebook: 1,
    title: 'Crowd',
    card: { width, height, caliper: 0.1 },
    mechanisms,
  })

/** Paper left between neighbours, mm. */
const GAP = 5

const fold = (id: string, on: string, apex: number, run: number, cut: number) => ({
  id,
  kind: 'cut-v-fold',
  on,
  apex,
  run,
  cut,
})

const moth = (id: string, apex: number, more: object = {}) => ({
  id,
  kind: 'glued-v-fold',
  on: 'gutter',
  apex,
  toward: 1,
  base: 45,
  facet: 60,
  foot: 30,
  ridge: 30,
  ...more,
})

const sticker = (id: string, on: string, across: number, along: number, size: number) => ({
  id,
  kind: 'rider',
  on,
  shape: [
    [across, along],
    [across + size, along],
    [across + size, along + size],
    [across, along + size],
  ],
  glue: [
    [across + size / 4, along + size / 4],
    [across + (3 * size) / 4, along + size / 4],
    [across + size / 2, along + (3 * size) / 4],
  ],
})

/** V-folds in a row on the gutter, with 5 mm of paper between them. */
export const row = (count: number): Design => {
  const pitch = 985 / count
  const gap = Math.min(GAP, pitch / 3)
  return card(many(count, (k) => fold(`m${k}`, 'gutter', 6 + k * pitch, pitch - gap, (pitch - gap) / 2)))
}

/** A garden: layers in a row on the gutter, each with two V-folds and a smaller layer on its folds. */
export const garden = (count: number): Design => {
  const stems = Math.max(6, Math.ceil(count / 5))
  const pitch = 990 / stems
  const long = pitch - 8
  const all = many(stems, (k) => [
    {
      id: `l${k}`,
      kind: 'cut-layer',
      on: 'gutter',
      start: 5 + k * pitch,
      end: 5 + k * pitch + long,
      left: 60,
      right: 60,
    },
    fold(`a${k}`, `l${k}/ridge`, 0.4 * long, -0.2 * long, 0.12 * long),
    fold(`b${k}`, `l${k}/ridge`, 0.6 * long, 0.2 * long, 0.12 * long),
    fold(`c${k}`, `l${k}/left`, 0.6 * long, -0.3 * long, 0.2 * long),
    fold(`d${k}`, `l${k}/right`, 0.6 * long, -0.3 * long, 0.2 * long),
  ])
  return card(all.slice(0, count))
}

/** As many V-folds in one place. */
export const heap = (count: number): Design =>
  card(
    many(count, (k) => fold(`m${k}`, 'gutter', 200, 60, 30)),
    105,
    297,
  )

/** The same, glued on: nothing is cut, and everything coincides. */
export const gluedHeap = (count: number): Design =>
  card(
    many(count, (k) => moth(`m${k}`, 60)),
    105,
    148,
  )

/** Glued V-folds so near one another that each runs into several. */
export const gluedCrowd = (count: number): Design =>
  card(many(count, (k) => moth(`m${k}`, 20 + (900 * k) / Math.max(count, 60))))

/** Tiny V-folds in a row that all but touch. */
export const needles = (count: number): Design =>
  card(
    many(count, (k) => fold(`m${k}`, 'gutter', 5 + 2 * k, 1.9, 5)),
    105,
    420,
  )

/** Stickers on the facets of V-folds that have not been pushed through: they lie in their page. */
export const stuckDown = (count: number): Design => {
  const pairs = Math.ceil(count / 2)
  const pitch = Math.min(60, 990 / pairs)
  const all = many(pairs, (k) => [
    moth(`m${k}`, 3 + k * pitch, {
      base: 45,
      facet: 45,
      foot: Math.min(30, pitch),
      ridge: Math.min(30, pitch),
      pop: 'down',
    }),
    sticker(`s${k}`, `m${k}/right`, 3, 8, 4),
  ])
  return card(all.slice(0, count))
}

/** A garden in which every third mechanism has a fault of its own. */
export const faultyGarden = (count: number): Design => {
  const whole = garden(count)
  return {
    ...whole,
    mechanisms: whole.mechanisms.map((m, k) =>
      k % 5 === 2 && m.kind === 'cut-v-fold'
        ? { ...m, cut: 4 * m.cut }
        : k % 5 === 3 && m.kind === 'cut-v-fold'
          ? { ...m, apex: m.apex * 1.8 }
          : m,
    ),
  }
}

/** Neighbours on the gutter that run into each other: far too steep. */
export const steep = (count: number): Design => {
  const pitch = 990 / count
  return card(
    many(count, (k) =>
      fold(
        `m${k}`,
        'gutter',
        3 + Math.floor(k / 2) * 2 * pitch + (k % 2 ? pitch + 1 : pitch - 1),
        k % 2 ? pitch * 0.8 : -pitch * 0.8,
        pitch * 1.2,
      ),
    ),
  )
}

export const crowds: readonly (readonly [string, (count: number) => Design])[] = [
  ['a row', row],
  ['a garden', garden],
  ['a garden with faults', faultyGarden],
  ['equal, in one place', heap],
  ['equal and glued, in one place', gluedHeap],
  ['glued, into one another', gluedCrowd],
  ['needles', needles],
  ['stickers that lie in their page', stuckDown],
  ['too steep, in pairs', steep],
]
