// Glue tabs of what is offered: as wide as the paper asks for (common practice, no source), and where they lie, by
// polyclip-ts, which shares nothing with the checks.
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Design, Flat } from '../../../src/paper/index.ts'
import { check, flatParts, jointsOf, offers, parseDesign, pieces } from '../../../src/paper/index.ts'
import { tabOn } from '../../../src/paper/mechanisms/shared/fitting.ts'
import { areaOf, shared } from '../shared/areas.ts'
import { runs } from '../shared/designs.ts'
import { between } from '../shared/gardens.ts'

const card = (width: number, height: number, caliper: number): Design =>
  parseDesign({ hingebook: 1, title: 'Tabs', card: { width, height, caliper }, mechanisms: [] })

describe('the width of a tab', () => {
  test.each([
    [0.1, 6],
    [0.25, 8],
    [0.5, 11],
    [0.7, 13],
    [1, 14],
    [3, 14],
  ])('on paper of %d mm is %d mm where there is room', (caliper, wide) => {
    expect(tabOn(caliper, 60)).toBe(wide)
  })

  test('is a third of a short joint, and never less than 3 mm', () => {
    expect(tabOn(0.5, 15)).toBe(5)
    expect(tabOn(0.5, 5)).toBe(3)
  })
})

/** Tabs of the pieces of a design, piece by piece. */
function tabsOf(design: Design): ReadonlyMap<string, readonly (readonly Flat[])[]> {
  const tabs = jointsOf(design).filter(({ fold }) => fold !== null)
  return new Map(
    pieces(design).map(({ id }) => [id, tabs.flatMap(({ own }) => (own.piece === id ? [own.points] : []))]),
  )
}

describe('tabs of what is offered', () => {
  test('follow the paper of the card, meet nowhere, cross no fold and show beside no panel', () => {
    const seen = new Set<string>()
    fc.assert(
      fc.property(between(60, 150), between(90, 210), between(0.1, 0.8), (width, height, caliper) => {
        for (const { design, kind } of offers(card(width, height, caliper), 'gutter')) {
          const m = design.mechanisms.at(-1) as { readonly tab?: number; readonly foot?: number }
          if (m.tab === undefined) continue
          seen.add(kind)
          expect(m.tab).toBeLessThanOrEqual(tabOn(caliper, 1000))
          expect(check(design).filter(({ name, ok }) => name === 'glue' && !ok)).toEqual([])
          const parts = flatParts(design)
          for (const [id, tabs] of tabsOf(design))
            tabs.forEach((tab, k) => {
              // Its own paper lies beside all panels of its piece: no crease runs through it.
              for (const { piece, points } of parts)
                if (piece === id) expect(shared(tab, points)).toBeLessThan(1e-6)
              for (const other of tabs.slice(k + 1)) expect(shared(tab, other)).toBeLessThan(1e-6)
            })
          const hosts = jointsOf(design).filter(({ isTaped }) => !isTaped)
          hosts.forEach(({ host }, k) => {
            // All of it lies on one panel: it crosses no fold and no edge.
            const on = parts.filter(({ piece }) => piece === host.piece)
            const panels = new Set(
              on.filter(({ points }) => shared(host.points, points) > 1e-6).map(({ panel }) => panel),
            )
            expect(panels.size).toBe(1)
            const whole = on.reduce((sum, { points }) => sum + shared(host.points, points), 0)
            expect(whole).toBeCloseTo(areaOf(host.points), 6)
            for (const two of hosts.slice(k + 1))
              if (two.host.piece === host.piece && two.host.face === host.face)
                expect(shared(host.points, two.host.points)).toBeLessThan(1e-6)
          })
        }
      }),
      runs(12),
    )
    expect(seen.size).toBe(3)
  })

  test('a tab that a file names is kept as it is', () => {
    const made = parseDesign({
      ...{ hingebook: 1, title: 'Tabs' },
      card: { width: 105, height: 148, caliper: 0.8 },
      mechanisms: [
        {
          ...{ id: 'tent', kind: 'glued-tent', on: 'gutter', start: 20, end: 60, tab: 4 },
          ...{ leftFoot: 20, rightFoot: 20, leftWall: 30, rightWall: 30 },
        },
      ],
    })
    const tab = tabsOf(made).get('tent/piece')?.[0] as readonly Flat[]
    // A trapezium 40 mm long, 4 mm wide, set in by 4 mm at both ends.
    expect(areaOf(tab)).toBeCloseTo(4 * 36, 9)
  })
})
