/** The browser’s clock, names and tabs, as store and session take them. */
import type { Clock } from './session.ts'
import type { Outside, Tabs, TabWord } from './store.ts'

const CHANNEL = 'hingebook.dummies'

function isTabWord(value: unknown): value is TabWord {
  if (typeof value !== 'object' || value === null) return false
  const { id, rev, tab } = value as Partial<Record<keyof TabWord, unknown>>
  return typeof id === 'string' && typeof rev === 'number' && typeof tab === 'string'
}

/** The other tabs of this site; null where the browser has no way to them. */
export function otherTabs(): Tabs | null {
  if (typeof BroadcastChannel === 'undefined') return null
  const channel = new BroadcastChannel(CHANNEL)
  return {
    say: (word) => channel.postMessage(word),
    hear(listen) {
      const hear = ({ data }: MessageEvent<unknown>): void => {
        if (isTabWord(data)) listen(data)
      }
      channel.addEventListener('message', hear)
      return () => channel.removeEventListener('message', hear)
    },
    close: () => channel.close(),
  }
}

/** A name of 96 random bits. */
function randomId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(12))
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('')
}

export const browserOutside = (): Outside => ({ now: () => Date.now(), id: randomId, tabs: otherTabs() })

export const browserClock: Clock = {
  now: () => Date.now(),
  later(ms, run) {
    const timer = setTimeout(run, ms)
    return () => clearTimeout(timer)
  },
}

/** Asks the browser not to clear what is kept when room grows short. It may ask the maker; false where it will not. */
export async function askToKeep(): Promise<boolean> {
  try {
    return (await navigator.storage?.persist?.()) ?? false
  } catch {
    return false
  }
}
