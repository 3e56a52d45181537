import { faults } from '../checks/check.ts'
import { checksThat } from '../checks/table.ts'
import type { CheckName } from '../checks/verdict.ts'
import type { Design } from '../design/design.ts'
import { kindOf } from '../mechanisms/registry.ts'
import type { SheetHandle } from '../model/handles.ts'
import { handlesOf } from '../model/handles.ts'
import { once } from '../plane/once.ts'
import type { Forgiveness, Slack } from './forgives.ts'
import { weighed } from './forgives.ts'
import type { Effort } from './seek/sound.ts'

/** A size that is to be made more exactly than all others of its card. */
export interface Tight {
  readonly id: string
  readonly field: string
  readonly label: string
  readonly unit: 'mm' | 'deg'
  /** So far off, one way or the other, it spoils the card: mm or degrees. */
  readonly spoilt: number
  /** Where it is cut or glued: its handle on a flat piece, mm. Several sizes may have the same. */
  readonly handle: string
  readonly piece: string
  readonly at: readonly [x: number, y: number]
}

/** Rules of thumb for strong paper: a hair beyond them nothing jams, sticks out or misses its mark. */
const THUMB: readonly CheckName[] = ['bridge', 'narrow', 'thickness']

const ASKED: readonly CheckName[] = checksThat(({ name }) => !THUMB.includes(name))

/** More than this may be off anywhere, mm and degrees. */
const TIGHT = 1

/** So much more the next size may be off. */
const CLEARLY = 2

/** More than so many are no exception any more. */
const MOST = 3

/** Looks at two moving panels that it may take: about a third of a second. */
const EFFORT = 1.2e4

/** How much one way counts: nothing goes wrong where only the file's own range ends. */
const slackOf = ({ by, fails }: Slack): number => (fails === 'limits' ? CLEARLY * TIGHT : by)

const leastOf = ({ less, more }: Forgiveness): number => Math.min(slackOf(less), slackOf(more))

const isTight = (one: Forgiveness): boolean => leastOf(one) < TIGHT

/** Sides that must match when shut are asked of the hand in any case, and no size stands out by that. */
const mustMatch = ({ less, more }: Forgiveness): boolean =>
  [less, more].some(({ by, fails }) => by === 0 && fails === 'shuts-flat')

/** The handle by which a number is set, by itself or with others. */
function handleOf(
  design: Design,
  handles: readonly SheetHandle[],
  { id, field }: Forgiveness,
): SheetHandle | null {
  const m = design.mechanisms.find((one) => one.id === id)
  if (!m) return null
  const own = handles.filter((one) => one.id === id)
  const derived = kindOf(m)
    .derived.filter((one) => field in one.set(m, one.get(m)))
    .map(({ name }) => name)
  const sets = (names: readonly string[]) =>
    own.find(({ across, along }) => names.some((name) => name === across || name === along))
  return sets([field]) ?? sets(derived) ?? own[0] ?? null
}

/**
 * The sizes of a sound card that ask for more care than all its others: at most three, each spoils the card when it is
 * less than a millimetre or degree off, and the next may be off more than twice as far. None where no size stands out,
 * where the card fails already, or where it cannot be told within the search's effort. Worked out once.
 */
export const tightest: (design: Design) => readonly Tight[] = once(sought)

/** Every number that need not match another, each looked at so far out; null where too many are tight, or the effort is spent. */
function looked(design: Design, most: number, effort: Effort): readonly Forgiveness[] | null {
  const all: Forgiveness[] = []
  for (const one of weighed(design, { but: THUMB, most, once: true }, new Set(), effort)) {
    if (!mustMatch(one)) all.push(one)
    if (effort.left <= 0 || all.filter(isTight).length > MOST) return null
  }
  return effort.left <= 0 ? null : all.sort((a, b) => leastOf(a) - leastOf(b))
}

/** How many of the sizes, the tightest first, are clearly tighter than the next. */
const standingOut = (all: readonly Forgiveness[]): number =>
  1 +
  all.findLastIndex((one, k) => {
    const next = all[k + 1]
    return next !== undefined && isTight(one) && CLEARLY * leastOf(one) < leastOf(next)
  })

function sought(design: Design): readonly Tight[] {
  const effort: Effort = { left: EFFORT }
  for (const _ of faults(design, { names: ASKED, effort })) return []
  let all = looked(design, TIGHT, effort)
  // How much more the rest may be off need be known only where the tight ones may be off by half of it.
  if (all?.some((one) => isTight(one) && CLEARLY * leastOf(one) >= TIGHT))
    all = looked(design, CLEARLY * TIGHT, effort)
  if (!all) return []
  const handles = handlesOf(design)
  return all.slice(0, standingOut(all)).flatMap((one): Tight[] => {
    const handle = handleOf(design, handles, one)
    if (!handle) return []
    const { id, field, label, unit, less, more } = one
    const ends = [less, more].flatMap(({ spoilt, fails }) =>
      spoilt === null || fails === 'limits' ? [] : spoilt,
    )
    return [
      {
        id,
        field,
        label,
        unit,
        spoilt: Math.min(...ends),
        handle: handle.name,
        piece: handle.piece,
        at: handle.at,
      },
    ]
  })
}
