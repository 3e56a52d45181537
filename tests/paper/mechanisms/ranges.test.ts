// The range of every number of every kind, as a maker is told it: lengths up to 2 m, angles that a fold can have.
import { describe, expect, test } from 'vitest'
import { kindNamed, parseDesign } from '../../../src/paper/index.ts'
import { layer } from '../shared/check-designs.ts'
import { gluedMoth, gluedPond, vFold } from '../shared/designs.ts'

const square = [
  [10, 10],
  [40, 10],
  [40, 40],
]

const bases: Readonly<Record<string, object>> = {
  'cut-layer': layer('one', 'gutter', 20, 60, 20),
  'cut-v-fold': vFold('one', 'gutter', 100, -40, 40),
  'cut-trapezoid': {
    ...{ id: 'one', kind: 'cut-trapezoid', on: 'gutter' },
    ...{ start: 20, end: 60, startCut: 10, endCut: 20 },
  },
  'glued-v-fold': gluedMoth({ id: 'one' }),
  'glued-tent': {
    ...{ id: 'one', kind: 'glued-tent', on: 'gutter', start: 20, end: 60 },
    ...{ leftFoot: 20, rightFoot: 20, leftWall: 30, rightWall: 30 },
  },
  'floating-layer': { ...gluedPond, id: 'one' },
  rider: { id: 'one', kind: 'rider', on: 'page/right', shape: square, glue: square },
}

const rows = [
  ['cut-layer', ['start', 'end', 'left', 'right'], 0, 2000],
  ['cut-v-fold', ['apex', 'cut'], 0, 2000],
  ['cut-v-fold', ['run', 'lean'], -2000, 2000],
  ['cut-trapezoid', ['start', 'end', 'startCut', 'endCut'], 0, 2000],
  ['glued-v-fold', ['apex', 'foot', 'ridge'], 0, 2000],
  ['glued-tent', ['start', 'end', 'leftFoot', 'rightFoot', 'leftWall', 'rightWall'], 0, 2000],
  ['floating-layer', ['start', 'end', 'height', 'left', 'right'], 0, 2000],
  ['rider', ['across', 'along'], -2000, 2000],
  ['rider', ['turn'], -180, 180],
  ['rider', ['size'], 1, 2000],
] as const

const refusal = (mechanism: object): string => {
  try {
    parseDesign({ hingebook: 1, title: 'One', card: { width: 105, height: 148 }, mechanisms: [mechanism] })
    return ''
  } catch (error) {
    return (error as Error).message
  }
}

describe.each(rows)('%s: %j', (kind, fields, min, max) => {
  test.each([...fields])('%s is refused past its range, and the range is told', (field) => {
    const file = (value: number) => refusal({ ...bases[kind], [field]: value })
    const told = new RegExp(`${min} (to|and) ${max}\\b`)
    expect(file(max + 0.5)).toMatch(told)
    expect(file(min - 0.5)).toMatch(told)
    // What may be wrong at its ends is something else.
    expect(file(max)).not.toMatch(told)
    expect(file(min)).not.toMatch(told)
  })
})

test.each([
  ['cut-v-fold', 'wedge', 1, 89],
  ['cut-trapezoid', 'wedge', -89, 89],
  ['cut-layer', 'depth', 0, 2000],
  ['glued-v-fold', 'base', 1, 179],
  ['glued-v-fold', 'facet', 1, 179],
])('%s: the %s can be set from %d to %d', (kind, name, min, max) => {
  expect(kindNamed(kind)?.derived.find((one) => one.name === name)).toMatchObject({ min, max })
})
