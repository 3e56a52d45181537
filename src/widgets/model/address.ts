import { effect } from '@preact/signals'
import * as says from '../../../content/words/beside.ts'
import { isLink, linkOf } from '../link/link.ts'
import type { Bench } from './bench-model.ts'
import { notLoaded } from './loading.ts'

/** Quiet for this long, and the address follows, ms. */
const QUIET = 300

/** The part of an address that brings a bench back as it is now; empty for its first state. */
export const linkTo = ({ state, start }: Bench): string => linkOf(state.value, start)

/** The address that brings the bench back as it is now. */
export function addressOf(bench: Bench): string {
  const { origin, pathname, search } = location
  const link = linkTo(bench)
  return `${origin}${pathname}${search}${link === '' ? '' : `#${link}`}`
}

/** HTML by which another page shows the bench as it is now, alone. */
export function frameOf(bench: Bench): string {
  const { origin, pathname } = location
  const link = linkTo(bench)
  const address = `${origin}${pathname}?alone${link === '' ? '' : `#${link}`}`
  const title = bench.design.peek().title.replace(/[&"<>]/g, (c) => `&#${c.charCodeAt(0)};`)
  return `<iframe src="${address.replaceAll('&', '&amp;')}" title="${title}" width="100%" height="640" style="border:0"></iframe>`
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
      bench.trouble.value = says.ownSizesStand(notLoaded(says.whatReadsLink, error))
    }
  }
  const onHash = () => void read(true)
  void read(false)
  // What the address tells is still to be read.
  let first = bench.state.peek() === bench.start
  const stop = effect(() => {
    void bench.state.value
    const busy = bench.playing.value || bench.held.value !== null
    clearTimeout(wait)
    if (first || busy) {
      first = false
      return
    }
    wait = setTimeout(() => {
      // A place of the page stays in the address until there is a state to tell.
      if (linkTo(bench) !== '' || isLink(location.hash))
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
