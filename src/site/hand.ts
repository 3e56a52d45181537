import type { ClientDirective } from 'astro'

/** What tells that somebody is there. */
const SIGNS = ['pointermove', 'pointerdown', 'keydown', 'focusin', 'wheel', 'scroll', 'hashchange'] as const

/** The share by which a figure's place may differ from its picture, which is shown larger or smaller by so much. */
const ALIKE = 0.12

/** What ends something that a hand did. */
const ENDS = ['pointerup', 'pointercancel', 'keyup', 'change', 'scroll', 'hashchange'] as const

function whenItRests(load: () => Promise<() => Promise<void>>): void {
  const wake = async () => {
    for (const end of ENDS) removeEventListener(end, wake, true)
    const hydrate = await load()
    await hydrate()
  }
  if (location.hash.includes('=')) void wake()
  else for (const end of ENDS) addEventListener(end, wake, { capture: true, passive: true })
}

/** Whether the page's pictures were drawn for a place of another size, or for words of another size, than this screen's. */
const mustDraw = (island: HTMLElement): boolean =>
  [...island.querySelectorAll<HTMLElement>('.stage')].some((stage) => {
    const { width = 0 } = stage.querySelector('svg')?.viewBox.baseVal ?? {}
    const word = stage.querySelector('svg text')
    const text = Number(word?.getAttribute('font-size') ?? 0)
    return (
      stage.clientWidth > 0 &&
      (Math.abs(stage.clientWidth - width) > ALIKE * width ||
        (text > 0 && Math.abs(Number.parseFloat(getComputedStyle(stage).fontSize) - text) > 1))
    )
  })

/**
 * `client:hand`: an island wakes at the first sign of a hand on the page, so that a page that is only looked at
 * loads next to no script. It wakes at once where it is needed at once: the address tells a state, fingers work
 * here (the first touch may be a drag), or the pictures must be drawn anew for this screen.
 */
const hand: ClientDirective = (load, options, island) => {
  // `rest`: what listens to the bench, and is not what the hand is on, comes after the first thing that it did.
  if (options.value === 'rest') return whenItRests(load)
  const wake = async (sign?: Event) => {
    // A browser tells of a pointer that stands still too, when the page moves beneath it.
    if (sign instanceof PointerEvent && sign.type === 'pointermove' && !sign.movementX && !sign.movementY)
      return
    for (const sign of SIGNS) removeEventListener(sign, wake, true)
    const hydrate = await load()
    await hydrate()
  }
  // `calm`: what may miss the first touch, and whose picture does at any size.
  const soon = options.value !== 'calm' && (matchMedia('(any-pointer: coarse)').matches || mustDraw(island))
  if (location.hash.includes('=') || soon) void wake()
  else for (const sign of SIGNS) addEventListener(sign, wake, { capture: true, passive: true })
}

// biome-ignore lint/style/noDefaultExport: Astro takes a directive from there
export default hand
