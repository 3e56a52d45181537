import { effect } from '@preact/signals'
import type { ComponentType, JSX } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import type { Bench } from '../model/bench-model.ts'
import { notLoaded } from '../model/loading.ts'
import type { PhraseMove } from '../model/moved.ts'
import { movedOn } from '../model/moved.ts'
import { benchOf } from '../model/page.ts'

interface PhraseStripProps {
  readonly slug: string
}

type Strip = ComponentType<{ readonly slug: string; readonly bench: Bench; readonly onClose: () => void }>

const PHRASE = 'button[data-phrase]'

const phraseOf = (target: EventTarget | null): HTMLButtonElement | null =>
  target instanceof Element ? target.closest<HTMLButtonElement>(PHRASE) : null

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
      made.textContent = 'put it back'
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

/**
 * The phrases of a chapter that move its card. The phrases stand in the page as plain buttons; this listens to
 * all of them, and brings a small standing card to the top of the screen when the bench is out of sight.
 */
export function PhraseStrip({ slug }: PhraseStripProps): JSX.Element | null {
  const [shown, setShown] = useState<{ readonly it: Strip; readonly bench: Bench } | null>(null)
  const bench = benchOf(slug).value
  useEffect(() => {
    if (!bench) return undefined
    let left = false
    const bring = async () => {
      if (benchInView()) return setShown(null)
      const { Strip } = await import('./Strip.tsx').catch(() => ({ Strip: null }))
      // Without the strip there is still the bench: one is taken to it.
      if (!Strip) document.querySelector('.bench-grid')?.scrollIntoView()
      else if (!left) setShown({ it: Strip, bench })
    }
    const press = async (how: (pressing: typeof import('./pressing.ts')) => void) => {
      try {
        how(await import('./pressing.ts'))
      } catch (error) {
        bench.trouble.value = notLoaded('What moves the card', error)
      }
      void bring()
    }
    const onClick = (event: MouseEvent) => {
      const button = phraseOf(event.target)
      const { phrase, place } = button?.dataset ?? {}
      if (!button || phrase === undefined || place === undefined) return
      void press(({ pressPhrase, putBack }) => {
        if (movedOn(slug).peek()?.phrase === place) putBack(bench, slug)
        else pressPhrase(bench, slug, place, JSON.parse(phrase) as PhraseMove)
      })
    }
    const onScroll = () => {
      if (benchInView()) setShown(null)
    }
    const stop = effect(() =>
      showPressed(
        movedOn(slug).value?.phrase ?? null,
        () => void press(({ putBack }) => putBack(bench, slug)),
      ),
    )
    document.addEventListener('click', onClick)
    addEventListener('scroll', onScroll, { passive: true })
    return () => {
      left = true
      stop()
      document.removeEventListener('click', onClick)
      removeEventListener('scroll', onScroll)
    }
  }, [bench, slug])
  return shown ? <shown.it slug={slug} bench={shown.bench} onClose={() => setShown(null)} /> : null
}
