import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Design } from '../../../src/paper/index.ts'
import {
  duplicate,
  nearest,
  remove,
  rename,
  setCard,
  setSize,
  setTitle,
} from '../../../src/widgets/keeping/edits.ts'
import type { History } from '../../../src/widgets/keeping/history.ts'
import {
  begun,
  canRedo,
  canUndo,
  done,
  gone,
  present,
  redoLabel,
  redone,
  rested,
  undoLabel,
  undone,
} from '../../../src/widgets/keeping/history.ts'
import { packed, unpacked } from '../../../src/widgets/keeping/packing.ts'
import { stepWords } from '../../../src/widgets/keeping/words.ts'
import { design, gluedMoth, gluedPond, ladder, vFold } from '../../paper/shared/designs.ts'
import { kept } from './designs.ts'

const beak = vFold('beak', 'gutter', 110, -40, 45)

const edited = (made: Design, k: number): Design => {
  const m = made.mechanisms[k % Math.max(1, made.mechanisms.length)]
  if (!m || k % 5 === 0) return setTitle(made, `Owl ${k}`).design
  if (k % 5 === 1) return setCard(made, { width: 50 + k }).design
  if (k % 5 === 2) return duplicate(made, m.id).design
  if (k % 5 === 3) return rename(made, m.id, `part ${k}`).design
  return nearest(made, m.id, { start: k, apex: k })
}

/** A history by what was done: an edit, or a press of undo or redo. */
const made: fc.Arbitrary<History> = fc
  .tuple(kept, fc.array(fc.record({ what: fc.nat({ max: 5 }), k: fc.nat({ max: 99 }) }), { maxLength: 12 }))
  .map(([first, acts]) =>
    acts.reduce(
      (now, { what, k }) =>
        what === 0 ? undone(now) : what === 1 ? redone(now) : done(now, edited(present(now).design, k)),
      begun(first),
    ),
  )

describe('undo and redo', () => {
  test('redo takes back undo, and undo takes back what was done', () => {
    fc.assert(
      fc.property(made, fc.nat({ max: 99 }), (history, k) => {
        if (canUndo(history)) expect(present(redone(undone(history)))).toEqual(present(history))
        if (canRedo(history)) expect(present(undone(redone(history)))).toEqual(present(history))
        const before = present(history).design
        const next = done(history, edited(before, k))
        if (next !== history) {
          expect(present(undone(next)).design).toBe(before)
          expect(canRedo(next)).toBe(false)
        }
        expect(undone(begun(before))).toEqual(begun(before))
      }),
      { numRuns: 80 },
    )
  })

  test('all the way back is the beginning, and all the way on the end', () => {
    fc.assert(
      fc.property(made, (history) => {
        let now = history
        while (canUndo(now)) now = undone(now)
        expect(present(now)).toBe(history.steps[0])
        while (canRedo(now)) now = redone(now)
        expect(present(now)).toEqual(history.steps.at(-1))
        expect(gone(now, Number.NaN).at).toBe(0)
        expect(gone(now, 1e9).at).toBe(now.steps.length - 1)
      }),
      { numRuns: 40 },
    )
  })

  test('one drag is one step, said from where it began', () => {
    const start = design([beak])
    let history = begun(start)
    for (let cut = 40; cut <= 47; cut++)
      history = done(history, nearest(present(history).design, 'beak', { cut }), { gesture: 'slit-end' })
    expect(history.steps).toHaveLength(2)
    expect(undoLabel(history)).toBe('beak: slit 40 to 47')
    // Taken up again after the finger was lifted it is another step.
    history = done(rested(history), nearest(present(history).design, 'beak', { cut: 30 }), {
      gesture: 'slit-end',
    })
    expect(history.steps).toHaveLength(3)
    expect(undoLabel(undone(history))).toBe('beak: slit 40 to 47')
    expect(redoLabel(undone(history))).toBe('beak: slit 47 to 30')
    expect(present(undone(undone(history))).design).toBe(start)
  })

  test('a drag after an undo does not run into the drag that was undone', () => {
    const start = design([beak])
    const one = done(begun(start), nearest(start, 'beak', { cut: 30 }), { gesture: 'g' })
    const two = done(undone(one), nearest(start, 'beak', { cut: 20 }), { gesture: 'g' })
    expect(two.steps.map(({ label }) => label)).toEqual(['begun', 'beak: slit 40 to 20'])
  })

  test('a thousand steps share their parts and keep all', () => {
    let history = begun(design([beak, gluedPond]))
    for (let k = 0; k < 1000; k++)
      history = done(history, nearest(present(history).design, 'beak', { cut: 10 + (k % 40) + k / 1e4 }))
    expect(history.steps).toHaveLength(1001)
    expect(new Set(history.steps.map((step) => step.design.mechanisms[1])).size).toBe(1)
    // A step weighs what is new in it: a V-fold, and not the pond or the card.
    expect(Math.max(...history.steps.slice(1).map(({ weight }) => weight))).toBeLessThan(300)
  })

  test('the oldest go when all together are too heavy, and what is shown stays', () => {
    let history = begun(design([beak]))
    for (let k = 0; k < 100; k++)
      history = done(history, nearest(present(history).design, 'beak', { cut: 20 + k / 10 }), { most: 4000 })
    const weight = history.steps.reduce((sum, step) => sum + step.weight, 0)
    expect(weight).toBeLessThanOrEqual(4000)
    expect(history.steps.length).toBeGreaterThan(5)
    expect(history.dropped).toBe(101 - history.steps.length)
    expect(present(history)).toBe(history.steps.at(-1))
  })
})

