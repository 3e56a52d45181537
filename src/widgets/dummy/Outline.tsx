import type { JSX } from 'preact'
import { useRef } from 'preact/hooks'
import * as pageSays from '../../../content/words/dummy/page.ts'
import * as says from '../../../content/words/dummy/places.ts'
import { modelOf } from '../../paper/index.ts'
import { sameThing } from './model/chosen.ts'
import type { Dummy } from './model/dummy-model.ts'
import { rowsOf } from './model/rows.ts'

/** The card as a tree of words: walked with the arrow keys, and a way to everything without pointing. */
export function Outline({ dummy }: { readonly dummy: Dummy }): JSX.Element {
  const { bench, chosen } = dummy
  const design = bench.design.value
  const tree = useRef<HTMLDivElement>(null)
  const rows = rowsOf(design, modelOf(design), chosen.value, dummy.aside.value)
  const at = Math.max(
    0,
    rows.findIndex(({ thing }) => sameThing(thing, chosen.value)),
  )
  const failing = new Set(
    (bench.checks.value ?? [])
      .filter(({ ok }) => !ok)
      .flatMap(({ ids }) => ids.map((id) => id.split('/')[0])),
  )
  const walk = (event: KeyboardEvent, k: number) => {
    const to = { ArrowDown: k + 1, ArrowUp: k - 1, Home: 0, End: rows.length - 1 }[event.key]
    if (to === undefined) return
    event.preventDefault()
    tree.current
      ?.querySelectorAll<HTMLElement>('[role="treeitem"]')
      [Math.min(rows.length - 1, Math.max(0, to))]?.focus()
  }
  return (
    <div class="outline" role="tree" aria-label={pageSays.onThisCard} ref={tree}>
      {rows.map(({ thing, level, label, note, aside }, k) => {
        const taken = sameThing(thing, chosen.value)
        const fails = thing.what === 'part' && failing.has(thing.name)
        const said = says.notes([fails ? says.toMend : note, aside].filter((words) => words !== ''))
        return (
          <div
            key={`${thing.what} ${thing.name}`}
            role="treeitem"
            tabIndex={k === at ? 0 : -1}
            aria-level={level}
            aria-selected={taken}
            data-what={thing.what}
            data-fails={fails}
            style={`--level:${level - 1}`}
            onClick={() => dummy.choose(taken ? null : thing)}
            onKeyDown={(event) => {
              if (event.key === 'Enter' || event.key === ' ') {
                event.preventDefault()
                dummy.choose(thing)
              } else walk(event, k)
            }}
          >
            <strong>{label}</strong>
            {said ? <span class="outline-note"> {said}</span> : null}
          </div>
        )
      })}
    </div>
  )
}
