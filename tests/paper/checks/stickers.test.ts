// Paper has two sides: what is stuck on a panel lies in front of all that shares its plane. The verdicts are held
// against pieces that are really moved off their panel, a hair, and looked at densely by code that shares nothing
// with the checks (`crossings`: exact signs of robust-predicates, vectors of gl-matrix).
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Check, Design, Flat } from '../../../src/paper/index.ts'
import { check, compile, parseDesign } from '../../../src/paper/index.ts'
import { KERF } from '../../../src/paper/motion/leaves.ts'
import { crossings } from '../shared/crossing.ts'
import { design } from '../shared/designs.ts'
import { between } from '../shared/gardens.ts'
import { gluedDesigns } from '../shared/glued-designs.ts'

/** Papers that cross with a rim of 0.1 mm all round: twice what a cut takes away. */
const RIM = 2 * KERF + 0.01
/** So thin that a fold 1 degree from shut still closes over it within that rim. */
const HAIR = 1e-6

const rectangle = (a: number, b: number, from: number, to: number): Flat[] => [
  [a, from],
  [a, to],
  [b, to],
  [b, from],
]

const motionOf = (made: Design): Check[] =>
  check(made, { repairs: false, names: ['clear-motion'] }).filter(({ name }) => name === 'clear-motion')

const sticker = (on: string, shape: Flat[], glue: Flat[], face: 'front' | 'back' = 'front') => ({
  id: 'moon',
  kind: 'rider',
  on,
  face,
  shape,
  glue,
})

const layer = { id: 'lamp', kind: 'cut-layer', on: 'gutter', start: 60, end: 100, left: 30, right: 30 }
const fold = { id: 'beak', kind: 'cut-v-fold', on: 'gutter', apex: 130, run: -40, cut: 40 }
const tent = {
  id: 'hut',
  kind: 'glued-tent',
  on: 'gutter',
  start: 40,
  end: 80,
  leftFoot: 30,
  rightFoot: 30,
  leftWall: 45,
  rightWall: 45,
}
const floor = {
  id: 'pond',
  kind: 'floating-layer',
  on: 'gutter',
  start: 40,
  end: 100,
  height: 20,
  left: 50,
  right: 50,
  walls: [-20, 20],
}

describe('a piece stuck on a face', () => {
  test.each([
    ['across the gutter', [], sticker('page/left', rectangle(-20, 30, 60, 90), rectangle(5, 25, 62, 88))],
    [
      'over the slit of a V-fold',
      [fold],
      sticker('page/right', rectangle(20, 60, 85, 95), rectangle(50, 58, 86, 94)),
    ],
    [
      'over a layer’s strip',
      [layer],
      sticker('page/right', rectangle(20, 60, 70, 90), rectangle(40, 55, 72, 88)),
    ],
    [
      'over a layer’s fold',
      [layer],
      sticker('lamp/right', rectangle(10, 45, 5, 30), rectangle(11, 25, 6, 29)),
    ],
    [
      'over a ridge on its inside',
      [layer],
      sticker('lamp/right', rectangle(-15, 20, 5, 30), rectangle(2, 18, 6, 29), 'back'),
    ],
    [
      'over the joint of a tent',
      [tent],
      sticker('page/right', rectangle(20, 60, 50, 70), rectangle(40, 55, 52, 68)),
    ],
    [
      'on a platform, over a wall beneath',
      [floor],
      sticker('pond/right', rectangle(10, 30, 20, 40), rectangle(11, 18, 21, 39), 'back'),
    ],
  ] as const)('%s keeps the card from moving', (_, parts, stuck) => {
    const made = design([...parts, stuck] as never)
    const found = motionOf(made)
    expect(found.some(({ verdict, ids }) => verdict === 'touches' && ids.includes('moon'))).toBe(true)
    expect(found.every(({ ok }) => !ok)).toBe(true)
    expect(crossings(made, RIM, HAIR)(100)).not.toEqual([])
  })

  test.each([
    [
      'on a page beside the gutter',
      [],
      sticker('page/left', rectangle(1, 30, 60, 90), rectangle(5, 25, 62, 88)),
    ],
    [
      'on the back, behind a layer’s strip',
      [layer],
      sticker('page/right', rectangle(20, 60, 70, 90), rectangle(40, 55, 72, 88), 'back'),
    ],
    [
      'on a layer’s top, past its ridge',
      [layer],
      sticker('lamp/right', rectangle(-15, 28, 5, 30), rectangle(2, 18, 6, 29)),
    ],
    [
      'on a platform, over the wall beneath',
      [floor],
      sticker('pond/right', rectangle(10, 30, 20, 40), rectangle(11, 18, 21, 39)),
    ],
    [
      'on a page, where a platform comes down on it',
      [floor],
      sticker('page/right', rectangle(25, 45, 50, 90), rectangle(26, 40, 52, 88)),
    ],
  ] as const)('%s is clear of all', (_, parts, stuck) => {
    const made = design([...parts, stuck] as never)
    expect(motionOf(made)).toMatchObject([{ ok: true, verdict: 'clear' }])
    for (let opening = 1; opening < 180; opening += 1.5)
      expect(crossings(made, RIM, HAIR)(opening)).toEqual([])
  })

  test('that lies partly on another lies over it, whichever is wider', () => {
    const low = { ...sticker('page/left', rectangle(5, 30, 60, 90), rectangle(6, 20, 62, 88)), id: 'moon' }
    const high = { ...sticker('page/left', rectangle(20, 50, 50, 100), rectangle(40, 48, 62, 88)), id: 'owl' }
    const third = { ...sticker('owl/face', rectangle(22, 40, 55, 95), rectangle(24, 30, 62, 88)), id: 'moth' }
    expect(motionOf(design([low, high, third] as never))).toMatchObject([{ ok: true }])
    expect(motionOf(design([high, low, third] as never))).toMatchObject([{ ok: true }])
  })
})

