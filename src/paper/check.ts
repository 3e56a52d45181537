import { bridge } from './checks/bridge.ts'
import { clearMotion } from './checks/clear-motion.ts'
import { cutsApart } from './checks/cuts-apart.ts'
import { cutsInside } from './checks/cuts-inside.ts'
import { insideFold } from './checks/inside-fold.ts'
import { opensFlat, shutsFlat } from './checks/lies-flat.ts'
import { staysInside } from './checks/stays-inside.ts'
import type { Finding, Limits, Subject } from './checks/subject.ts'
import { subjectOf } from './checks/subject.ts'
import { thickness } from './checks/thickness.ts'
import type { Design } from './model.ts'
import type { Check } from './types.ts'

export interface CheckOptions extends Partial<Limits> {
  /** Look for the nearest repair of every check that fails; true unless said otherwise. */
  readonly repairs?: boolean
}

const usual: Limits = { bridge: 5, thickness: 2 }

/** What fails; if nothing does, the one that comes nearest to failing. */
function failingOrNearest(findings: readonly Finding[]): readonly Finding[] {
  const bad = findings.filter(({ ok }) => !ok)
  if (bad.length > 0 || findings.length === 0) return bad
  const room = ({ sense, value, limit }: Finding) => (sense === 'at-least' ? value - limit : limit - value)
  return [findings.reduce((a, b) => (room(b) < room(a) ? b : a))]
}

/** Mechanisms whose cuts cannot be made as drawn, and all that sits on them: what follows from them is not worth looking at. */
function spoiltBy(findings: readonly Finding[], { mechanisms }: Design): ReadonlySet<string> {
  const spoilt = new Set(
    findings.flatMap(({ ok, name, ids }) => (ok ? [] : ids.slice(0, name === 'cuts-apart' ? 2 : 1))),
  )
  for (const { id, on } of mechanisms) if (spoilt.has(on.split('/')[0] ?? '')) spoilt.add(id)
  return spoilt
}

function findings(subject: Subject): readonly Finding[] {
  const drawn = [insideFold(subject), cutsInside(subject), cutsApart(subject)]
  const spoilt = spoiltBy(drawn.flat(), subject.design)
  return [
    shutsFlat(subject),
    opensFlat(subject),
    staysInside(subject),
    ...drawn,
    bridge(subject, spoilt),
    clearMotion(subject, spoilt),
    thickness(subject),
  ].flatMap(failingOrNearest)
}

/**
 * Whether a design works as paper: one result for every check that holds, and one for every mechanism or
 * pair of mechanisms that fails it. Lengths in mm, angles in degrees. Never throws on a parsed design.
 */
export function check(design: Design, options: CheckOptions = {}): readonly Check[] {
  const { repairs: _, ...limits } = options
  return findings(subjectOf(design, { ...usual, ...limits }, null))
}
