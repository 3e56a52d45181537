/** Loaded when the first phrase is pressed. */

import { effect } from '@preact/signals'
import { render } from 'preact'
import * as says from '../../../content/words/phrase.ts'
import type { Bench } from '../model/bench-model.ts'
import type { PhraseMove } from '../model/moved.ts'
import { movedOn } from '../model/moved.ts'
import { pressPhrase, putBack } from './pressing.ts'

const PHRASE = 'button[data-phrase]'

/** Shows which phrase is pressed, with what takes it back right behind it. */
function showPressed(pressed: string | null, onBack: (phrase: HTMLButtonElement) => void): void {
  for (const button of document.querySelectorAll<HTMLButtonElement>(PHRASE)) {
    const is = button.dataset.place === pressed
    button.setAttribute('aria-pressed', String(is))
    const next = button.nextElementSibling
    const back = next instanceof HTMLButtonElement && next.matches('.put-back') ? next : null
    if (is && !back) {
      const made = document.createElement('button')
      made.type = 'button'
      made.className = 'put-back'
      made.textContent = says.putItBack
      made.addEventListener('click', () => onBack(button))
      button.after(made)
    } else if (!is && back) {
      // The button goes with what it takes back: the focus stays in the sentence.
      if (document.activeElement === back) button.focus()
      back.remove()
    }
  }
}

/** Whether the standing card of the bench is on the screen, as far as can be seen of it at all. */
function benchInView(): boolean {
  const card = document.querySelector('.bench-grid .bench-figure')?.getBoundingClientRect()
  if (!card) return true
  const seen = Math.min(card.bottom, innerHeight) - Math.max(card.top, 0)
  return seen > 0.6 * card.height
}

type Press = (phrase: HTMLButtonElement) => void

/**
 * Follows the phrases of a chapter that move its card, plain buttons of the page: shows which is pressed, and brings
 * a small standing card to the top of the screen when the bench is out of sight.
 */
function follow(bench: Bench, slug: string): Press {
  const strip = document.querySelector('.phrase-place')
  const close = () => strip && render(null, strip)
  const bring = async () => {
    if (benchInView()) return close()
    const { Strip } = await import('./Strip.tsx').catch(() => ({ Strip: null }))
    // Without the strip there is still the bench: one is taken to it.
    if (strip && Strip) render(<Strip slug={slug} bench={bench} onClose={close} />, strip)
    else document.querySelector('.bench-grid')?.scrollIntoView()
  }
  const moved = movedOn(slug)
  const back = () => {
    putBack(bench, slug)
    void bring()
  }
  effect(() => showPressed(moved.value?.phrase ?? null, back))
  addEventListener('scroll', () => benchInView() && close(), { passive: true })
  return ({ dataset: { phrase, place } }) => {
    if (phrase === undefined || place === undefined) return
    if (moved.peek()?.phrase === place) putBack(bench, slug)
    else pressPhrase(bench, slug, place, JSON.parse(phrase) as PhraseMove)
    void bring()
  }
}

const followed = new WeakMap<Bench, Press>()

/** Does what a phrase of the page says to the page's bench; the same phrase again takes it back. */
export function press(bench: Bench, slug: string, phrase: HTMLButtonElement): void {
  const now = followed.get(bench) ?? follow(bench, slug)
  followed.set(bench, now)
  now(phrase)
}
