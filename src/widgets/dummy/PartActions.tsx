import type { JSX } from 'preact'
import { useId, useState } from 'preact/hooks'
import * as modelSays from '../../../content/words/dummy/model.ts'
import * as says from '../../../content/words/dummy/part.ts'
import type { Mechanism } from '../../paper/index.ts'
import { kindNamed, kindOf, modelOf, nameOf } from '../../paper/index.ts'
import { asideRenamed } from '../keeping/aside.ts'
import type { Edit } from '../keeping/edits.ts'
import { duplicate, mirror, move, remove, rename, withChildren } from '../keeping/edits.ts'
import { large } from '../state/format.ts'
import type { Aside } from '../state/state.ts'
import type { Chosen } from './model/chosen.ts'
import { called, placesOf } from './model/chosen.ts'
import type { Dummy } from './model/dummy-model.ts'

interface PartProps {
  readonly dummy: Dummy
  readonly owner: Mechanism
}

/** Takes over what came of an edit, or says why it could not be done. Whether it was. */
export function take(dummy: Dummy, edit: Edit, aside?: Aside): boolean {
  const refusal = !edit.done ? edit.sentence : aside ? null : dummy.against(edit.design)
  if (refusal !== null || !edit.done) {
    dummy.told.value = refusal ?? ''
    return false
  }
  const told = modelSays.doneSo(large(edit.says), edit.note)
  dummy.put(edit.design, told, edit.id === undefined ? undefined : { what: 'part', name: edit.id }, aside)
  return true
}

/** Every fold or face that the part could stand on instead: not on itself, nor on what stands on it. */
function elsewhere({ bench }: Dummy, { id, on, kind }: Mechanism): readonly Chosen[] {
  const design = bench.design.value
  const what = kindNamed(kind)?.sitsOn === 'panel' ? 'face' : 'fold'
  const own = new Set(withChildren(design, id))
  const model = modelOf(design)
  return [undefined, ...design.mechanisms.map((m) => m.id)]
    .filter((host) => host === undefined || !own.has(host))
    .flatMap((host) => placesOf(model, host))
    .filter((place) => place.what === what && place.name !== on)
}

/** What is typed as a part's name, and what came of it when it was left. */
interface Draft {
  readonly id: string
  /** Null: the name as it is. */
  readonly text: string | null
  /** Why it is not taken, or what became of it; empty: nothing to say. */
  readonly said: string
}

/** The name, to be typed over. What cannot be a name stays there to be mended, and it is said why. */
function Rename({ dummy, owner: { id } }: PartProps): JSX.Element {
  const [kept, setDraft] = useState<Draft | null>(null)
  const why = useId()
  // What was typed for one part is none of the next one's.
  const draft = kept?.id === id ? kept : null
  const isRefused = draft !== null && draft.text !== null && draft.said !== ''
  const done = () => {
    const typed = draft?.text ?? ''
    if (isRefused) return
    if (typed.trim() === '') return setDraft(draft?.text === null ? draft : null)
    const edit = rename(dummy.bench.design.peek(), id, typed)
    // Another name is no change of the paper: a locked part may have one, and stays as it was set.
    take(dummy, edit, asideRenamed(dummy.aside.peek(), id, (edit.done && edit.id) || id))
    if (edit.done) setDraft({ id: edit.id ?? id, text: null, said: edit.note ?? '' })
    else setDraft({ id, text: typed, said: edit.sentence })
  }
  return (
    <>
      <input
        class="part-name"
        aria-label={says.partName}
        aria-invalid={isRefused}
        aria-describedby={draft?.said ? why : undefined}
        value={draft?.text ?? nameOf(id)}
        onInput={(event) => setDraft({ id, text: event.currentTarget.value, said: '' })}
        onKeyDown={(event) => {
          if (event.key === 'Enter') done()
          if (event.key === 'Escape') setDraft(null)
        }}
        onBlur={done}
      />
      {draft?.said ? (
        <span class={isRefused ? 'part-name-says trouble' : 'part-name-says'} id={why}>
          {draft.said}
        </span>
      ) : null}
    </>
  )
}

/** Out of sight, or out of reach: on this table alone, and no part of the design. */
function AsideActions({ dummy, owner: { id } }: PartProps): JSX.Element {
  const { hidden, locked } = dummy.aside.value
  const [isHidden, isLocked] = [hidden.includes(id), locked.includes(id)]
  return (
    <>
      <button
        type="button"
        class="button"
        title={says.hideHint}
        onClick={() => dummy.set('hidden', id, !isHidden)}
      >
        {isHidden ? says.show : says.hide}
      </button>
      <button
        type="button"
        class="button"
        title={says.lockHint}
        onClick={() => dummy.set('locked', id, !isLocked)}
      >
        {isLocked ? says.unlock : says.lock}
      </button>
    </>
  )
}

/** What can be done with a part: another name, another place, a twin, away with it. */
export function PartActions({ dummy, owner }: PartProps): JSX.Element {
  const design = dummy.bench.design.value
  const { id } = owner
  const guests = withChildren(design, id).slice(1)
  const places = elsewhere(dummy, owner)
  const isLocked = dummy.aside.value.locked.includes(id)
  const gone = says.remove(guests.map(nameOf))
  return (
    <div class="part-actions">
      <span aria-hidden="true">{says.name}</span>
      <Rename {...{ dummy, owner }} />
      <button
        type="button"
        class="button"
        onClick={() => {
          dummy.slip.value = 'pieces'
        }}
      >
        {kindOf(owner).sitsOn === 'panel' ? says.outlineAndColour : says.colourAndStick}
      </button>
      <button type="button" class="button" onClick={() => take(dummy, duplicate(design, id))}>
        {says.duplicate}
      </button>
      {isLocked ? null : (
        <button type="button" class="button" onClick={() => take(dummy, mirror(design, id))}>
          {says.mirror}
        </button>
      )}
      <AsideActions {...{ dummy, owner }} />
      {isLocked || places.length === 0 ? null : (
        <select
          class="button"
          aria-label={says.moveItTo}
          value=""
          onChange={({ currentTarget }) => {
            take(dummy, move(design, id, currentTarget.value))
            currentTarget.value = ''
          }}
        >
          <option value="">{says.moveTo}</option>
          {places.map((place) => (
            <option key={`${place.what} ${place.name}`} value={place.name}>
              {called(place)}
            </option>
          ))}
        </select>
      )}
      {isLocked ? null : (
        <button type="button" class="button" onClick={() => take(dummy, remove(design, id))}>
          {gone}
        </button>
      )}
    </div>
  )
}
