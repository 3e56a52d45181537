import * as says from '../../../../content/words/dummy/places.ts'
import type { Design, Model } from '../../../paper/index.ts'
import { kindOf, nameOf } from '../../../paper/index.ts'
import { hiddenIn, NOTHING_ASIDE } from '../../keeping/aside.ts'
import { large } from '../../state/format.ts'
import type { Aside } from '../../state/state.ts'
import type { Chosen } from './chosen.ts'
import { calledHere, ownerOf, placesOf } from './chosen.ts'

/** One line of the outline. */
export interface Row {
  readonly thing: Chosen
  readonly level: number
  readonly label: string
  readonly note: string
  /** `hidden, locked`, or nothing. */
  readonly aside: string
}

const partOf = (design: Design, id: string): string => {
  const m = design.mechanisms.find((one) => one.id === id)
  return m ? kindOf(m).label : ''
}

/** On a card of more parts their names alone are listed: what each is stands over its sizes. */
const FEW = 8

/** What stands on a fold or face. A fold and a face may share a name: each has what is made to stand on its like. */
const guestsOn = (design: Design, { what, name }: Chosen, shared: boolean): readonly string[] =>
  design.mechanisms
    .filter((m) => m.on === name && (!shared || (kindOf(m).sitsOn === 'panel') === (what === 'face')))
    .map(({ id }) => id)

/**
 * The lines of the outline, in order: pages and gutter, on each fold what stands on it. The folds and faces of the
 * part that is taken up are listed under it; of the others those alone that carry something do not show.
 */
export function rowsOf(
  design: Design,
  model: Model,
  chosen: Chosen | null,
  aside: Aside = NOTHING_ASIDE,
): readonly Row[] {
  const out = hiddenIn(design, aside)
  const said = (id: string): string =>
    says.notes([out.has(id) ? says.hidden : '', aside.locked.includes(id) ? says.locked : ''].filter(Boolean))
  const open = ownerOf(design, chosen)?.id
  const rows: Row[] = []
  const parts = (on: Chosen, level: number, shared = false) => {
    for (const id of guestsOn(design, on, shared)) part(id, level)
  }
  const part = (id: string, level: number) => {
    rows.push({
      thing: { what: 'part', name: id },
      level,
      label: large(nameOf(id)),
      note: design.mechanisms.length > FEW ? '' : partOf(design, id),
      aside: said(id),
    })
    const places = placesOf(model, id)
    for (const place of places) {
      if (id === open)
        rows.push({ thing: place, level: level + 1, label: calledHere(place), note: '', aside: '' })
      const shared = places.filter(({ name }) => name === place.name).length > 1
      parts(place, level + (id === open ? 2 : 1), shared)
    }
  }
  const place = (thing: Chosen, label: string) => {
    const note = says.parts(guestsOn(design, thing, false).length)
    rows.push({ thing, level: 1, label, note: thing.what === 'fold' ? note : '', aside: '' })
    parts(thing, 2)
  }
  place({ what: 'face', name: 'page/left' }, says.leftPage)
  place({ what: 'fold', name: 'gutter' }, says.gutterRow)
  place({ what: 'face', name: 'page/right' }, says.rightPage)
  return rows
}
