import { remove } from '../keeping/edits.ts'
import { offeredBy } from '../model/offered.ts'
import { ownerOf } from './model/chosen.ts'
import type { Dummy } from './model/dummy-model.ts'
import { keyDoes } from './model/keys.ts'
import { take } from './PartActions.tsx'
import { putAway } from './slips/put-away.ts'

/** Hides or locks the part that is taken up, or brings it back. */
function flip(dummy: Dummy, list: 'hidden' | 'locked'): void {
  const owner = ownerOf(dummy.bench.design.peek(), dummy.chosen.peek())
  if (owner) dummy.set(list, owner.id, !dummy.aside.peek()[list].includes(owner.id))
}

const acts = {
  putAway,
  remove(dummy: Dummy) {
    const design = dummy.bench.design.peek()
    const owner = ownerOf(design, dummy.chosen.peek())
    if (owner) take(dummy, remove(design, owner.id))
  },
  hide: (dummy: Dummy) => flip(dummy, 'hidden'),
  lock: (dummy: Dummy) => flip(dummy, 'locked'),
  rename() {
    document.querySelector<HTMLInputElement>('.part-name')?.select()
  },
  keep(dummy: Dummy) {
    const { bench, pins } = dummy
    const keys = offeredBy(bench).fields.map(({ key }) => key)
    const kept = keys.every((key) => pins.peek().includes(key))
    dummy.pin(keys, !kept)
  },
} as const

/** Follows the keys of the page. Returns what ends it. */
export function followKeys(dummy: Dummy): () => void {
  const onKey = (event: KeyboardEvent) => {
    // What lies over the page has the keys.
    if (event.defaultPrevented || document.querySelector('dialog[open], :popover-open')) return
    const does = keyDoes(event, event.target as Element | null, acts)
    if (!does) return
    event.preventDefault()
    does(dummy)
  }
  document.addEventListener('keydown', onKey)
  return () => document.removeEventListener('keydown', onKey)
}
