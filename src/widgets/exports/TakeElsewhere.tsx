import './elsewhere.css'
import type { JSX } from 'preact'
import { useState } from 'preact/hooks'
import * as says from '../../../content/words/exports/elsewhere.ts'
import { FILE_ENDING, fileName } from '../keeping/file-text.ts'
import { reasonOf } from '../model/loading.ts'
import type { Taken } from './exports.ts'

type Ways = typeof import('./exports.ts')

interface Way {
  readonly label: string
  /** What it is good for; also said to those who hear the button. */
  readonly says: string
  run(ways: Ways, taken: Taken, tell: (sentence: string) => void): Promise<string>
}

const flipBook = (paper: keyof typeof says.papers): Way => ({
  label: says.papers[paper],
  says: says.flipBookOn(says.papers[paper]),
  run: (ways, taken, tell) => ways.saveFlipBook(taken, paper, tell),
})

/** Grouped as a maker would ask for them. */
const GROUPS: readonly { readonly name: string; readonly ways: readonly Way[] }[] = [
  {
    name: says.picture,
    ways: [
      { label: 'SVG', says: says.pictureSvg, run: (ways, taken) => ways.saveSvg(taken) },
      { label: 'PNG', says: says.picturePng, run: (ways, taken) => ways.savePng(taken) },
    ],
  },
  {
    name: says.moving,
    ways: [{ label: 'GIF', says: says.movingGif, run: (ways, taken, tell) => ways.saveGif(taken, tell) }],
  },
  { name: says.flipBook, ways: [flipBook('a4'), flipBook('letter')] },
  {
    name: says.model,
    ways: [
      {
        label: 'glTF',
        says: says.modelGltf,
        run: (ways, taken) => ways.saveGlb(taken),
      },
    ],
  },
]

/** The dummy as it stands, taken out of this page as a file of another kind. Each is loaded when it is asked for. */
export function TakeElsewhere({ now }: { readonly now: () => Omit<Taken, 'stem'> }): JSX.Element {
  const [said, setSaid] = useState('')
  const [busy, setBusy] = useState(false)
  const press = async (way: Way) => {
    if (busy) return
    setBusy(true)
    setSaid(says.drawing)
    try {
      const taken = now()
      const stem = fileName(taken.design.title).slice(0, -FILE_ENDING.length)
      setSaid(await way.run(await import('./exports.ts'), { ...taken, stem }, setSaid))
    } catch (error) {
      setSaid(says.notMade(reasonOf(error)))
    }
    setBusy(false)
  }
  return (
    <details open>
      <summary>{says.summary}</summary>
      <dl class="elsewhere">
        {GROUPS.map(({ name, ways }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>
              {ways.map((way) => (
                <button
                  key={way.label}
                  type="button"
                  class="button"
                  aria-label={way.says}
                  aria-disabled={busy}
                  onClick={() => void press(way)}
                >
                  {way.label}
                </button>
              ))}
            </dd>
          </div>
        ))}
      </dl>
      <p class="slip-says" role="status">
        {said}
      </p>
    </details>
  )
}
