/**
 * A guess is a guess: whatever answers a chapter's question is covered until the reader has chosen or asked to
 * be shown. <html data-guess> says `covered` or `open`; without script it is not there, and nothing is covered.
 * The device remembers the choice of each chapter.
 */
import { KEY } from './key.ts'
import { squeezed } from './squeezed.ts'

/** Where the device remembers a chapter's guess: its place among the guesses from 0, or `shown`. */
export const guessKey = (slug: string): string => `${KEY}guess.${slug}`

/** Runs before the chapter is painted, so that no answer is seen first. */
export const coverGuess = (slug: string): string =>
  squeezed(`(() => {
  const root = document.documentElement
  root.dataset.guessKey = ${JSON.stringify(guessKey(slug))}
  let guess
  try { guess = localStorage.getItem(root.dataset.guessKey) } catch {}
  root.dataset.guess = guess ? 'open' : 'covered'
})()`)

/** Runs right behind the guesses: opens the one that was chosen, and listens. */
export const KEEP_GUESS = squeezed(`(() => {
  const root = document.documentElement
  const key = root.dataset.guessKey
  const guesses = [...document.querySelectorAll('[data-guesses] > .guess')]
  const keep = (value) => {
    try { localStorage.setItem(key, value) } catch {}
    if (root.dataset.guess === 'open') return
    root.dataset.guess = 'open'
    dispatchEvent(new Event('hingebook-guess'))
  }
  let guess
  try { guess = localStorage.getItem(key) } catch {}
  if (guesses[guess]) guesses[guess].open = true
  guesses.forEach((one, k) => one.addEventListener('toggle', () => one.open && keep(k)))
  document.addEventListener('click', ({ target }) => {
    const button = target.closest?.('[data-show-me]')
    if (!button) return
    const right = guesses.find((one) => one.classList.contains('right'))
    keep('shown')
    if (right && button.closest('[data-cell]')?.contains(right)) {
      right.open = true
      right.querySelector('summary').focus()
    }
  })
})()`)