describe('a history as plain data', () => {
  test('comes back as it was, with its parts shared', () => {
    fc.assert(
      fc.property(made, (history) => {
        const back = unpacked(JSON.parse(JSON.stringify(packed(history))))
        expect(back?.at).toBe(history.at)
        expect(back?.steps.map(({ design: one, label }) => [one, label])).toEqual(
          history.steps.map(({ design: one, label }) => [one, label]),
        )
        const parts = (of: History) => new Set(of.steps.flatMap((step) => step.design.mechanisms)).size
        if (back) expect(parts(back)).toBe(parts(history))
      }),
      { numRuns: 60 },
    )
  })

  test('a step is stored as what it changed', () => {
    const start = design([beak, gluedPond, gluedMoth({ apex: 2, foot: 10, ridge: 10 })])
    const next = done(begun(start), setSize(start, 'pond', 'height', 12).design)
    expect(packed(next).steps[1]).toEqual({
      label: 'pond: height 20 to 12',
      delta: { mechanisms: [[0, 1], { ...start.mechanisms[1], height: 12 }, [2, 1]] },
    })
  })

  test.each([
    null,
    3,
    [],
    {},
    { v: 2 },
    { v: 1, at: 0, dropped: 0, steps: [] },
    { v: 1, at: 0, dropped: 0, steps: [{ label: 'a', delta: {} }] },
    { v: 1, at: 0, dropped: 0, steps: [{ label: 'a', whole: { title: 'x' } }] },
    { v: 1, at: 7, dropped: 0, steps: [{ label: 'a', whole: design([]) }] },
    { v: 1, at: '__proto__', dropped: 0, steps: [{ label: 'a', whole: design([]) }] },
  ])('what is none is told apart: %j', (stored) => expect(unpacked(stored)).toBeNull())
})

describe('what was done, in words', () => {
  const pond = design([beak, gluedPond])
  test.each([
    [setSize(pond, 'beak', 'cut', 38).design, 'beak: slit 40 to 38'],
    [nearest(pond, 'pond', { start: 30, end: 80 }), 'pond: start 40 to 30, end 90 to 80'],
    [nearest(pond, 'pond', { start: 30, end: 80, height: 5 }), 'pond: 3 sizes'],
    [remove(pond, 'beak').design, 'beak removed'],
    [rename(pond, 'beak', 'owl').design, 'beak renamed owl'],
    [design([]), 'beak and pond removed'],
    [setTitle(pond, 'Owl').design, 'title: “Night garden” to “Owl”'],
    [{ ...pond, papers: { page: 'rust' } } as Design, 'papers changed'],
    [{ ...pond, mechanisms: [...pond.mechanisms].reverse() }, 'order changed'],
    [pond, 'nothing changed'],
  ])('%#: %s', (after, words) => expect(stepWords(pond, after)).toBe(words))

  test('a choice is said in the kind’s own words', () => {
    const moth = design([gluedMoth()])
    const after = nearest(moth, 'moth', { pop: 'down' })
    expect(stepWords(moth, after)).toBe('moth: state popped to still down')
    expect(stepWords(moth, design([gluedMoth(), ...(ladder[2]?.design.mechanisms ?? [])]))).toBe(
      'beak and eye added',
    )
  })
})
