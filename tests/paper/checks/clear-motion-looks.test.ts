// What looks cost, and what is said where there are too few: counted down, and never called clear.
import { describe, expect, test } from 'vitest'
import { clearMotion } from '../../../src/paper/checks/clear-motion.ts'
import { staysInside } from '../../../src/paper/checks/stays-inside.ts'
import { subjectOf } from '../../../src/paper/checks/subject.ts'
import type { Design } from '../../../src/paper/index.ts'
import { parseDesign } from '../../../src/paper/index.ts'
import { fold, layer } from '../shared/check-designs.ts'
import { design } from '../shared/designs.ts'

const limits = { bridge: 5, thickness: 2 }

const made = () =>
  design([
    fold('owl', 'gutter', 60, -30, 40),
    fold('moth', 'gutter', 90, 30, 40),
    layer('step', 'gutter', 5, 25, 10),
  ])

const fresh = (one: Design): Design => parseDesign(JSON.parse(JSON.stringify(one)))

/** The papers of a design, the card's first. */
const papers = (one: Design) => {
  const subject = subjectOf(one, limits, null, { left: 1e5 })
  return new Set([-1, ...one.mechanisms.keys()].map(subject.paper))
}

describe('where there are few looks', () => {
  test('what cannot be told is said so, with the gap that is left', () => {
    for (const left of [4, 8, 16]) {
      const effort = { left }
      const found = clearMotion(subjectOf(fresh(made()), limits, null, effort), new Set())
      expect(effort.left).toBeLessThanOrEqual(left)
      expect(found.every(({ ok }) => !ok)).toBe(true)
      const unsure = found.filter(({ verdict }) => verdict === 'undecided')
      expect(unsure.length).toBeGreaterThan(0)
      for (const { sentence, value, ids, unit } of unsure) {
        expect(unit).toBe('mm')
        expect(value).toBeGreaterThanOrEqual(0)
        expect(ids.some((id) => id.includes('/'))).toBe(true)
        expect(sentence).toMatch(
          /^We cannot tell whether .+ and .+ pass clear when the card .+: the gap is too small, .+ mm\.$/,
        )
      }
    }
  })

  test('with enough it is clear', () => {
    const [found] = clearMotion(subjectOf(fresh(made()), limits, null, { left: 1e5 }), new Set())
    expect(found).toMatchObject({ ok: true, verdict: 'clear' })
  })
})

describe('looks', () => {
  const spent = (one: Design, check: typeof staysInside, before: Parameters<typeof subjectOf>[4] = null) => {
    const effort = { left: 1e5 }
    check(subjectOf(one, limits, null, effort, before))
    return 1e5 - effort.left
  }
  const clear: typeof staysInside = (subject) => clearMotion(subject, new Set())

  test.each([
    ['whether it stays inside', staysInside],
    ['whether it moves clear', clear],
  ] as const)('at %s count, once more as much, and not where all is as it was', (_, check) => {
    const one = made()
    const first = spent(one, check)
    expect(first).toBeGreaterThan(0)
    expect(spent(one, check)).toBe(first)
    expect(spent(one, check, papers(one))).toBe(0)
    expect(spent(one, check, papers(design([])))).toBe(first)
  })

  test('in haste only the verdict is told, for less', () => {
    const one = fresh(made())
    const hasty = { left: 1e5 }
    const ids = new Set(one.mechanisms.map(({ id }) => id))
    const found = staysInside(subjectOf(one, limits, { ids, alone: false }, hasty))
    expect(found.every(({ ok }) => ok)).toBe(true)
    expect(1e5 - hasty.left).toBeLessThanOrEqual(spent(one, staysInside))
  })
})
