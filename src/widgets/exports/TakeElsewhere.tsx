import './elsewhere.css'
import type { JSX } from 'preact'
import { useState } from 'preact/hooks'
import type { PaperName } from '../../sheet/index.ts'
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

const flipBook = (paper: PaperName, label: string): Way => ({
  label,
  says: `Flip book to print on ${label} paper`,
  run: (ways, taken, tell) => ways.saveFlipBook(taken, paper, tell),
})

/** Grouped as a maker would ask for them. */
const GROUPS: readonly { readonly name: string; readonly ways: readonly Way[] }[] = [
  {
    name: 'Picture',
    ways: [
      { label: 'SVG', says: 'Picture as SVG, to edit', run: (ways, taken) => ways.saveSvg(taken) },
      { label: 'PNG', says: 'Picture as PNG, to show', run: (ways, taken) => ways.savePng(taken) },
    ],
  },
  {
    name: 'Moving picture',
    ways: [
      { label: 'GIF', says: 'Moving picture as GIF', run: (ways, taken, tell) => ways.saveGif(taken, tell) },
    ],
  },
  { name: 'Flip book to print', ways: [flipBook('a4', 'A4'), flipBook('letter', 'US Letter')] },
  {
    name: 'Model in 3D',
    ways: [
      {
        label: 'glTF',
        says: 'Model in 3D as glTF, opening and shutting',
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
    setSaid('Drawing …')
    try {
      const taken = now()
      const stem = fileName(taken.design.title).slice(0, -FILE_ENDING.length)
      setSaid(await way.run(await import('./exports.ts'), { ...taken, stem }, setSaid))
    } catch (error) {
      setSaid(`This could not be made: ${reasonOf(error)}. Try again.`)
    }
    setBusy(false)
  }
  return (
    <details open>
      <summary>As a picture, a flip book, a model</summary>
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
