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
