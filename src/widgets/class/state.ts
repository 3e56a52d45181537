/** What a teacher has chosen and what the class has read: kept on the device, read back with care. */
import type { Choice } from '../../class/choice.ts'
import { readAges, readGroups, readMinutes, readPaper, readPupils, USUAL } from '../../class/choice.ts'
import type { Readings } from '../../class/readings.ts'
import { keepWord, recall } from '../model/page.ts'

export interface ClassState {
  /** Which card: a key of the page's own, or `own:` and an id of the browser's. */
  readonly card: string
  /** `differs`: a size by its name, `none`, or `first`: the one that shows most. */
  readonly choice: Omit<Choice, 'differs'> & { readonly differs: string }
  /** Minutes of the parts where the teacher has moved them. */
  readonly minutes: readonly number[] | null
  readonly readings: Readings
}

const KEY = 'class'

export const begin = (card: string): ClassState => ({
  card,
  choice: { ...USUAL, differs: 'first' },
  minutes: null,
  readings: {},
})

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const textOf = (value: unknown): string =>
  typeof value === 'string' || typeof value === 'number' ? String(value) : ''

/** What is kept as a state: what cannot be read of it is as it is at first. */
export function stateFrom(text: string | null, first: ClassState): ClassState {
  let kept: unknown
  try {
    kept = JSON.parse(text ?? 'null')
  } catch {
    return first
  }
  if (!isObject(kept) || !isObject(kept.choice)) return first
  const { choice } = kept
  const or = <T>(read: { readonly ok: true; readonly value: T } | { readonly ok: false }, usual: T): T =>
    read.ok ? read.value : usual
  const pupils = or(readPupils(textOf(choice.pupils)), first.choice.pupils)
  const readings = isObject(kept.readings)
    ? Object.fromEntries(
        Object.entries(kept.readings).flatMap(([code, value]) =>
          typeof value === 'number' && Number.isFinite(value) && value >= 0 ? [[code, value] as const] : [],
        ),
      )
    : {}
  const { minutes } = kept
  return {
    card: typeof kept.card === 'string' ? kept.card : first.card,
    choice: {
      pupils,
      groups: or(readGroups(textOf(choice.groups), pupils), Math.min(first.choice.groups, pupils)),
      ages: or(readAges(textOf(choice.ages)), first.choice.ages),
      minutes: or(readMinutes(textOf(choice.minutes)), first.choice.minutes),
      paper: or(readPaper(textOf(choice.paper)), first.choice.paper),
      differs: typeof choice.differs === 'string' ? choice.differs : 'first',
      large: choice.large === true,
      picture: choice.picture === true,
      certificate: choice.certificate === true,
    },
    minutes:
      Array.isArray(minutes) && minutes.every((m) => Number.isInteger(m) && (m as number) > 0)
        ? (minutes as readonly number[])
        : null,
    readings,
  }
}

export const kept = (first: ClassState): ClassState => stateFrom(recall(KEY), first)

export const keep = (state: ClassState): void => keepWord(KEY, JSON.stringify(state))
