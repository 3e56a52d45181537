import './wall.css'
import type { JSX } from 'preact'
import { render } from 'preact'
import { useEffect, useRef } from 'preact/hooks'
import * as says from '../../../content/words/wall-notes.ts'

/** What a teacher reads while the class looks at the wall. */
export interface Told {
  readonly title: string
  readonly says: readonly string[]
  /** What comes after it. */
  readonly next: string
}

const Page = ({ title, says: sentences, next }: Told): JSX.Element => (
  <main class="wall-notes">
    <h1>{title}</h1>
    {sentences.map((one) => (
      <p key={one}>{one}</p>
    ))}
    <p class="wall-after">{says.nextIs(next)}</p>
  </main>
)

/** The empty window gets the looks of this page. It asks no host for anything. */
function dressed({ document: there }: Window): Element {
  const root = document.documentElement
  there.documentElement.lang = root.lang
  const { theme } = root.dataset
  if (theme) there.documentElement.dataset.theme = theme
  there.title = says.notesForTeacher
  for (const look of document.querySelectorAll('link[rel="stylesheet"], style'))
    there.head.append(look.cloneNode(true))
  const place = there.createElement('div')
  there.body.replaceChildren(place)
  return place
}

/** A second window for the teacher alone that follows what is on the wall. Returns what opens it. */
export function useNotes(told: Told): () => void {
  const there = useRef<{ readonly opened: Window; readonly place: Element } | null>(null)
  const show = () => {
    const { opened, place } = there.current ?? {}
    if (opened && place && !opened.closed) render(<Page {...told} />, place)
  }
  useEffect(show)
  return () => {
    if (!there.current || there.current.opened.closed) {
      const opened = open('', 'hingebook-told', 'popup,width=720,height=860')
      if (!opened) return
      there.current = { opened, place: dressed(opened) }
    }
    there.current.opened.focus()
    show()
  }
}
