import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Flat } from '../../../src/paper/index.ts'
import { change, modelOf, parseDesign } from '../../../src/paper/index.ts'
import { design, gluedMoth, runs } from '../shared/designs.ts'

const shape: readonly Flat[] = [
  [8, 20],
  [20, 20],
  [20, 34],
  [8, 30],
]

const glue: readonly Flat[] = [
  [10, 22],
  [16, 22],
  [16, 28],
  [10, 28],
]

const base = design([
  gluedMoth({ ridge: 50 }),
  { id: 'eye', kind: 'rider', on: 'moth/left', shape, glue },
  { id: 'twin', kind: 'rider', on: 'moth/right', shape, glue },
])

test('what is drawn on a piece keeps its place on it, however the piece is moved, turned and sized', () => {
  // Drawn round the very edge of the piece: there it must stay.
  const drawn = parseDesign({
    ...base,
    art: [{ on: 'eye/face', also: ['twin/face', 'moth/left'], shape, fill: 'amber' }],
  })
  fc.assert(
    fc.property(
      fc.integer({ min: -40, max: 40 }),
      fc.integer({ min: -40, max: 40 }),
      fc.integer({ min: -180, max: 180 }),
      fc.integer({ min: 5, max: 60 }),
      (across, along, turn, size) => {
        let made = change(drawn, 'eye', { across, turn })
        made = change(made, 'eye', { along })
        made = change(made, 'eye', { size })
        const outline = modelOf(made).panels.find(({ name }) => name === 'eye/face')?.outline ?? []
        const own = made.art?.find(({ on }) => on === 'eye/face')?.shape ?? []
        expect(own).toHaveLength(outline.length)
        outline.forEach((p, k) => {
          for (const i of [0, 1] as const) expect(own[k]?.[i]).toBeCloseTo(p[i], 2)
        })
        // On the other panels it stays.
        const others = made.art?.filter(({ on }) => on !== 'eye/face') ?? []
        expect(others.flatMap(({ on, also }) => [on, ...also])).toEqual(['twin/face', 'moth/left'])
        for (const one of others) expect(one.shape).toEqual(shape)
        expect(parseDesign(made).mechanisms).toEqual(made.mechanisms)
      },
    ),
    runs(100),
  )
})
