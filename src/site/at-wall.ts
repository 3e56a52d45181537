/** A clicker's keys on a projector, and the tools, for pages that have no lesson of their own. */
import * as says from '../../content/words/site/wall-way.ts'
import { notLoaded } from '../widgets/model/loading.ts'
import { endProjector, isExplained } from '../widgets/projector/ending.ts'
import type { WallWay } from './wall-way.ts'
import { keysOf, scrolledTo } from './wall-way.ts'

const root = document.documentElement
const place = document.querySelector<HTMLElement>('.wall-way')
const way = JSON.parse(place?.dataset.way ?? '') as WallWay

const isOn = (): boolean => root.dataset.projector === 'on'

const go = (by: 1 | -1): void => {
  const stops = [...document.querySelectorAll<HTMLElement>(way.stops)].filter((stop) =>
    stop.checkVisibility(),
  )
  const top = document.querySelector<HTMLElement>('.top')
  const above = top && getComputedStyle(top).position === 'sticky' ? top.offsetHeight : 0
  const tops = stops.map((stop) => stop.getBoundingClientRect().top + scrollY - above)
  scrollTo({ top: scrolledTo(tops, scrollY, innerHeight - above, by) })
}

const playButton = (): HTMLButtonElement | null =>
  way.plays === undefined ? null : document.querySelector<HTMLButtonElement>(way.plays)

/** Stops what plays: its button then says so. */
const rest = (): void => {
  const button = playButton()
  if (button?.dataset.plays === 'true') button.click()
}

const openTools = async (from: HTMLElement): Promise<void> => {
  const said = place?.querySelector('[role="alert"]')
  try {
    const { openWall } = await import('../widgets/wall/mount.tsx')
    openWall(from, { keys: keysOf(way), ...(way.plays === undefined ? {} : { rest }) })
    if (said) said.textContent = ''
  } catch (error) {
    if (said) said.textContent = notLoaded(says.theTools, error)
  }
}

place?.addEventListener('click', ({ target }) => {
  const button = target instanceof Element ? target.closest<HTMLElement>('[data-go]') : null
  if (button?.dataset.go === 'tools') void openTools(button)
  else if (button) go(button.dataset.go === 'next' ? 1 : -1)
})

/** What takes keys for itself: words that are typed take all, what is pressed takes Space. */
const takes = (target: EventTarget | null, key: string): boolean =>
  target instanceof Element &&
  (target.matches('input[type="text"], input[type="search"], textarea, [contenteditable]')
    ? true
    : key === ' ' && target.matches('button, summary, input, select, a'))

const press = (key: string): (() => void) | null => {
  if (key === 'PageDown') return () => go(1)
  if (key === 'PageUp') return () => go(-1)
  if (key === 'Escape') return endProjector
  return key === ' ' && way.plays !== undefined ? () => playButton()?.click() : null
}

document.addEventListener(
  'keydown',
  (event) => {
    const { key, ctrlKey, metaKey, altKey, target } = event
    if (!isOn() || ctrlKey || metaKey || altKey || takes(target, key)) return
    const does = document.querySelector('dialog[open]') ? null : press(key)
    if (key === 'Escape' && isExplained(target)) return
    if (!does) return
    // A slider that has the focus would take a clicker's keys for itself.
    event.preventDefault()
    event.stopPropagation()
    does()
  },
  { capture: true },
)
