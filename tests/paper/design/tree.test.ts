import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { downTo } from '../../../src/paper/design/tree.ts'
import type { Design, Mechanism } from '../../../src/paper/index.ts'
import {
  freeId,
  hostsFirst,
  mirrored,
  mirroredMechanism,
  modelOf,
  parseDesign,
  renamed,
  runOf,
  shiftedAlong,
  sizedBy,
  stretchOf,
  wayToRoom,
  withGuests,
  without,
} from '../../../src/paper/index.ts'
import { design, vFold } from '../shared/designs.ts'
import { gluedDesigns } from '../shared/glued-designs.ts'
import { entryOf } from '../shared/kinds.ts'
import { mirrored as allMirrored, scaled, transplanted } from '../shared/twins.ts'

test('what a mechanism stands on is itself and its hosts, down to the card, and nothing beside', () => {
  const made = design([
    vFold('beak', 'gutter', 110, -40, 40),
    vFold('owl', 'gutter', 20, 40, 40),
    vFold('eye', 'beak/ridge', 8, 14, 30),
    vFold('lid', 'eye/ridge', 2, 8, 30),
    vFold('ear', 'owl/ridge', 8, 14, 30),
  ])
  const ids = (id: string) => downTo(made, id).mechanisms.map((m) => m.id)
  expect(ids('lid')).toEqual(['beak', 'eye', 'lid'])
  expect(ids('ear')).toEqual(['owl', 'ear'])
  expect(ids('beak')).toEqual(['beak'])
  expect(ids('moth')).toEqual([])
  expect(downTo(made, 'ear').card).toBe(made.card)
})

const any = gluedDesigns({ most: 8 })

const pick = (made: Design, k: number): Mechanism => made.mechanisms[k % made.mechanisms.length] as Mechanism

const each = (check: (made: Design, m: Mechanism) => void, numRuns = 150) =>
  fc.assert(
    fc.property(any, fc.nat({ max: 9 }), (made, k) => {
      check(made, pick(made, k))
    }),
    { numRuns },
  )

/** As a file would hold it: a wall in the middle is at 0 on either side. */
const filed = (value: object): unknown => JSON.parse(JSON.stringify(value))

const beak = vFold('beak', 'gutter', 110, -40, 45)

describe('what sits on what', () => {
  test('a mechanism’s guests are those that go along when it is moved to another card', () => {
    each((made, { id }) =>
      expect(withGuests(made, id)).toEqual(transplanted(made, id, 'gutter').map((m) => m.id)),
    )
  })

  test('hosts come first from any order, and an order that has them first stays', () => {
    each((made) => {
      expect(hostsFirst(made.mechanisms)).toEqual(made.mechanisms)
      const sorted = hostsFirst([...made.mechanisms].reverse())
      expect(parseDesign({ ...made, mechanisms: sorted }).mechanisms).toEqual(sorted)
    })
  })

  test('a ring comes last and does not hang', () => {
    const ring = [
      { ...beak, id: 'a', on: 'b/left' },
      { ...beak, id: 'b', on: 'a/left' },
      beak,
    ] as unknown as Mechanism[]
    expect(hostsFirst(ring).map(({ id }) => id)).toEqual(['beak', 'a', 'b'])
  })

  test('a new name is followed everywhere: by guests, paper and art', () => {
    const eye = { id: 'eye', kind: 'cut-layer', on: 'beak/right', start: 20, end: 32, left: 6, right: 8 }
    const made = parseDesign({
      ...design([beak, eye]),
      papers: { beak: 'rust', page: 'dusk' },
      art: [
        {
          on: 'beak/left',
          also: ['beak/right', 'page/left'],
          shape: [
            [1, 2],
            [3, 4],
          ],
          closed: false,
        },
      ],
    })
    const now = renamed(made, 'beak', 'bill')
    expect(parseDesign(now)).toEqual(now)
    expect(now.mechanisms.map(({ id, on }) => [id, on])).toEqual([
      ['bill', 'gutter'],
      ['eye', 'bill/right'],
    ])
    expect(now.papers).toEqual({ bill: 'rust', page: 'dusk' })
    expect(now.art?.[0]).toMatchObject({ on: 'bill/left', also: ['bill/right', 'page/left'] })
    expect(renamed(now, 'bill', 'beak')).toEqual(made)
    // What is drawn on the page too stays on the page.
    const bare = without(made, ['beak', 'eye'])
    expect(parseDesign(bare)).toEqual(bare)
    expect(bare.papers).toEqual({ page: 'dusk' })
    expect(bare.art?.map(({ on, also }) => [on, also])).toEqual([['page/left', []]])
  })

  test('a free id is free, and can stand in a file', () => {
    const made = design([beak, { ...beak, id: 'beak-2' }, { ...beak, id: 'a'.repeat(40) }])
    expect(freeId(made, 'jaw')).toBe('jaw')
    expect(freeId(made, 'beak')).toBe('beak-3')
    expect(freeId(made, 'beak-2')).toBe('beak-3')
    expect(freeId(made, 'page')).toBe('page-2')
    expect(freeId(made, 'a'.repeat(40))).toMatch(/^a{36}-2$/)
  })
})

