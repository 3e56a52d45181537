import type { Bench } from '../model/bench-model.ts'

/**
 * Undo and redo by the usual keys, unless the keys belong to a field that is being typed in; of a second bench of a
 * page, only where the keys are within it. Returns what ends it.
 */
export function undoByKeys(bench: Bench, within: Element | null): () => void {
  const onKey = (event: KeyboardEvent) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return
    const target = event.target as Element | null
    if (within && !within.contains(target)) return
    if (target?.matches('input[type="text"], textarea, [contenteditable]')) return
    const key = event.key.toLowerCase()
    if (key !== 'z' && key !== 'y') return
    event.preventDefault()
    if (key === 'y' || event.shiftKey) bench.redo()
    else bench.undo()
  }
  document.addEventListener('keydown', onKey)
  return () => document.removeEventListener('keydown', onKey)
}
