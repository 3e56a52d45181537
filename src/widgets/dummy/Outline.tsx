import type { JSX } from 'preact'
import { useRef } from 'preact/hooks'
import type { Design, Model } from '../../paper/index.ts'
import { kindOf, modelOf, nameOf } from '../../paper/index.ts'
import { large } from '../state/format.ts'
import type { Chosen } from './chosen.ts'
import { calledHere, ownerOf, placesOf, sameThing } from './chosen.ts'
import type { Dummy } from './dummy-model.ts'

/** One line of the outline. */
export interface Row {
  readonly thing: Chosen
  readonly level: number
  readonly label: string
  readonly note: string
}

const partOf = (design: Design, id: string): string => {
  const m = design.mechanisms.find((one) => one.id === id)
  return m ? kindOf(m).label : ''
}

/** How many mechanisms stand on a crease or panel. */
const guestsOn = (design: Design, name: string): readonly string[] =>
  design.mechanisms.filter(({ on }) => on === name).map(({ id }) => id)

/**
 * The lines of the outline, in order: pages and gutter, on each fold what stands on it. The folds and faces of the
 * part that is taken up are listed under it; of the others those alone that carry something do not show.
 */
export function rowsOf(design: Design, model: Model, chosen: Chosen | null): readonly Row[] {
  const open = ownerOf(design, chosen)?.id
  const rows: Row[] = []
  const parts = (on: string, level: number) => {
    for (const id of guestsOn(design, on)) part(id, level)
  }
  const part = (id: string, level: number) => {
    rows.push({ thing: { what: 'part', name: id }, level, label: large(nameOf(id)), note: partOf(design, id) })
    const places = placesOf(model, id)
    for (const [k, place] of places.entries()) {
      if (id === open) rows.push({ thing: place, level: level + 1, label: calledHere(place), note: '' })
      // A fold and a face may share a name, and what stands on it is listed once.
      if (places.findIndex(({ name }) => name === place.name) === k)
        parts(place.name, level + (id === open ? 2 : 1))
    }
  }
  const place = (thing: Chosen, label: string) => {
    const guests = guestsOn(design, thing.name).length
    const note = guests === 0 ? 'free' : guests === 1 ? '1 part' : `${guests} parts`
    rows.push({ thing, level: 1, label, note: thing.what === 'fold' ? note : '' })
    parts(thing.name, 2)
  }
  place({ what: 'face', name: 'page/left' }, 'Left page')
  place({ what: 'fold', name: 'gutter' }, 'Gutter')
  place({ what: 'face', name: 'page/right' }, 'Right page')
  return rows
}

/** The card as a tree of words: walked with the arrow keys, and a way to everything without pointing. */
export function Outline({ dummy }: { readonly dummy: Dummy }): JSX.Element {
  const { bench, chosen } = dummy
  const design = bench.design.value
  const tree = useRef<HTMLUListElement>(null)
  const rows = rowsOf(design, modelOf(design), chosen.value)
  const at = Math.max(0, rows.findIndex(({ thing }) => sameThing(thing, chosen.value)))
  const failing = new Set(
    (bench.checks.value ?? []).filter(({ ok }) => !ok).flatMap(({ ids }) => ids.map((id) => id.split('/')[0])),
  )
  const walk = (event: KeyboardEvent, k: number) => {
    const to = { ArrowDown: k + 1, ArrowUp: k - 1, Home: 0, End: rows.length - 1 }[event.key]
    if (to === undefined) return
    event.preventDefault()
    tree.current?.querySelectorAll<HTMLElement>('[role="treeitem"]')[Math.min(rows.length - 1, Math.max(0, to))]?.focus()
  }
  return (
    <ul class="outline" role="tree" aria-label="On this card" ref={tree}>
      {rows.map(({ thing, level, label, note }, k) => {
        const taken = sameThing(thing, chosen.value)
        const fails = thing.what === 'part' && failing.has(thing.name)
        return (
          <li
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
            {fails ? <span class="outline-note"> to mend</span> : note ? <span class="outline-note"> {note}</span> : null}
          </li>
        )
      })}
    </ul>
  )
}
