import * as says from '../../../../content/words/dummy/keys.ts'
import type { Dummy } from './dummy-model.ts'

/** The keys of the page, in the order in which they are listed. */
export const KEYS: readonly { readonly keys: string; readonly does: string }[] = [
  { keys: says.tabKey, does: says.tabDoes },
  { keys: says.arrowKeys, does: says.arrowsDo },
  { keys: says.enterKey, does: says.enterDoes },
  { keys: says.escapeKey, does: says.escapeDoes },
  { keys: says.undoRedoKeys, does: says.undoRedoDo },
  { keys: says.deleteKey, does: says.deleteDoes },
  { keys: 'F2', does: says.renameDoes },
  { keys: 'K', does: says.keepDoes },
  { keys: 'H', does: says.hideDoes },
  { keys: 'L', does: says.lockDoes },
  { keys: 'M', does: says.mendDoes },
  { keys: 'W', does: says.wishDoes },
  { keys: says.spaceKey, does: says.spaceDoes },
  { keys: '?', does: says.keysDo },
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
    if (key === 'z') return ({ undo, redo }) => (event.shiftKey ? redo() : undo())
    return key === 'y' ? ({ redo }) => redo() : null
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
