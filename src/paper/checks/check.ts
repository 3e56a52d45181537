import type { Design } from '../design/design.ts'
import { ownerOf } from '../design/name.ts'
import type { Examine } from './repair.ts'
import { repairFor } from './repair.ts'
import type { Finding, Limits, Subject } from './subject.ts'
import { keyOf, roomOf, subjectOf } from './subject.ts'
import type { Examiner } from './table.ts'
import { checksThat, examiners } from './table.ts'
import type { Check, CheckName } from './verdict.ts'

export interface CheckOptions extends Partial<Limits> {
  /** Look for the nearest repair of every check that fails; true unless said otherwise. */
  readonly repairs?: boolean
  /** Only these checks; all of them if left out. */
  readonly names?: readonly CheckName[]
}

/**
 * What the repairs of one design may cost together, in looks at two moving panels: about a second and a half. Each fault has
 * an equal share of what the ones before it left.
 */
const REPAIRS = 6e4

/** What it costs, in looks, to examine a design: in any case, and for each of its mechanisms by each check's own cost. */
const EXAMINED = 3

const EXAMINED_EACH: Readonly<Record<Examiner['cost'], number>> = { step: 2, design: 6, last: 4 }

const QUICK = checksThat(({ cost }) => cost === 'step')

const usual: Limits = { bridge: 5, thickness: 2 }

/** What fails, each thing once; if nothing does, the one that comes nearest to failing. */
function failingOrNearest(findings: readonly Finding[]): readonly Finding[] {
  const worst = new Map<string, Finding>()
  for (const one of findings) {
    const key = one.ok ? '' : keyOf(one)
    const known = worst.get(key)
    if (!known || roomOf(one) < roomOf(known)) worst.set(key, one)
  }
  if (worst.size > 1) worst.delete('')
  return [...worst.values()]
}

/** Mechanisms whose cuts cannot be made as drawn, and all that sits on them: what follows from them is not worth looking at. */
function spoiltBy(findings: readonly Finding[], { mechanisms }: Design): ReadonlySet<string> {
  const spoilt = new Set(
    findings.flatMap(({ ok, name, ids }) => (ok ? [] : ids.slice(0, name === 'cuts-apart' ? 2 : 1))),
  )
  for (const { id, on } of mechanisms) if (spoilt.has(ownerOf(on))) spoilt.add(id)
  return spoilt
}

/** All findings of the checks named (null: of every check), in the order in which they are told. */
function examined(subject: Subject, names: readonly CheckName[] | null): readonly Finding[] {
  const wanted = ({ name }: Examiner): boolean => !names || names.includes(name)
  const none: ReadonlySet<string> = new Set()
  const needsCuts = examiners.some((one) => one.stage === 'made' && wanted(one))
  const cuts = new Map(
    examiners
      .filter((one) => one.stage === 'cuts' && (needsCuts || wanted(one)))
      .map((one) => [one.name, one.examine(subject, none)]),
  )
  const spoilt = spoiltBy([...cuts.values()].flat(), subject.design)
  return examiners
    .filter(wanted)
    .flatMap(({ name, stage, examine }) =>
      failingOrNearest(cuts.get(name) ?? examine(subject, stage === 'made' ? spoilt : none)),
    )
}

/** What it costs to ask these checks about a design, in looks; those of `clear-motion` are counted as they are made. */
function costOf({ mechanisms }: Design, names: readonly CheckName[] | null): number {
  const costs = new Set(
    examiners.filter(({ name }) => !names || names.includes(name)).map(({ cost }) => cost),
  )
  return EXAMINED + mechanisms.length * [...costs].reduce((sum, cost) => sum + EXAMINED_EACH[cost], 0)
}

/** What a search asks of a design at each of its steps. */
export interface Asked {
  /** These checks alone. */
  readonly names: readonly CheckName[]
  /** What concerns these mechanisms alone; all that is there if left out. */
  readonly ids?: ReadonlySet<string>
  /** Looks at two moving panels that are left for the whole search; counted down. Within it each verdict is hasty. */
  readonly effort: { left: number }
}

/** Quickest to tell first: of most designs that a search tries, one of these fails. */
const EARLY: readonly CheckName[] = [
  'inside-fold',
  'cuts-inside',
  'cuts-apart',
  'narrow',
  'shuts-flat',
  'glue',
]

const early = ({ name }: Examiner): number => (EARLY.includes(name) ? EARLY.indexOf(name) : EARLY.length)

const inHaste: readonly Examiner[] = [...examiners].sort((one, two) => early(one) - early(two))

/** So many quick checks together cost what one look at all of them is reckoned at. */
const SHARED = 3

/**
 * The faults of a design one after another, for those who ask about many designs in a row and may stop at the first:
 * what does not hold, or cannot be told with what effort is left; what is worst, or holds by how much, is not looked for.
 */
export function* faults(design: Design, { names, ids, effort }: Asked): Generator<Finding, void> {
  const about = { ids: ids ?? new Set(design.mechanisms.map(({ id }) => id)), alone: false }
  effort.left -= EXAMINED
  const subject = subjectOf(design, usual, about, effort)
  const needsCuts = examiners.some(({ name, stage }) => stage === 'made' && names.includes(name))
  const cuts: Finding[] = []
  for (const { name, stage, cost, examine } of inHaste) {
    const wanted = names.includes(name)
    if (!wanted && (stage !== 'cuts' || !needsCuts)) continue
    effort.left -= (EXAMINED_EACH[cost] * design.mechanisms.length) / SHARED
    const found = examine(subject, stage === 'made' ? spoiltBy(cuts, design) : new Set())
    if (stage === 'cuts') cuts.push(...found)
    if (wanted) for (const one of found) if (!one.ok) yield one
  }
}

/**
 * Whether a design works as paper: one result for every check that holds, and one for every mechanism or
 * pair of mechanisms that fails it, with the nearest repair. Lengths in mm, angles in degrees. Never throws
 * on a parsed design.
 */
export function check(design: Design, options: CheckOptions = {}): readonly Check[] {
  const { repairs = true, names = null, ...given } = options
  const limits = { ...usual, ...given }
  const subject = subjectOf(design, limits, null, { left: Number.POSITIVE_INFINITY })
  const findings = examined(subject, names)
  if (!repairs) return findings
  const broken = findings.filter(({ ok, waits }) => !ok && !waits)
  const effort = { left: REPAIRS }
  const isBroken = new Set(broken)
  // What stays as it is need not be looked at again.
  const before = new Set([-1, ...subject.model.builds.keys()].map(subject.paper))
  let waiting = broken.length
  const repaired = (finding: Finding): Check => {
    const share = effort.left / waiting--
    const own = { left: share }
    const examine: Examine = (one, asked, about) => {
      own.left -= costOf(one, asked)
      if (own.left <= 0) return null
      const found = examined(subjectOf(one, limits, about, own, before), asked)
      return own.left > 0 ? found : null
    }
    // Two looks at the whole design are kept for what is found.
    const affords = (part: Design) => Math.floor((own.left - 2 * costOf(design, null)) / costOf(part, QUICK))
    const repair = affords(design) > 0 ? repairFor(design, finding, findings, { examine, affords }) : null
    effort.left -= share - own.left
    return { ...finding, repair }
  }
  return findings.map((finding) => (isBroken.has(finding) ? repaired(finding) : finding))
}
