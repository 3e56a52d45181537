import { effect } from '@preact/signals'
import { isLink } from '../link/link.ts'
import type { Bench } from './bench-model.ts'
import { notLoaded } from './loading.ts'

/** Quiet for this long, and the address follows, ms. */
const QUIET = 300

/** The address that brings the bench back as it is now. */
export function addressOf(bench: Bench): string {
  const { origin, pathname, search } = location
  const link = bench.link.peek()
  return `${origin}${pathname}${search}${link === '' ? '' : `#${link}`}`
}

/**
 * Opens what the address says, follows it when the reader changes it, and keeps it up to date while the
 * reader works. Returns what ends it.
 */
export function followAddress(bench: Bench): () => void {
  let wait: ReturnType<typeof setTimeout> | undefined
  let left = false
  const read = async (undoable: boolean) => {
    const link = location.hash
    if (!isLink(link)) return
    try {
      const { readLink } = await import('../link/read-link.ts')
      if (!left) bench.open(readLink(link, bench.start), undoable)
    } catch (error) {
      bench.trouble.value = `${notLoaded('What reads the link', error)} The page’s own sizes stand.`
    }
  }
  const onHash = () => void read(true)
  void read(false)
  let first = true
  const stop = effect(() => {
    bench.link.value
    const busy = bench.playing.value || bench.held.value !== null
    clearTimeout(wait)
    if (first || busy) {
      first = false
      return
    }
    wait = setTimeout(() => {
      // A place of the page stays in the address until there is a state to tell.
      if (bench.link.peek() !== '' || isLink(location.hash))
        history.replaceState(history.state, '', addressOf(bench))
    }, QUIET)
  })
  addEventListener('hashchange', onHash)
  return () => {
    left = true
    clearTimeout(wait)
    stop()
    removeEventListener('hashchange', onHash)
  }
}
