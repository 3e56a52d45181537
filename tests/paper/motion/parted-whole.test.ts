// What folds of one sheet do is clear by construction: each pair of panels is proved apart in the widest stretches in
// which paper is looked at, without halving one.
import { describe, expect, test } from 'vitest'
import type { Design } from '../../../src/paper/index.ts'
import { compile } from '../../../src/paper/index.ts'
import { leavesOf } from '../../../src/paper/motion/leaves.ts'
import { liftsOf } from '../../../src/paper/motion/lift.ts'
import { motionOf } from '../../../src/paper/motion/motion.ts'
import { FIRST, proofsIn } from '../../../src/paper/motion/parted.ts'
import { fold, layer } from '../shared/check-designs.ts'
import { design, gluedMoth, gluedPond } from '../shared/designs.ts'

const STRETCHES = 180 / FIRST

/** Pairs of panels that are not proved apart in a stretch, from the one numbered `first` on. */
function doubts(made: Design, first = 0): string[] {
  const motion = motionOf(compile(made))
  const leaves = leavesOf(motion.model)
  const proofs = proofsIn({ motion, lifts: liftsOf(motion.model, [0, 180]) }, [0, 180])
  return Array.from({ length: STRETCHES - first }, (_, k) => first + k).flatMap((k) => {
    const stretch = motion.stretch(motion.still(k * FIRST), motion.still((k + 1) * FIRST))
    return leaves.flatMap((one) =>
      leaves.flatMap((two) => {
        if (one.panel >= two.panel) return []
        const paper = () => [one.facets(() => true), two.facets(() => true)] as const
        const found = proofs.doubt(one, two, paper, stretch, { left: 1e5 })
        const names = [one, two].map(({ panel }) => motion.model.panels[panel]?.name)
        return found === null ? [] : [`${names.join(' ')} from ${k * FIRST}`]
      }),
    )
  })
}

const square = (a: number, l: number, size: number) => [
  [a, l],
  [a + size, l],
  [a + size, l + size],
  [a, l + size],
]

describe('proved without halving', () => {
  test.each([
    ['a bare card', []],
    ['a V-fold', [fold('beak', 'gutter', 110, -60, 50)]],
    ['a V-fold on its ridge', [fold('beak', 'gutter', 110, -60, 50), fold('eye', 'beak/ridge', 30, 16, 10)]],
    ['a layer on a layer', [layer('a', 'gutter', 30, 100, 30), layer('b', 'a/ridge', 20, 50, 10)]],
    ['a layer on a side fold', [layer('a', 'gutter', 30, 100, 30), layer('b', 'a/left', 20, 50, 10)]],
    ['a glued V-fold', [gluedMoth()]],
    [
      'a piece on a page and one over it',
      [
        { id: 'one', kind: 'rider', on: 'page/right', shape: square(20, 20, 40), glue: square(30, 30, 10) },
        { id: 'two', kind: 'rider', on: 'one/face', shape: square(30, 30, 20), glue: square(35, 35, 9) },
      ],
    ],
  ] as const)('%s', (_, mechanisms) => {
    expect(doubts(design(mechanisms))).toEqual([])
  })

  test('a piece on the back of a ridge, from half open on: seen from its host, whose ridge stands still', () => {
    const owl = { id: 'owl', apex: 20, foot: 12, ridge: 12, side: 'outside' }
    expect(doubts(design([gluedMoth(), gluedMoth({ ...owl, on: 'moth/ridge' })]), STRETCHES / 2)).toEqual([])
    const beak = fold('beak', 'gutter', 110, -60, 50)
    expect(doubts(design([beak, gluedMoth({ ...owl, on: 'beak/ridge' })]), STRETCHES / 2)).toEqual([])
  })

  test('a platform on its walls, but for the first stretch', () => {
    expect(doubts(design([gluedPond]), 1)).toEqual([])
  })
})
