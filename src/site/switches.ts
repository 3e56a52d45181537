import * as says from '../../content/words/site/frame.ts'
import { KEY } from './key.ts'
import { squeezed } from './squeezed.ts'

/**
 * The three switches at the top of every page. Each is an attribute of <html> that the styles read
 * (data-projector="on"), remembered on this device under its own name.
 */
export interface Switch {
  readonly name: 'projector' | 'reading' | 'theme'
  readonly label: string
  /** One sentence: what it does. */
  readonly says: string
}

export const SWITCHES: readonly Switch[] = [
  {
    name: 'projector',
    label: says.projector,
    says: says.projectorDoes,
  },
  {
    name: 'reading',
    label: says.reading,
    says: says.readingDoes,
  },
  { name: 'theme', label: says.night, says: says.nightDoes },
]

/**
 * Runs in <head> before anything is painted, so the page never shows the wrong look first.
 * Storage may be forbidden; then the page looks as the device asks.
 */
export const BEFORE_PAINT = squeezed(`(() => {
  const root = document.documentElement
  root.dataset.awake = ''
  try {
    for (const name of ${JSON.stringify(SWITCHES.map(({ name }) => name))}) {
      const value = localStorage.getItem('${KEY}' + name)
      if (value) root.dataset[name] = value
    }
  } catch {}
  if (location.search === '?notes') root.dataset.notes = delete root.dataset.projector
  if (location.search === '?alone') root.dataset.alone = delete root.dataset.projector
})()`)

/** Runs right behind the buttons: shows which are pressed, and listens. */
export const AT_SWITCHES = squeezed(`(() => {
  const root = document.documentElement
  const dark = matchMedia('(prefers-color-scheme: dark)')
  const night = () => (root.dataset.theme ?? (dark.matches ? 'night' : 'day')) === 'night'
  const pressed = (name) => (name === 'theme' ? night() : root.dataset[name] === 'on')
  const buttons = document.querySelectorAll('[data-switch]')
  const show = () => {
    for (const button of buttons) button.setAttribute('aria-pressed', pressed(button.dataset.switch))
  }
  const press = (name) => {
    const value = name === 'theme' ? (night() ? 'day' : 'night') : pressed(name) ? '' : 'on'
    if (value) root.dataset[name] = value
    else delete root.dataset[name]
    try {
      if (value) localStorage.setItem('${KEY}' + name, value)
      else localStorage.removeItem('${KEY}' + name)
    } catch {}
    show()
    dispatchEvent(new Event('resize'))
  }
  for (const button of buttons) button.addEventListener('click', () => press(button.dataset.switch))
  dark.addEventListener('change', show)
  show()
})()`)
