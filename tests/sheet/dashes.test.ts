// Solid means cut. Dashes that lie on other dashes out of step close up, and then say cut too: no two lines that are
// dashed lie on one another. ISO 128-2 parts lines by their dashes alone (from memory).
import { expect, test } from 'vitest'
import type { SheetLines } from '../../src/sheet/index.ts'
import { fitOn, paperOf } from '../../src/sheet/index.ts'
import { dummies, laid } from './designs.ts'

type Point = readonly [number, number]
type Stretch = readonly [Point, Point]

/** How long two stretches lie on one another, mm; 0 if they do not run the same way in one line. */
function shared([a, b]: Stretch, [c, d]: Stretch): number {
  const long = Math.hypot(b[0] - a[0], b[1] - a[1])
  if (long < 0.1) return 0
  const [u, v] = [(b[0] - a[0]) / long, (b[1] - a[1]) / long]
  const off = ([x, y]: Point): number => Math.abs((x - a[0]) * v - (y - a[1]) * u)
  if (off(c) > 0.15 || off(d) > 0.15) return 0
  const at = ([x, y]: Point): number => (x - a[0]) * u + (y - a[1]) * v
  return Math.min(long, Math.max(at(c), at(d))) - Math.max(0, Math.min(at(c), at(d)))
}

test.each(['front', 'ticks', 'back'] as const satisfies readonly SheetLines[])(
  'lines %s: no dashes lie on other dashes',
  (lines) => {
    let count = 0
    for (const [name, design] of dummies) {
      const paper = fitOn(design, paperOf('a4')).ok ? 'a4' : 'a3'
      for (const { marks } of laid(design, { paper, lines, care: [] })) {
        const dashed = marks.flatMap((mark) => {
          if (mark.mark !== 'path' || !['place', 'valley', 'mountain'].includes(mark.role)) return []
          return mark.runs.flatMap((run): Stretch[] => {
            const ends = mark.closed ? [...run, run[0] as Point] : run
            return ends.slice(1).map((b, k): Stretch => [ends[k] as Point, b])
          })
        })
        dashed.forEach((one, k) => {
          for (const other of dashed.slice(k + 1))
            expect(shared(one, other), `${name}: ${one.join(' to ')}`).toBeLessThan(2)
        })
        count += dashed.length
      }
    }
    expect(count).toBeGreaterThan(200)
  },
)
