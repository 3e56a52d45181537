import type { ComponentChildren, JSX } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'
import * as says from '../../../content/words/step-book.ts'
import type { BookOptions, PerPage } from '../../booklet/book-pages.ts'
import type { Design } from '../../paper/index.ts'
import { paperForLocale } from '../../sheet/pages/paper-sizes.ts'
import { FILE_ENDING, fileName } from '../keeping/file-text.ts'
import { save } from '../template/save.ts'
import type { BookAnswer, BookAsk } from './book-worker.ts'

const PER_PAGE = [2, 4, 6] as const satisfies readonly PerPage[]

const PAPERS = [
  ['a4', says.a4],
  ['letter', says.usLetter],
] as const satisfies readonly (readonly [BookOptions['paper'], string])[]

/** The writer comes with it: started when a booklet is asked for. */
const start = (): Worker => new Worker(new URL('./book-worker.ts', import.meta.url), { type: 'module' })

interface BookFileProps {
  readonly design: Design
  /** What of it does not work yet, in a sentence; empty: nothing. */
  readonly fault: string
  readonly perPage: PerPage
  readonly onPerPage: (count: PerPage) => void
  /** What else can be done with all steps. */
  readonly children: ComponentChildren
}

/** All steps as a booklet: a file, or what the browser prints. */
export function BookFile({ design, fault, perPage, onPerPage, children }: BookFileProps): JSX.Element {
  const [paper, setPaper] = useState<BookOptions['paper']>('a4')
  const [said, setSaid] = useState('')
  const [isTrouble, setTrouble] = useState(false)
  const [busy, setBusy] = useState(false)
  const worker = useRef<Worker | null>(null)
  useEffect(() => {
    setPaper(paperForLocale(navigator.language))
    return () => worker.current?.terminate()
  }, [])
  const done = (sentence: string, isWrong = false) => {
    setBusy(false)
    setTrouble(isWrong)
    setSaid(sentence)
  }
  const make = () => {
    if (busy) return
    setBusy(true)
    setTrouble(false)
    setSaid(says.drawing)
    const options: BookOptions = { paper, perPage, fault }
    worker.current ??= start()
    worker.current.onmessage = ({ data }: MessageEvent<BookAnswer>) => {
      if (data.to === 'fault') return done(says.notMade(data.sentence), true)
      const name = `${fileName(design.title).slice(0, -FILE_ENDING.length)}-steps-${paper}.pdf`
      save([data.bytes], 'application/pdf', name)
      done(says.saved(name, data.pages))
    }
    worker.current.onerror = () => {
      worker.current?.terminate()
      worker.current = null
      done(says.notLoaded, true)
    }
    worker.current.postMessage({ design, options } satisfies BookAsk)
  }
  return (
    <div class="book-ways">
      <button type="button" class="button" aria-disabled={busy} onClick={make}>
        {says.bookletAsPdf}
      </button>
      {children}
      <label>
        <select
          value={String(perPage)}
          onChange={({ currentTarget }) =>
            onPerPage(PER_PAGE.find((n) => String(n) === currentTarget.value) ?? perPage)
          }
        >
          {PER_PAGE.map((n) => (
            <option key={n} value={String(n)}>
              {n}
            </option>
          ))}
        </select>{' '}
        {says.toAPage}
      </label>
      <label>
        {says.paper}{' '}
        <select
          value={paper}
          onChange={({ currentTarget }) =>
            setPaper(PAPERS.find(([name]) => name === currentTarget.value)?.[0] ?? paper)
          }
        >
          {PAPERS.map(([name, label]) => (
            <option key={name} value={name}>
              {label}
            </option>
          ))}
        </select>
      </label>
      <p class={isTrouble ? 'trouble' : 'quiet'} role="status">
        {said}
      </p>
    </div>
  )
}
