import type { ClientDirective } from 'astro'
import { SPARE } from '../widgets/model/spare-sign.ts'

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

/** Whether an island is still as the server made it. */
const sleeps = (island: HTMLElement): boolean => island.hasAttribute('ssr')

/** What tells that a hand comes to an island. */
const NEAR = ['pointerover', 'pointerdown', 'focusin'] as const

/** An island within a bench wakes when the bench has time for it, or when the hand comes to it. */
function whenSpare(load: () => Promise<() => Promise<void>>, island: HTMLElement): void {
  let asked = false
  let missed: HTMLElement | null = null
  const typed = new Map<HTMLInputElement, string>()
  const wake = async () => {
    if (asked || !sleeps(island)) return
    asked = true
    await (await load())()
    // What did not come is asked for again at the next sign.
    asked = false
  }
  for (const sign of NEAR) island.addEventListener(sign, wake)
  island.closest('.bench')?.addEventListener(SPARE, wake)
  addEventListener('hashchange', wake)
  // No press is lost, and nothing typed: what was done while it slept is done once it is awake.
  island.addEventListener('click', ({ target }) => {
    if (sleeps(island) && target instanceof Element) missed = target.closest('button')
  })
  island.addEventListener('input', ({ target }) => {
    if (sleeps(island) && target instanceof HTMLInputElement) typed.set(target, target.value)
  })
  const makeUp = () => {
    missed?.click()
    for (const [input, value] of typed) {
      input.value = value
      input.dispatchEvent(new Event('input', { bubbles: true }))
    }
  }
  island.addEventListener('astro:hydrate', () => requestAnimationFrame(() => setTimeout(makeUp)))
}

/** An island wakes when it is seen; one within another, once that is awake. */
function whenSeen(load: () => Promise<() => Promise<void>>, island: HTMLElement): void {
  const watch = new IntersectionObserver(async ([entry]) => {
    if (!entry?.isIntersecting) return
    await (await load())()
    // What did not come is asked for again when it is seen again.
    if (!sleeps(island)) watch.disconnect()
  })
  const look = () => {
    if (island.firstElementChild) watch.observe(island.firstElementChild)
  }
  const around = island.parentElement?.closest('astro-island[ssr]')
  if (around) around.addEventListener('astro:hydrate', look, { once: true })
  else look()
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
 * loads next to no script. It wakes at once where the address tells a state; and as soon as the page has come where
 * fingers work (the first touch may be a drag), or the pictures must be drawn anew for this screen.
 */
const hand: ClientDirective = (load, options, island) => {
  // `rest`: what listens to the bench, and is not what the hand is on, comes after the first thing that it did.
  if (options.value === 'rest') return whenItRests(load)
  if (options.value === 'spare') return whenSpare(load, island)
  if (options.value === 'seen') return whenSeen(load, island)
  let asked = false
  const wake = async (sign?: Event) => {
    if (asked) return
    // A browser tells of a pointer that stands still too, when the page moves beneath it.
    if (sign instanceof PointerEvent && sign.type === 'pointermove' && !sign.movementX && !sign.movementY)
      return
    asked = true
    for (const sign of SIGNS) removeEventListener(sign, wake, true)
    const hydrate = await load()
    await hydrate()
  }
  if (location.hash.includes('=')) {
    void wake()
    return
  }
  for (const sign of SIGNS) addEventListener(sign, wake, { capture: true, passive: true })
  // `calm`: what may miss the first touch, and whose picture does at any size.
  if (options.value === 'calm') return
  const soon = () => {
    if (matchMedia('(any-pointer: coarse)').matches || mustDraw(island)) void wake()
  }
  // The page is read before it is touched: it is painted first.
  const painted = () => requestAnimationFrame(() => setTimeout(soon))
  if (document.readyState === 'complete') painted()
  else addEventListener('load', painted, { once: true })
}

// biome-ignore lint/style/noDefaultExport: Astro takes a directive from there
export default hand
