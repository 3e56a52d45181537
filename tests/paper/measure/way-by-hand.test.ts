// Which way tips go, in numbers of school geometry: a layer's ridge is d sin w off its page, and a cut V-fold's ridge
// stands at f from the gutter, tan(f/2) = tan(wedge) cos(w/2) (the multiplier of a degree-4 vertex).
import { describe, expect, test } from 'vitest'
import { wayOf } from '../../../src/paper/index.ts'
import { fold, layer } from '../shared/check-designs.ts'
import { design, gluedMoth } from '../shared/designs.ts'
import { DEG, RAD } from '../shared/space.ts'

const step = design([layer('step', 'gutter', 40, 80, 20)])

/** Where a ridge of 40 with a wedge has its tip, from its apex along the gutter and off the page. */
function tipAt(wedge: number, w: number): { along: number; off: number } {
  const f = 2 * Math.atan(Math.tan(wedge * RAD) * Math.cos((w / 2) * RAD))
  return { along: 40 * Math.cos(f), off: 40 * Math.sin(f) * Math.sin((w / 2) * RAD) }
}

const beak = (wedge: number, run: 40 | -40) =>
  design([fold('beak', 'gutter', 120, run, 40 * Math.tan(wedge * RAD))], { height: 240, width: 200 })

describe('a layer', () => {
  test.each([30, 90, 150])('goes up by d sin w, open at %d degrees', (w) => {
    const way = wayOf(step, 'step', w)
    expect(way.up).toBeCloseTo(20 * Math.sin(w * RAD), 9)
    expect(way.off).toBeCloseTo(20 * Math.sin(w * RAD), 9)
    expect(way.outward).toBeCloseTo(0, 9)
    expect(way.word).toBe('up')
    expect(way.sentence).toBe(
      `As the card opens to ${w}°, the step goes up by ${(20 * Math.sin(w * RAD)).toFixed(1)} mm.`,
    )
  })

  test('counts as half open where nothing is said', () => {
    expect(wayOf(step, 'step')).toEqual(wayOf(step, 'step', 90))
  })

  test('that has gone less than half a millimetre has gone nowhere', () => {
    const at = (rise: number) => wayOf(step, 'step', Math.asin(rise / 20) * DEG)
    expect(at(0.49)).toMatchObject({ word: 'nowhere', sentence: 'The step stays where it lies.' })
    expect(at(0.49).up).toBeCloseTo(0.49, 9)
    expect(at(0.51)).toMatchObject({ word: 'up' })
    expect(at(0.51).sentence).toMatch(/^As the card opens to 1\.5°, the step goes up by 0\.5 mm\.$/)
  })
})

describe('a cut V-fold', () => {
  test.each([
    [-40, 'back', -1],
    [40, 'outward', 1],
  ] as const)('that runs %d goes up and %s', (run, word, sign) => {
    const [open, shut] = [tipAt(45, 90), tipAt(45, 0)]
    const way = wayOf(beak(45, run), 'beak')
    expect(way.up).toBeCloseTo(open.off, 9)
    expect(way.outward).toBeCloseTo(sign * (open.along - shut.along), 9)
    expect(way.word).toBe('up')
    // 40 sin f sin 45 and 40 / 3.
    expect(way.sentence).toBe(
      `As the card opens to 90°, the beak goes up by 26.7 mm and ${word} along its fold by 13.3 mm.`,
    )
  })

  test.each([
    [-40, 'back'],
    [40, 'outward'],
  ] as const)('wide open, with a run of %d, has gone farther %s than up', (run, word) => {
    const [open, shut] = [tipAt(60, 170), tipAt(60, 0)]
    const far = open.along - shut.along
    expect(far).toBeGreaterThan(open.off)
    const way = wayOf(beak(60, run), 'beak', 170)
    expect(way.word).toBe(word)
    expect(way.sentence).toBe(
      `As the card opens to 170°, the beak goes ${word} along its fold by ${far.toFixed(1)} mm and up by ${open.off.toFixed(1)} mm.`,
    )
  })

  test('hardly open has only risen', () => {
    // At 10 degrees: up 3.5, along 0.15.
    expect(wayOf(beak(45, 40), 'beak', 10).sentence).toBe(
      'As the card opens to 10°, the beak goes up by 3.5 mm.',
    )
  })
})

test('what is stuck on a page stays where it lies', () => {
  const shape = [
    [20, 20],
    [50, 30],
    [20, 40],
  ]
  const way = wayOf(design([{ id: 'moon', kind: 'rider', on: 'page/left', shape, glue: shape }]), 'moon')
  expect(way).toMatchObject({ word: 'nowhere', sentence: 'The moon stays where it lies.' })
  expect(way.off).toBeCloseTo(0, 9)
})

test('goes no farther than the card opens, and is told of what is there alone', () => {
  const tight = design([gluedMoth({ base: 60, facet: 45 })])
  // Pulled tight at arccos(-1/3).
  expect(wayOf(tight, 'moth', 150).sentence).toMatch(
    /^As the card opens to 109\.5°, the moth goes outward along its fold by /,
  )
  expect(() => wayOf(tight, 'owl')).toThrow(new RangeError('there is no mechanism owl'))
})

test('what falls says how much lower it is than where its ridge starts', () => {
  // On the back of an owl's ridge, joints run back from its tip: the tail falls towards the page.
  const owl = { apex: 60, toward: 1, base: 60, facet: 75, foot: 70, ridge: 80 }
  const made = design(
    [
      { id: 'owl', kind: 'glued-v-fold', on: 'gutter', ...owl },
      {
        id: 'tail',
        kind: 'glued-v-fold',
        on: 'owl/ridge',
        side: 'outside',
        apex: 70,
        toward: -1,
        base: 35,
        facet: 50,
        foot: 18,
        ridge: 20,
      },
    ],
    { width: 148, height: 210 },
  )
  const way = wayOf(made, 'tail')
  expect(way.up).toBeLessThan(-0.5)
  const down = `down, ${(-way.up).toFixed(1)} mm lower than where its ridge starts`
  expect(way.sentence).toContain(down)
  expect(way.sentence).toContain(` Its tip is still ${way.off.toFixed(1)} mm off the page.`)
  expect(way.word).toBe(Math.abs(way.outward) > -way.up ? (way.outward > 0 ? 'outward' : 'back') : 'down')
})
