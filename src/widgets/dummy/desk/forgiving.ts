import { useEffect, useMemo, useState } from 'preact/hooks'
import * as says from '../../../../content/words/dummy/desk.ts'
import type { Forgiveness } from '../../../paper/index.ts'
import type { LengthUnit } from '../../state/format.ts'
import { shown } from '../../state/format.ts'
import type { Dummy } from '../model/dummy-model.ts'
import type { Ask } from './desk.ts'
import { deskFor } from './desk.ts'

/** A part that has rested so long is looked at, ms. */
const REST = 500

const NOTHING: ReadonlyMap<string, Forgiveness> = new Map()

/** How far each size of a part may be off, by its key; worked out beside the page once hands rest. */
export function useForgiving({ bench }: Dummy, id: string | undefined): ReadonlyMap<string, Forgiveness> {
  const design = bench.design.value
  const busy = bench.held.value !== null || bench.playing.value
  const sound = bench.checks.value?.every(({ ok }) => ok) ?? false
  const desk = useMemo(() => deskFor<Extract<Ask, { what: 'forgives' }>>(), [])
  const [found, setFound] = useState(NOTHING)
  useEffect(() => {
    setFound(NOTHING)
    if (busy || !sound || id === undefined) return undefined
    const wait = setTimeout(() => {
      desk.ask(
        { what: 'forgives', design, id },
        ({ forgives }) => setFound(new Map(forgives.map((one) => [`${one.id}.${one.field}`, one]))),
        () => setFound(NOTHING),
      )
    }, REST)
    return () => {
      clearTimeout(wait)
      desk.callOff()
    }
  }, [desk, design, busy, sound, id])
  return found
}

/** Beyond this nobody measures: a size that may be off so far needs no care. */
const PLENTY = 4

/** How far a size may be off, in a few words: `within 0.8 mm`, `0.5 less to 1.2 mm more`. */
export function forgivesSays({ less, more, unit }: Forgiveness, length: LengthUnit): string {
  const [a, b] = [less.by, more.by]
  if (Math.min(a, b) >= PLENTY) return says.needsNoCare
  if (a === 0 && b === 0) return says.mustBeExact
  if (Math.abs(a - b) < 0.05) return says.mayBeOff(shown(a, unit, length))
  const under = a === 0 ? says.noLess : a >= PLENTY ? says.muchLess : says.less(shown(a, unit, length))
  const over = b === 0 ? says.noMore : b >= PLENTY ? says.muchMore : says.more(shown(b, unit, length))
  return says.mayBe(under, over)
}
