import type { Dummy } from './dummy-model.ts'

/** The keys of the page, in the order in which they are listed. */
export const KEYS: readonly { readonly keys: string; readonly does: string }[] = [
  { keys: 'Tab', does: 'goes through name, undo, list, slip, card, opening and sizes' },
  {
    keys: 'Arrows',
    does: 'walk the list; on a handle or slider they move 1, with Shift 10, with Alt a tenth',
  },
  { keys: 'Enter', does: 'takes up the fold, face or part in the list' },
  { keys: 'Escape', does: 'puts the slip away' },
  { keys: 'Ctrl + Z, Ctrl + Y', does: 'undo, redo' },
  { keys: 'Delete', does: 'removes the part that is taken up, and what sits on it' },
  { keys: 'F2', does: 'goes to its name' },
  { keys: 'K', does: 'keeps all its sizes when the card is mended, or lets go of them' },
  { keys: 'H', does: 'hides the part that is taken up, or shows it again' },
  { keys: 'L', does: 'locks it, or unlocks it' },
  { keys: 'M', does: 'shows what is to mend' },
  { keys: 'W', does: 'makes a wish' },
  { keys: 'Space', does: 'opens and shuts the card' },
  { keys: '?', does: 'shows these keys' },
]

const isTyping = (target: Element | null): boolean =>
  target?.matches('input:not([type="range"]), textarea, select, [contenteditable]') ?? false

const isPressed = (target: Element | null): boolean =>
  target?.matches('button, a, summary, [role="treeitem"], input') ?? false

type Does = (dummy: Dummy) => void

const toggled =
  (name: 'mend' | 'wish' | 'keys'): Does =>
  ({ slip }) => {
    slip.value = slip.peek() === name ? null : name
  }

/** What a key does on this page; null: nothing. Keys of fields and buttons are their own. */
export function keyDoes(
  event: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey'>,
  target: Element | null,
  acts: Readonly<Record<'remove' | 'rename' | 'keep' | 'hide' | 'lock' | 'putAway', Does>>,
): Does | null {
  if (isTyping(target)) return null
  const key = event.key.length === 1 ? event.key.toLowerCase() : event.key
  if (event.ctrlKey || event.metaKey) {
    if (event.altKey) return null
    if (key === 'z') return ({ bench }) => (event.shiftKey ? bench.redo() : bench.undo())
    return key === 'y' ? ({ bench }) => bench.redo() : null
  }
  if (event.altKey) return null
  switch (key) {
    case 'Delete':
    case 'Backspace':
      return acts.remove
    case 'Escape':
      return acts.putAway
    case 'F2':
      return acts.rename
    case 'k':
      return acts.keep
    case 'h':
      return acts.hide
    case 'l':
      return acts.lock
    case 'm':
      return toggled('mend')
    case 'w':
      return toggled('wish')
    case '?':
      return toggled('keys')
    case ' ':
      return isPressed(target) ? null : ({ bench }) => (bench.playing.peek() ? bench.pause() : bench.play())
    default:
      return null
  }
}
