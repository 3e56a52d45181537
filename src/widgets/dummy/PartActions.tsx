import type { JSX } from 'preact'
import { useState } from 'preact/hooks'
import type { Mechanism } from '../../paper/index.ts'
import { modelOf, nameOf } from '../../paper/index.ts'
import type { Edit } from '../keeping/edits.ts'
import { duplicate, mirror, move, remove, rename, withChildren } from '../keeping/edits.ts'
import { large } from '../state/format.ts'
import type { Chosen } from './model/chosen.ts'
import { called, placesOf } from './model/chosen.ts'
import type { Dummy } from './model/dummy-model.ts'

interface PartProps {
  readonly dummy: Dummy
  readonly owner: Mechanism
}

/** Takes over what came of an edit, or says why it could not be done. */
export function take(dummy: Dummy, edit: Edit): void {
  if (!edit.done) {
    dummy.told.value = edit.sentence
    return
  }
  const says = `${large(edit.says)}.${edit.note === undefined ? '' : ` ${edit.note}`}`
  dummy.put(edit.design, says, edit.id === undefined ? undefined : { what: 'part', name: edit.id })
}

/** Every fold or face that the part could stand on instead: not on itself, nor on what stands on it. */
function elsewhere({ bench }: Dummy, { id, on, kind }: Mechanism): readonly Chosen[] {
  const design = bench.design.value
  const what = kind === 'rider' ? 'face' : 'fold'
  const own = new Set(withChildren(design, id))
  const model = modelOf(design)
  return [undefined, ...design.mechanisms.map((m) => m.id)]
    .filter((host) => host === undefined || !own.has(host))
    .flatMap((host) => placesOf(model, host))
    .filter((place) => place.what === what && place.name !== on)
}

function Rename({ dummy, owner: { id } }: PartProps): JSX.Element {
  const [typed, setTyped] = useState<string | null>(null)
  const done = () => {
    if (typed !== null && typed.trim() !== '') take(dummy, rename(dummy.bench.design.peek(), id, typed))
    setTyped(null)
  }
  return (
    <input
      class="part-name"
      aria-label="Name of this part"
      value={typed ?? nameOf(id)}
      onInput={(event) => setTyped(event.currentTarget.value)}
      onKeyDown={(event) => {
        if (event.key === 'Enter') done()
        if (event.key === 'Escape') setTyped(null)
      }}
      onBlur={done}
    />
  )
}

/** What can be done with a part: another name, another place, a twin, away with it. */
export function PartActions({ dummy, owner }: PartProps): JSX.Element {
  const design = dummy.bench.design.value
  const { id } = owner
  const guests = withChildren(design, id).slice(1)
  const places = elsewhere(dummy, owner)
  const gone = guests.length === 0 ? 'Remove' : `Remove, with ${guests.map(nameOf).join(', ')}`
  return (
    <div class="part-actions">
      <span aria-hidden="true">Name</span>
      <Rename key={id} {...{ dummy, owner }} />
      <button
        type="button"
        class="button"
        onClick={() => {
          dummy.slip.value = 'pieces'
        }}
      >
        {owner.kind === 'rider' ? 'Outline and colour' : 'Colour and stick'}
      </button>
      <button type="button" class="button" onClick={() => take(dummy, duplicate(design, id))}>
        Duplicate
      </button>
      <button type="button" class="button" onClick={() => take(dummy, mirror(design, id))}>
        Mirror
      </button>
      {places.length > 0 ? (
        <select
          class="button"
          aria-label="Move it to"
          value=""
          onChange={({ currentTarget }) => {
            take(dummy, move(design, id, currentTarget.value))
            currentTarget.value = ''
          }}
        >
          <option value="">Move to …</option>
          {places.map((place) => (
            <option key={`${place.what} ${place.name}`} value={place.name}>
              {called(place)}
            </option>
          ))}
        </select>
      ) : null}
      <button type="button" class="button" onClick={() => take(dummy, remove(design, id))}>
        {gone}
      </button>
    </div>
  )
}
