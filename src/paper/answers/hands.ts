import { the } from '../checks/names.ts'
import { change, made, settingOf } from '../design/change.ts'
import type { Design } from '../design/design.ts'
import { measure } from '../measure/measure.ts'
import { topOf } from '../measure/top.ts'
import { modelOf } from '../model/model.ts'
import * as says from '../words/answers.ts'
import { canBe } from './trials.ts'

/** What a slip of one millimetre or degree in one setting does, either way: less and more. */
export interface Hand {
  readonly id: string
  readonly field: string
  readonly label: string
  readonly unit: 'mm' | 'deg'
  /** Change of the tip's rise and reach and of the shut margin, mm; null where the slip gives no design. */
  readonly less: Moved | null
  readonly more: Moved | null
}

export interface Moved {
  readonly rise: number
  readonly reach: number
  readonly margin: number
  /** Change of the distance from shutting flat, mm or degrees. */
  readonly shut: number
}

export interface Hands {
  readonly opening: number
  /** Most consequential first. */
  readonly hands: readonly Hand[]
  /** One line, or null if the design has nothing to make. */
  readonly sentence: string | null
  /** Whether the first one matters clearly more than the next: only then is it worth saying. */
  readonly clearly: boolean
}

/** So many times as much is clearly more. Common practice, no source. */
const CLEARLY = 1.5

/** The worst shut gap of the design, mm or degrees. */
const shutGap = (design: Design): number =>
  Math.max(0, ...modelOf(design).builds.map(({ build }) => Math.abs(build.shutGap?.gap ?? 0)))

/**
 * A degree or a millimetre that keeps the card from shutting counts ten times one that moves the tip; along
 * the gutter, where little depends on it, the tip counts half.
 */
const weigh = (moved: Moved | null): number =>
  moved
    ? Math.max(Math.abs(moved.rise), Math.abs(moved.reach) / 2, Math.abs(moved.margin)) +
      10 * Math.abs(moved.shut)
    : 0

/**
 * What making errors do at an opening (degrees): for every setting of every mechanism, one millimetre
 * or degree less and more. The worst comes first, in words too.
 */
export function hands(design: Design, opening = 90): Hands {
  const now = measure(design, opening)
  const gap = shutGap(design)
  const rows = design.mechanisms.flatMap((m): Hand[] => {
    const before = now.tips[m.id]
    if (!before) return []
    const slip = (name: string, by: number): Moved | null => {
      // Only what the hand makes: a slit is drawn, scored and cut; a wedge angle follows from it.
      const changed = change(design, m.id, { [name]: settingOf(m, name) + by })
      if (!canBe(changed)) return null
      const after = measure(changed, opening)
      const tip = after.tips[m.id]
      // A slip that keeps the card from this opening leaves no tip to be read there.
      if (!tip || after.opening !== now.opening) return null
      return {
        rise: tip.rise - before.rise,
        reach: tip.reach - before.reach,
        margin: after.margin - now.margin,
        shut: shutGap(changed) - gap,
      }
    }
    return made(m).map(({ name, label, unit }) => ({
      id: m.id,
      field: name,
      label,
      unit,
      less: slip(name, -1),
      more: slip(name, 1),
    }))
  })
  const ranked = rows
    .map((row) => ({ row, weight: Math.max(weigh(row.less), weigh(row.more)) }))
    .sort((a, b) => b.weight - a.weight)
  const worst = ranked[0]
  const worstOf = design.mechanisms.find(({ id }) => id === worst?.row.id)
  return {
    opening: now.opening,
    hands: ranked.map(({ row }) => row),
    sentence: worst && worstOf && worst.weight > 0 ? say(worst.row, topOf(worstOf)) : null,
    clearly: (worst?.weight ?? 0) > CLEARLY * (ranked[1]?.weight ?? 0),
  }
}

function say(hand: Hand, top: 'tip' | 'ridge'): string {
  const worst = weigh(hand.less) > weigh(hand.more) ? hand.less : hand.more
  if (!worst) return ''
  const { id, label, unit } = hand
  if (worst.shut > 0.05) return says.keepsFromShutting(label, the(id), unit)
  const moved: readonly (readonly [what: string, by: number])[] = [
    [says.riseOfTop(top), worst.rise],
    [says.reachOfTop(top), worst.reach],
    [says.shutMargin, worst.margin],
  ]
  const [what, by] = moved.reduce((a, b) => (Math.abs(b[1]) > Math.abs(a[1]) ? b : a))
  return says.moves(label, the(id), unit, what, `${Math.abs(by).toFixed(1)} mm`)
}
