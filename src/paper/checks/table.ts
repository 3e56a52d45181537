import { bridge } from './bridge.ts'
import { clearMotion } from './clear-motion.ts'
import { cutsApart } from './cuts-apart.ts'
import { cutsInside } from './cuts-inside.ts'
import { glue } from './glue.ts'
import { insideFold } from './inside-fold.ts'
import { opensFlat, shutsFlat } from './lies-flat.ts'
import { narrow } from './narrow.ts'
import { staysInside } from './stays-inside.ts'
import type { Finding, Subject } from './subject.ts'
import { thickness } from './thickness.ts'
import type { CheckName } from './verdict.ts'

/** One check, and what those who run it need to know of it. */
export interface Examiner {
  readonly name: CheckName
  /**
   * `any`: it judges whatever is drawn. `cuts`: it says whether the cuts can be made as drawn. `made`: it judges
   * only what can be made, and so after those.
   */
  readonly stage: 'any' | 'cuts' | 'made'
  /**
   * `step`: quick enough to be asked at every step of a search. `design`: quick enough for every design that a search
   * comes to. `last`: asked last, about what the others leave.
   */
  readonly cost: 'step' | 'design' | 'last'
  /** What it finds; `spoilt` are the mechanisms that cannot be made. */
  examine(subject: Subject, spoilt: ReadonlySet<string>): Finding[]
}

/** All checks, in the order in which they are told. */
export const examiners: readonly Examiner[] = [
  { name: 'shuts-flat', stage: 'any', cost: 'step', examine: shutsFlat },
  { name: 'opens-flat', stage: 'any', cost: 'step', examine: opensFlat },
  { name: 'stays-inside', stage: 'any', cost: 'step', examine: staysInside },
  { name: 'inside-fold', stage: 'cuts', cost: 'step', examine: insideFold },
  { name: 'cuts-inside', stage: 'cuts', cost: 'step', examine: cutsInside },
  { name: 'cuts-apart', stage: 'cuts', cost: 'step', examine: cutsApart },
  { name: 'bridge', stage: 'made', cost: 'step', examine: bridge },
  { name: 'narrow', stage: 'made', cost: 'step', examine: narrow },
  { name: 'glue', stage: 'made', cost: 'step', examine: glue },
  { name: 'clear-motion', stage: 'made', cost: 'last', examine: clearMotion },
  { name: 'thickness', stage: 'made', cost: 'design', examine: thickness },
]

/** The names of the checks that are so. */
export const checksThat = (are: (examiner: Examiner) => boolean): readonly CheckName[] =>
  examiners.filter(are).map(({ name }) => name)
