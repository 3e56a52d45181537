import { expect, test } from 'vitest'
import type { Vec3 } from '../../../src/paper/index.ts'
import { measure, parseDesign, poseAt, wayOf } from '../../../src/paper/index.ts'

const owl = (more: readonly object[] = []) =>
  parseDesign({
    hingebook: 1,
    title: 'Owl',
    card: { width: 148, height: 210 },
    mechanisms: [
      {
        id: 'body',
        kind: 'glued-v-fold',
        on: 'gutter',
        apex: 60,
        toward: 1,
        base: 60,
        facet: 75,
        foot: 70,
        ridge: 80,
      },
      ...more,
    ],
  })

const part = (on: string, more: object) => [
  {
    id: 'part',
    kind: 'glued-v-fold',
    on,
    apex: 15,
    toward: 1,
    base: 35,
    facet: 50,
    foot: 40,
    ridge: 45,
    ...more,
  },
]

test('on the gutter a V-fold goes up by its rise', () => {
  const way = wayOf(owl(), 'body')
  expect(way.word).toBe('up')
  expect(way.up).toBeCloseTo(measure(owl(), 90).tips.body?.rise ?? Number.NaN, 9)
})

// Common practice, no source: a V-fold on a joint lifts off the page.
test('a wing on a joint goes up', () => {
  expect(wayOf(owl(part('body/left', {})), 'part').word).toBe('up')
})

test('off the back of a ridge it depends on where the joints run: outward climbs, back falls', () => {
  const tail = (toward: 1 | -1, more = {}) => {
    const design = owl(part('body/ridge', { apex: 40, side: 'outside', toward, ...more }))
    const { creases } = poseAt(design, 90)
    const [foot, tip] = [creases['part/ridge']?.start, creases['part/ridge']?.end] as [Vec3, Vec3]
    // Height over the right page's plane, whose inside normal is (-cos 45, 0, sin 45); both lie at x = 0.
    const climbed = (tip[2] - foot[2]) * Math.SQRT1_2
    const { up, off, sentence } = wayOf(design, 'part')
    return { climbed, up, off, sentence, high: tip[2] * Math.SQRT1_2 }
  }
  for (const { climbed, up, off, high } of [tail(1), tail(-1)]) {
    expect(up).toBeCloseTo(climbed, 9)
    expect(off).toBeCloseTo(high, 9)
  }
  expect(tail(1).sentence).not.toContain('off the page')
  // Down from a fold that stands high is not down on the page.
  const high = tail(-1, { apex: 70, foot: 18, ridge: 20 })
  expect(high.up).toBeLessThan(-1)
  expect(high.sentence).toContain(`Its tip is still ${high.high.toFixed(1)} mm off the page.`)
  expect(tail(1).up).toBeGreaterThan(0)
  expect(tail(-1).up).toBeLessThan(0)
})

test('mirror twins go the same way', () => {
  const [left, right] = ['body/left', 'body/right'].map((on) => wayOf(owl(part(on, {})), 'part'))
  expect(left?.up).toBeCloseTo(right?.up ?? Number.NaN, 9)
  expect(left?.outward).toBeCloseTo(right?.outward ?? Number.NaN, 9)
})

test('a tent goes straight up, and the sentence says how far', () => {
  const design = parseDesign({
    hingebook: 1,
    title: 'Tent',
    card: { width: 105, height: 148 },
    mechanisms: [
      {
        id: 'tent',
        kind: 'glued-tent',
        on: 'gutter',
        start: 40,
        end: 80,
        leftFoot: 30,
        rightFoot: 30,
        leftWall: 40,
        rightWall: 40,
      },
    ],
  })
  const rise = measure(design, 90).tips.tent?.rise ?? Number.NaN
  expect(wayOf(design, 'tent')).toMatchObject({
    word: 'up',
    sentence: `As the card opens to 90°, the tent goes up by ${rise.toFixed(1)} mm.`,
  })
})
