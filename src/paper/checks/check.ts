import type { Design } from '../design/design.ts'
import { bridge } from './bridge.ts'
import { clearMotion } from './clear-motion.ts'
import { cutsApart } from './cuts-apart.ts'
import { cutsInside } from './cuts-inside.ts'
import { glue } from './glue.ts'
import { insideFold } from './inside-fold.ts'
import { opensFlat, shutsFlat } from './lies-flat.ts'
import { narrow } from './narrow.ts'
import type { Examine } from './repair.ts'
import { repairFor } from './repair.ts'
import { staysInside } from './stays-inside.ts'
import type { Finding, Limits, Subject } from './subject.ts'
import { keyOf, roomOf, subjectOf } from './subject.ts'
import { thickness } from './thickness.ts'
import type { Check, CheckName } from './verdict.ts'

export interface CheckOptions extends Partial<Limits> {
  /** Look for the nearest repair of every check that fails; true unless said otherwise. */
  readonly repairs?: boolean
  /** Only these checks; all of them if left out. */
  readonly names?: readonly CheckName[]
}

/**
 * What the repairs of one design may cost together, in looks at two moving panels: about a second. On a card
 * with a dozen faults the last ones are left without.
 */
const REPAIRS = 1e5

/** What it costs to examine a design that is tried: in full, or by a few checks about a few mechanisms. */
const IN_FULL = 500

const IN_PART = 20

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
  for (const { id, on } of mechanisms) if (spoilt.has(on.split('/')[0] ?? '')) spoilt.add(id)
  return spoilt
}

type Examiner = (subject: Subject, spoilt: ReadonlySet<string>) => Finding[]

/** The checks that say whether the cuts can be made as drawn; the others follow in the order in which they are told. */
const drawn: readonly (readonly [CheckName, Examiner])[] = [
  ['inside-fold', insideFold],
  ['cuts-inside', cutsInside],
  ['cuts-apart', cutsApart],
]

const before: readonly (readonly [CheckName, Examiner])[] = [
  ['shuts-flat', shutsFlat],
  ['opens-flat', opensFlat],
  ['stays-inside', staysInside],
]

const after: readonly (readonly [CheckName, Examiner])[] = [
  ['bridge', bridge],
  ['narrow', narrow],
  ['glue', glue],
  ['clear-motion', clearMotion],
  ['thickness', thickness],
]

/** All findings of the checks named (null: of every check). */
function examined(subject: Subject, names: readonly CheckName[] | null): readonly Finding[] {
  const wanted = (name: CheckName): boolean => !names || names.includes(name)
  const none: ReadonlySet<string> = new Set()
  const run = (list: typeof drawn, spoilt: ReadonlySet<string>): Finding[] =>
    list.flatMap(([name, examine]) => (wanted(name) ? failingOrNearest(examine(subject, spoilt)) : []))
  const first = run(before, none)
  const all = after.some(([name]) => wanted(name)) ? drawn.map(([, examine]) => examine(subject, none)) : null
  const spoilt = all ? spoiltBy(all.flat(), subject.design) : none
  const second = all
    ? drawn.flatMap(([name], k) => (wanted(name) ? failingOrNearest(all[k] ?? []) : []))
    : run(drawn, none)
  return [...first, ...second, ...run(after, spoilt)]
}

/**
 * Whether a design works as paper: one result for every check that holds, and one for every mechanism or
 * pair of mechanisms that fails it, with the nearest repair. Lengths in mm, angles in degrees. Never throws
 * on a parsed design.
 */
export function check(design: Design, options: CheckOptions = {}): readonly Check[] {
  const { repairs = true, names = null, ...given } = options
  const limits = { ...usual, ...given }
  const findings = examined(subjectOf(design, limits, null, { left: Number.POSITIVE_INFINITY }), names)
  if (!repairs) return findings
  const effort = { left: REPAIRS }
  const examine: Examine = (one, asked, only) => {
    effort.left -= only ? IN_PART : IN_FULL
    return effort.left > 0 ? examined(subjectOf(one, limits, only, effort), asked) : null
  }
  return findings.map((finding) =>
    finding.ok || finding.waits
      ? finding
      : { ...finding, repair: repairFor(design, finding, findings, examine) },
  )
}
