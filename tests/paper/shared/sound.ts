// Random designs that pass all checks, and what goes on on them by means of their own: dense looks at poses.
import fc from 'fast-check'
import { expect } from 'vitest'
import type { Design, Vec3 } from '../../../src/paper/index.ts'
import { change, check, compile, fieldsFor, settable, settingOf, settled } from '../../../src/paper/index.ts'
import { KERF } from '../../../src/paper/motion/leaves.ts'
import { crossings } from './crossing.ts'
import { gluedDesigns } from './glued-designs.ts'

export const isSound = (design: Design): boolean => check(design, { repairs: false }).every(({ ok }) => ok)

const hostOf = ({ on }: { readonly on: string }): string => on.split('/')[0] ?? ''

/** Of a random design the mechanisms that can stand together with those before them. */
function soundPart(design: Design): Design {
  let kept: Design = { ...design, mechanisms: [] }
  for (const m of design.mechanisms) {
    const host = hostOf(m)
    if (host !== 'gutter' && host !== 'page' && !kept.mechanisms.some(({ id }) => id === host)) continue
    const next: Design = { ...kept, mechanisms: [...kept.mechanisms, m] }
    if (isSound(next)) kept = next
  }
  return kept
}

/** So many random sound designs of at least so many mechanisms, the same for the same number. */
export function soundDesigns(count: number, draw: number, least = 1): readonly Design[] {
  const found: Design[] = []
  for (let k = 0; found.length < count; k++) {
    const made = gluedDesigns({ most: 10, depth: 3, match: ['alike', 'shuts'] })
    for (const one of fc.sample(made, { numRuns: 20, seed: draw + 1000 * k })) {
      const kept = soundPart(one)
      if (kept.mechanisms.length >= least && found.length < count) found.push(kept)
    }
  }
  return found
}

/** A sound design with up to five of its numbers changed at random, as a hand that types leaves it; the words say what was changed. */
export function broken(design: Design, draw: number): { readonly made: Design; readonly what: string } {
  const numbers = fc.sample(
    fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 16, maxLength: 16 }),
    {
      numRuns: 1,
      seed: draw,
    },
  )[0] as number[]
  const take = (): number => numbers.shift() ?? 0.5
  let made = design
  const what: string[] = []
  for (let left = 1 + Math.floor(take() * 5); left > 0; left--) {
    const m = made.mechanisms[Math.floor(take() * 0.999 * made.mechanisms.length)]
    if (!m) break
    const all = settable(m)
    const field = all[Math.floor(take() * 0.999 * all.length)]
    if (!field) break
    const now = settingOf(m, field.name)
    const wide = field.unit === 'deg' ? 90 : 1.6 * Math.max(30, Math.abs(now))
    const next = settled(
      change(made, m.id, fieldsFor(m, field.name, Number((now + (take() - 0.5) * wide).toFixed(1)))),
    )
    if (!next) continue
    made = next
    what.push(`${m.id}.${field.name}`)
  }
  return { made, what: what.join(', ') }
}

/** Papers that cross with a rim of 0.1 mm all round: twice what a cut takes away. */
const RIM = 2 * KERF + 0.01

/** Openings from flat to nearly shut, in degrees, so many. */
export const looks = (count: number): readonly number[] =>
  Array.from({ length: count }, (_, k) => 0.1 + (179.8 * k) / (count - 1))

/**
 * What dense looks see of a design that must work: every opening is reached, nothing crosses (exact signs, not the
 * kernel's own search), the shut card lies in one plane, and its corners stay on the card: no farther from the gutter
 * than a page is wide, and between its ends.
 */
export function seenToWork(design: Design, count: number): void {
  const poser = compile(design)
  const cross = crossings(design, RIM)
  const { width, height } = design.card
  const onCard = ([x, y, z]: Vec3): boolean =>
    Math.hypot(x, z) <= width + 1e-6 && y >= -1e-6 && y <= height + 1e-6
  for (const points of Object.values(poser(0).panels))
    for (const [x] of points) expect(Math.abs(x)).toBeLessThan(2e-3)
  for (const opening of looks(count)) {
    const pose = poser(opening)
    expect(pose.stopped).toEqual([])
    for (const [name, points] of Object.entries(pose.panels))
      for (const p of points)
        if (!onCard(p)) expect.fail(`${name} is off the card at ${opening}: ${p.join(', ')}`)
    expect(cross(opening)).toEqual([])
  }
}