describe('left for right', () => {
  // The other side of each kind is written down a second time in tests/paper/shared/kinds.ts, from the format's rules.
  test('a mechanism is its kind’s mirror image, and twice mirrored it is itself', () => {
    each((_, m) => {
      expect(mirroredMechanism(m)).toEqual(filed(entryOf(m.kind).mirrored(m)))
      expect(mirroredMechanism(mirroredMechanism(m))).toEqual(m)
    })
  })

  test('all that sits on the gutter mirrored, one after the other, is the card in a mirror', () => {
    fc.assert(
      fc.property(any, (made) => {
        const roots = made.mechanisms.filter(({ on }) => on === 'gutter' || on.startsWith('page/'))
        expect(roots.reduce((now, { id }) => mirrored(now, id), made).mechanisms).toEqual(
          filed(allMirrored(made).mechanisms),
        )
      }),
    )
  })

  test('and the file can hold it', () => {
    each((made, { id }) => {
      const now = mirrored(made, id)
      const read = parseDesign({ ...now, mechanisms: hostsFirst(now.mechanisms) })
      expect(read.mechanisms).toHaveLength(made.mechanisms.length)
      expect(mirrored(now, id)).toEqual(made)
    })
  })
})

describe('room along a host', () => {
  test('a mechanism farther along is its kind’s own, farther along', () => {
    each((_, m) => expect(shiftedAlong(m, 3)).toEqual(entryOf(m.kind).moved(m, 3)))
  })

  test('it takes the stretch that goes along with it', () => {
    each((_, m) => {
      const [from, to] = stretchOf(m)
      const [a, b] = stretchOf(shiftedAlong(m, 16))
      expect(a).toBeCloseTo(from + 16, 6)
      expect(b).toBeCloseTo(to + 16, 6)
    })
  })

  test('sized, it takes as much more, tabs apart', () => {
    each((made, m) => {
      const { tab: _, ...plain } = sizedBy(m, 2) as Mechanism & { tab?: number }
      const { tab: __, ...twin } = scaled(made, 2).mechanisms.find(
        ({ id }) => id === m.id,
      ) as typeof plain & {
        tab?: number
      }
      expect(plain).toEqual(twin)
    })
  })

  test('a crease is as long as the model has it', () => {
    each((made) => {
      for (const { name, length } of modelOf(made).creases)
        if (!/\/(foot|top)-\d+$/.test(name)) expect(runOf(made, name)).toEqual([0, length])
    }, 40)
  })

  // A hand-made case: 148 mm of gutter, taken from 20 to 60 and from 100 to 110.
  test('the nearest free place is found, with paper left between', () => {
    const layer = (id: string, start: number, end: number) => ({
      id,
      kind: 'cut-layer',
      on: 'gutter',
      start,
      end,
      left: 10,
      right: 10,
    })
    const made = design([layer('a', 20, 60), layer('b', 100, 110), layer('c', 30, 50)])
    expect(wayToRoom(made, made.mechanisms[2] as Mechanism)).toBe(62 - 30)
    const wide = design([layer('a', 20, 60), layer('b', 100, 110), layer('c', 30, 69)])
    expect(wayToRoom(wide, wide.mechanisms[2] as Mechanism)).toBeNull()
    const fine = design([layer('a', 20, 60), layer('c', 90, 120)])
    expect(wayToRoom(fine, fine.mechanisms[1] as Mechanism)).toBe(0)
  })

  test('a place that is found is within its host and clear of the others', () => {
    each((made, m) => {
      const way = wayToRoom(made, m)
      if (way === null) return
      const now = shiftedAlong(m, way)
      const [from, to] = stretchOf(now)
      const run = runOf(made, m.on) ?? [0, 0]
      expect(from).toBeGreaterThanOrEqual(run[0] - 1e-6)
      expect(to).toBeLessThanOrEqual(run[1] + 1e-6)
      for (const one of made.mechanisms) {
        if (one.on !== m.on || one.id === m.id) continue
        const [a, b] = stretchOf(one)
        expect(to <= a + 1e-6 || from >= b - 1e-6).toBe(true)
      }
    })
  })
})
