import { remove } from '../keeping/edits.ts'
import { ownerOf } from './model/chosen.ts'
import type { Dummy } from './model/dummy-model.ts'
import { keyDoes } from './model/keys.ts'
import { take } from './PartActions.tsx'

const acts = {
  remove(dummy: Dummy) {
    const design = dummy.bench.design.peek()
    const owner = ownerOf(design, dummy.chosen.peek())
    if (owner) take(dummy, remove(design, owner.id))
  },
  rename() {
    document.querySelector<HTMLInputElement>('.part-name')?.select()
  },
  keep(dummy: Dummy) {
    const { bench, pins } = dummy
    const keys = bench.fields.map(({ key }) => key)
    const kept = keys.every((key) => pins.peek().includes(key))
    for (const key of keys) dummy.pin(key, !kept)
  },
} as const

/** Follows the keys of the page. Returns what ends it. */
export function followKeys(dummy: Dummy): () => void {
  const onKey = (event: KeyboardEvent) => {
    if (event.defaultPrevented) return
    const does = keyDoes(event, event.target as Element | null, acts)
    if (!does) return
    event.preventDefault()
    does(dummy)
  }
  document.addEventListener('keydown', onKey)
  return () => document.removeEventListener('keydown', onKey)
}
