// The designs that the pictures show.
import type { Design } from '../../src/paper/index.ts'
import { parseDesign } from '../../src/paper/index.ts'

const read = (title: string, mechanisms: readonly object[]): Design =>
  parseDesign({ hingebook: 1, title, card: { width: 105, height: 148, caliper: 0.25 }, mechanisms })

const eye = (id: string, on: string) => ({
  id,
  kind: 'cut-v-fold',
  on,
  apex: 14,
  run: 22,
  cut: 8,
  lean: -9,
  outline: [
    [3.5, 35.5],
    [7, 33],
    [8.8, 29.5],
  ],
})

/** Two V-folds that share a slit, and an eye on either fold of the upper one. */
export const heron = read('Heron', [
  { id: 'beak', kind: 'cut-v-fold', on: 'gutter', apex: 124, run: -48, cut: 42 },
  { id: 'jaw', kind: 'cut-v-fold', on: 'gutter', apex: 40, run: 36, cut: 42 },
  eye('left-eye', 'beak/left'),
  eye('right-eye', 'beak/right'),
])

export const beak = read('Beak', heron.mechanisms.slice(0, 2))

/** A layer, a trapezoid over it, and a layer of unequal depths under it. */
export const lantern = read('Lantern', [
  { id: 'body', kind: 'cut-layer', on: 'gutter', start: 46, end: 94, left: 32, right: 32 },
  { id: 'roof', kind: 'cut-trapezoid', on: 'gutter', start: 100, end: 124, startCut: 42, endCut: 12 },
  { id: 'ledge', kind: 'cut-layer', on: 'gutter', start: 24, end: 40, left: 46, right: 36 },
])

/** Two layers on a V-fold's side folds that reach into one another. */
export const tangle = read('Tangle', [
  { id: 'beak', kind: 'cut-v-fold', on: 'gutter', apex: 130, run: -70, cut: 83 },
  { id: 'lid', kind: 'cut-layer', on: 'beak/left', start: 20, end: 60, left: 40, right: 12 },
  { id: 'lash', kind: 'cut-layer', on: 'beak/right', start: 20, end: 60, left: 40, right: 12 },
])

/** A slit nearly to the edge, and a layer that sticks out when shut. */
export const clumsy = read('Clumsy', [
  { id: 'beak', kind: 'cut-v-fold', on: 'gutter', apex: 100, run: -70, cut: 103 },
  { id: 'shelf', kind: 'cut-layer', on: 'gutter', start: 105, end: 140, left: 70, right: 60 },
])

export const bare = read('Card', [])

/** A V-fold of its own card, taped without tabs. */
export const moth = read('Moth', [
  {
    id: 'moth',
    kind: 'glued-v-fold',
    on: 'gutter',
    apex: 36,
    toward: 1,
    base: 45,
    facet: 45,
    foot: 50,
    ridge: 40,
    outline: [
      [4, 36],
      [18, 62],
      [50, 78],
      [57, 61],
      [50, 53],
    ],
  },
])

const wing = (id: string, on: string) => ({
  id,
  kind: 'glued-v-fold',
  on,
  apex: 12,
  toward: 1,
  base: 30,
  facet: 45,
  foot: 42,
  ridge: 62,
  outline: [
    [9, 58],
    [18, 52],
    [26, 44],
  ],
})

/** V-folds on a V-fold: on its two joints, and off the back of its ridge. */
export const owl = read('Owl', [
  {
    id: 'body',
    kind: 'glued-v-fold',
    on: 'gutter',
    apex: 44,
    toward: 1,
    base: 45,
    facet: 60,
    foot: 60,
    ridge: 76,
    tab: 8,
    outline: [
      [18, 86],
      [30, 64],
      [42, 38],
    ],
  },
  wing('left-wing', 'body/left'),
  wing('right-wing', 'body/right'),
  {
    id: 'tail',
    kind: 'glued-v-fold',
    on: 'body/ridge',
    apex: 48,
    toward: -1,
    base: 25,
    facet: 40,
    foot: 28,
    ridge: 36,
    side: 'outside',
  },
])

/** A tent with a piece stuck on either wall, and a floating layer with a V-fold on it. */
export const pond = read('Pond', [
  {
    id: 'back',
    kind: 'glued-tent',
    on: 'gutter',
    start: 14,
    end: 62,
    leftFoot: 26,
    rightFoot: 26,
    leftWall: 44,
    rightWall: 44,
    tab: 8,
  },
  {
    id: 'spines',
    kind: 'rider',
    on: 'back/left',
    shape: [
      [4, 2],
      [-8, 14],
      [4, 26],
      [-8, 38],
      [4, 46],
      [30, 46],
      [36, 30],
      [26, 2],
    ],
    glue: [
      [6, 6],
      [6, 42],
      [22, 42],
      [22, 6],
    ],
  },
  {
    id: 'moon',
    kind: 'rider',
    on: 'page/right',
    shape: [
      [60, 80],
      [74, 86],
      [80, 100],
      [74, 114],
      [60, 120],
      [68, 100],
    ],
    glue: [
      [66, 86],
      [76, 94],
      [72, 98],
    ],
  },
  {
    id: 'pond',
    kind: 'floating-layer',
    on: 'gutter',
    start: 72,
    end: 140,
    height: 22,
    left: 52,
    right: 52,
    walls: [-36, 0, 36],
    tab: 8,
  },
  {
    id: 'lily',
    kind: 'glued-v-fold',
    on: 'pond/ridge',
    apex: 18,
    toward: 1,
    base: 45,
    facet: 60,
    foot: 28,
    ridge: 34,
  },
])

/** A tent with one wall too short to lie down, and a V-fold pulled tight before the card is flat. */
export const stops = read('Stops', [
  {
    id: 'hut',
    kind: 'glued-tent',
    on: 'gutter',
    start: 20,
    end: 60,
    leftFoot: 30,
    rightFoot: 30,
    leftWall: 40,
    rightWall: 36,
  },
  {
    id: 'moth',
    kind: 'glued-v-fold',
    on: 'gutter',
    apex: 80,
    toward: 1,
    base: 60,
    facet: 45,
    foot: 40,
    ridge: 40,
  },
])
