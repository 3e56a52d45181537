import type { JSX } from 'preact'
import { useEffect, useRef } from 'preact/hooks'
import * as says from '../../../content/words/dummy/part.ts'
import type { Forgiveness } from '../../paper/index.ts'
import { kindOf, nameOf } from '../../paper/index.ts'
import { ChoiceRow, FieldRow, UnitChoice } from '../fields/FieldPanel.tsx'
import { offeredBy } from '../model/offered.ts'
import { lengthUnit } from '../model/page.ts'
import { large, shown, small } from '../state/format.ts'
import { forgivesSays, useForgiving } from './desk/forgiving.ts'
import { intoSight } from './in-sight.ts'
import { ownerOf } from './model/chosen.ts'
import type { Dummy } from './model/dummy-model.ts'
import { PartActions } from './PartActions.tsx'

/** A size that a mend may not change. */
function Keep({ dummy, name }: { readonly dummy: Dummy; readonly name: string }): JSX.Element {
  const kept = dummy.pins.value.includes(name)
  return (
    <button
      type="button"
      class="press keep"
      aria-pressed={kept}
      title={kept ? says.keptThis : says.keepThis}
      onClick={() => dummy.pin([name], !kept)}
    >
      {kept ? says.kept : says.keep}
    </button>
  )
}

/** How far the size may be off before the card jams, sticks out or tears; what is to be cut with care is marked. */
function Care({ forgives }: { readonly forgives: Forgiveness | undefined }): JSX.Element {
  const careful = forgives && Math.min(forgives.less.by, forgives.more.by) < CAREFUL
  return (
    <span
      class="forgiving"
      data-care={careful ?? false}
      title={forgives?.more.sentence ?? forgives?.less.sentence ?? undefined}
    >
      {forgives ? forgivesSays(forgives, lengthUnit.value) : ''}
    </span>
  )
}

/** A hand with a ruler and a knife is so far off now and then, mm or degrees. Common practice, no source. */
const CAREFUL = 0.5

/** The sizes of the part taken up, under the card, and what can be done with it. */
export function Sizes({ dummy }: { readonly dummy: Dummy }): JSX.Element {
  const { bench, chosen, slip } = dummy
  const owner = ownerOf(bench.design.value, chosen.value)
  const length = lengthUnit.value
  const forgiving = useForgiving(dummy, owner?.id)
  const heading = useRef<HTMLHeadingElement>(null)
  const id = owner?.id
  // Another part: what it is called and what can be done with it comes first. A hand that drags it is not disturbed.
  useEffect(() => {
    const isFree = bench.held.peek() === null && slip.peek() === null
    if (id !== undefined && isFree && heading.current) intoSight(heading.current, 'above')
  }, [bench, slip, id])
  if (!owner)
    return (
      <p class="dummy-hint">
        {bench.design.value.mechanisms.length === 0 ? says.sizesComeHere : says.pressPart}
      </p>
    )
  const { label } = kindOf(owner)
  const rise = bench.readings.value[0]
  const { hidden, locked } = dummy.aside.value
  const [isHidden, isLocked] = [hidden.includes(owner.id), locked.includes(owner.id)]
  return (
    <section class="sizes" aria-label={says.sizesOf(nameOf(owner.id))}>
      <header class="sizes-head">
        <h2 tabIndex={-1} ref={heading}>
          {large(nameOf(owner.id))}
        </h2>
        <span class="quiet">
          {rise ? says.kindAndRise(label, small(rise.label), shown(rise.value, rise.unit, length)) : label}
        </span>
        <PartActions {...{ dummy, owner }} />
      </header>
      {isHidden || isLocked ? (
        <p class="quiet set-aside">
          {isHidden ? `${says.isHidden} ` : ''}
          {isLocked ? says.isLocked : ''}
        </p>
      ) : null}
      <fieldset class="sizes-fields" disabled={isLocked} aria-label={says.sizes}>
        {offeredBy(bench).choices.map((choice) => (
          <div key={choice.key} class="size">
            <ChoiceRow {...{ bench, choice }} />
          </div>
        ))}
        {offeredBy(bench).fields.map((field) => (
          <div key={field.key} class="size">
            <FieldRow {...{ bench, field, length }} />
            {isLocked ? null : <Keep dummy={dummy} name={field.key} />}
            <Care forgives={forgiving.get(field.key)} />
          </div>
        ))}
        <UnitChoice />
      </fieldset>
    </section>
  )
}
