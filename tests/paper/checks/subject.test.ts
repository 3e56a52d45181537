// What the checks share: which piece a place is printed on, whose paper is as it was, and over which openings parts are
// judged together.
import { describe, expect, test } from 'vitest'
import { keyOf, mechanismsIn, onPiece, roomOf, subjectOf } from '../../../src/paper/checks/subject.ts'
import type { Design } from '../../../src/paper/index.ts'
import { change } from '../../../src/paper/index.ts'
import { fold, layer, only } from '../shared/check-designs.ts'
import { design, gluedMoth } from '../shared/designs.ts'

const limits = { bridge: 5, thickness: 2 }

const subject = (made: Design, before: Parameters<typeof subjectOf>[4] = null) =>
  subjectOf(made, limits, null, { left: 1e5 }, before)

const TIGHT = (Math.acos(-1 / 3) * 180) / Math.PI

describe('a place', () => {
  const made = design([gluedMoth(), layer('step', 'gutter', 110, 140, 20)])
  const of = subject(made)
  const panel = (name: string) => of.model.panels.findIndex((one) => one.name === name)

  test('on the card is told without a piece, on glued paper with it', () => {
    expect(onPiece(of, panel('page/right'), [[10, 20]])).toEqual({ flat: [[10, 20]] })
    expect(onPiece(of, panel('page/left'), [[10, 20]])).toEqual({ flat: [[-10, 20]] })
    expect(onPiece(of, panel('moth/left'), [[0, 0]])).toMatchObject({ piece: 'moth/piece' })
    // What is cut from the card lies on it where it lay.
    expect(onPiece(of, panel('step/right'), [[20, 0]])).toEqual({ flat: [[20, 110]] })
  })

  test('is told so by the checks', () => {
    const found = only('narrow', design([gluedMoth({ foot: 8, ridge: 3 })]))
    expect(found[0]).toMatchObject({ ok: false, piece: 'moth/piece' })
    expect(only('narrow', design([layer('reed', 'gutter', 20, 23, 20)]))[0]).not.toHaveProperty('piece')
  })
})

describe('looks', () => {
  const made = design([layer('lamp', 'gutter', 20, 50, 20), layer('reed', 'gutter', 80, 120, 20)])
  const papersOf = (of: ReturnType<typeof subject>) => [-1, 0, 1].map((owner) => of.paper(owner))

  test('count where nothing is known, and not at paper that is as it was from shut to flat', () => {
    const whole = [0, 180] as const
    const plain = subject(made)
    expect(plain.counts([plain.paper(0)], whole)).toBe(true)
    const before = new Set(papersOf(plain))
    const again = subject(change(made, 'reed', { start: 81 }), before)
    expect(again.counts([again.paper(-1), again.paper(0)], whole)).toBe(false)
    expect(again.counts([again.paper(0), again.paper(1)], whole)).toBe(true)
    // Less than the whole way is another question.
    expect(again.counts([again.paper(0)], [1, 180])).toBe(true)
    expect(again.counts([again.paper(0)], [0, 179])).toBe(true)
  })
})

describe('openings', () => {
  test('of two are those of both', () => {
    const made = design([
      gluedMoth({ base: 60, facet: 45 }),
      gluedMoth({ id: 'owl', apex: 120, foot: 15, ridge: 15, base: 50, facet: 45 }),
    ])
    const cos2 = (degrees: number) => Math.cos((degrees * Math.PI) / 180) ** 2
    const owl = (2 * 180 * Math.acos(Math.sqrt((cos2(45) - cos2(50)) / (1 - cos2(50))))) / Math.PI
    const { range, alone } = subject(made)
    expect(range(0, 1)?.[1]).toBeCloseTo(TIGHT - 0.01, 6)
    expect(range(1)?.[1]).toBeCloseTo(TIGHT - 0.01, 6)
    expect(alone(1)?.[1]).toBeCloseTo(owl - 0.01, 6)
    expect(alone(0)?.[1]).toBeCloseTo(TIGHT - 0.01, 6)
  })

  test('begin a hundredth of a degree after a stop', () => {
    // Feet of 50 and 10 and walls of 30 and 30: the joints are 40 apart shut, and walls meet from the first; 65 and 10
    // differ by 55, so that they come apart at cos w = (2600 - 3025) / 1000.
    const made = design([
      {
        id: 'tent',
        kind: 'glued-tent',
        on: 'gutter',
        start: 20,
        end: 60,
        leftFoot: 50,
        rightFoot: 10,
        leftWall: 65,
        rightWall: 10,
      },
    ])
    const least = (Math.acos((2600 - 3025) / 1000) * 180) / Math.PI
    expect(subject(made).alone(0)?.[0]).toBeGreaterThanOrEqual(least + 0.01 - 1e-6)
  })

  test('of what fits nowhere are none', () => {
    const never = {
      id: 'tent',
      kind: 'glued-tent',
      on: 'gutter',
      start: 20,
      end: 60,
      leftFoot: 50,
      rightFoot: 10,
    }
    const made = design([{ ...never, leftWall: 5, rightWall: 5 }, layer('step', 'gutter', 90, 120, 9)])
    const { range, alone } = subject(made)
    expect(alone(0)).toBeNull()
    expect(range(0)).toBeNull()
    expect(range(0, 1)).toBeNull()
    expect(range(1)).toEqual([0, 180])
  })
})

test('findings about the same are told by one key, and how much room there is', () => {
  const [found] = only(
    'bridge',
    design([layer('lamp', 'gutter', 20, 50, 20), layer('reed', 'gutter', 53, 80, 20)]),
  )
  if (!found) throw new Error('nothing found')
  expect(mechanismsIn(found)).toEqual(['reed', 'lamp'])
  expect(keyOf(found)).toBe('bridge lamp reed')
  expect(roomOf(found)).toBeCloseTo(-2, 9)
  const [thick] = only('thickness', design([fold('beak', 'gutter', 110, -40, 38)]))
  expect(thick && roomOf(thick)).toBeCloseTo(1, 9)
})