interface Stuck {
  readonly panel: number
  readonly corner: number
  readonly at: number
  readonly off: number
  readonly size: number
  readonly turn: number
  readonly face: 'front' | 'back'
}

const stuckPiece: fc.Arbitrary<Stuck> = fc.record({
  panel: fc.nat({ max: 1000 }),
  corner: fc.nat({ max: 1000 }),
  at: between(0, 1),
  off: between(-1.5, 1.5),
  size: between(2, 18),
  turn: between(-180, 180),
  face: fc.constantFrom('front', 'back'),
})

/** Pieces stuck by the edges of random panels, where something may swing. */
function withPieces(made: Design, stuck: readonly Stuck[]): Design {
  const mechanisms: object[] = [...made.mechanisms]
  stuck.forEach(({ panel, corner, at, off, size, turn, face }, k) => {
    const now = compile(parseDesign({ ...made, mechanisms })).model.panels
    const on = now[panel % now.length]
    if (!on) return
    const p = on.outline[corner % on.outline.length] as Flat
    const q = on.outline[(corner + 1) % on.outline.length] as Flat
    const long = Math.hypot(q[0] - p[0], q[1] - p[1])
    if (!(long > 1)) return
    const [u, v] = [(q[0] - p[0]) / long, (q[1] - p[1]) / long]
    const middle: Flat = [
      p[0] + at * (q[0] - p[0]) - off * size * v,
      p[1] + at * (q[1] - p[1]) + off * size * u,
    ]
    const box = (half: number): Flat[] =>
      rectangle(middle[0] - half, middle[0] + half, middle[1] - half / 2, middle[1] + half / 2)
    mechanisms.push({
      id: `s${k}`,
      kind: 'rider',
      on: on.name,
      face,
      turn,
      shape: box(size),
      glue: box(size / 4),
    })
  })
  return parseDesign({ ...made, mechanisms })
}

describe('random designs rich in stuck-on pieces', () => {
  test(
    'that are called clear show nothing that crosses, with each piece moved to the side it is stuck on',
    () => {
      const seen = { clear: 0, front: 0, back: 0, blocked: 0 }
      const runs = Math.max(250, Number(process.env.RUNS ?? 0))
      fc.assert(
        fc.property(
          gluedDesigns({ most: 3, match: ['alike', 'shuts'] }),
          fc.array(stuckPiece, { minLength: 1, maxLength: 4 }),
          fc.integer({ min: 0, max: 399 }),
          (plain, stuck, shift) => {
            const made = withPieces(plain, stuck)
            if (motionOf(made).some(({ verdict }) => verdict !== 'clear')) {
              if (motionOf(plain).every(({ ok }) => ok)) seen.blocked++
              return
            }
            seen.clear++
            for (const m of made.mechanisms) if (m.kind === 'rider') seen[m.face ?? 'front']++
            const look = crossings(made, RIM, HAIR)
            const poser = compile(made)
            for (let opening = 1 + shift / 100; opening < 179; opening += 4.01)
              if (poser(opening).stopped.length === 0) expect(look(opening)).toEqual([])
          },
        ),
        { numRuns: runs },
      )
      expect(seen.clear).toBeGreaterThan(runs / 10)
      expect(Math.min(seen.front, seen.back, seen.blocked)).toBeGreaterThan(runs / 20)
    },
    300_000 + 1000 * Number(process.env.RUNS ?? 0),
  )
})
