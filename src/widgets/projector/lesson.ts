/** What a lesson at the back of a room says, and what its keys mean. */
import * as keys from '../../../content/words/key-names.ts'
import * as says from '../../../content/words/projector.ts'
import type { KeyTold } from '../wall/at-wall.ts'

/** What a key asks for. */
export type Press = 'next' | 'back' | 'show' | 'play' | 'end'

const KEYS: Readonly<Record<string, Press>> = {
  PageDown: 'next',
  PageUp: 'back',
  s: 'show',
  S: 'show',
  ' ': 'play',
  Escape: 'end',
}

/** The same in words, for the list of keys at the wall. */
export const LESSON_KEYS: readonly KeyTold[] = [
  { key: keys.pageDown, says: says.pageDownDoes },
  { key: keys.pageUp, says: says.pageUpDoes },
  { key: 'S', says: says.sDoes },
  { key: keys.space, says: says.spaceDoes },
  { key: keys.escapeKey, says: says.escapeDoes },
]

interface Key {
  readonly key: string
  readonly ctrlKey: boolean
  readonly metaKey: boolean
  readonly altKey: boolean
  readonly target: unknown
}

/** Whether an element takes a key for itself: words that are typed take all, a button takes Space. */
function takes(target: unknown, key: string): boolean {
  if (!(typeof target === 'object' && target !== null && 'matches' in target)) return false
  const { matches } = target as Element
  const is = (what: string): boolean => matches.call(target, what)
  if (is('input[type="text"], input[type="number"], textarea, [contenteditable]')) return true
  if (is('select')) return key !== 'PageDown' && key !== 'PageUp'
  return key === ' ' && is('button, summary, input, a')
}

/** What a key asks of the lesson; null where it asks nothing. */
export const pressOf = ({ key, ctrlKey, metaKey, altKey, target }: Key): Press | null =>
  ctrlKey || metaKey || altKey || takes(target, key) ? null : (KEYS[key] ?? null)

interface Lesson {
  readonly task: string
  readonly ask?: { readonly asks: string; readonly answer: string }
  readonly asked: boolean
  readonly covered: boolean
  /** The first reading when it was asked, and now, in words. */
  readonly was: string
  readonly now: string
}

/** The sentence over the figures: the task, then what is asked, then what is right and what was read before. */
export function headline({ task, ask, asked, covered, was, now }: Lesson): string {
  if (!ask || !asked) return task
  if (covered) return ask.asks
  return was === '' || was === now ? ask.answer : says.answerAndWas(ask.answer, was)
}
