import type { ReadonlySignal } from '@preact/signals'
import { computed, signal } from '@preact/signals'
import { isCrowded } from '../../../drawing/pattern/shown.ts'
import type { Design } from '../../../paper/index.ts'
import { compile, ownerOf } from '../../../paper/index.ts'
import { hiddenIn, inSight } from '../../keeping/aside.ts'
import type { Bench } from '../../model/bench-model.ts'
import type { Aside } from '../../state/state.ts'

const own = <T>(value: T): PropertyDescriptor => ({ value, enumerable: true })

/**
 * The bench with one part at a time on a crowded flat sheet: the one taken up, or the one picked.
 * @param taken what is taken up; what was picked before is forgotten then
 * @param build the design, anew only when mechanisms come or go
 */
export function withPick(
  bench: Bench,
  build: ReadonlySignal<Design>,
  taken: ReadonlySignal<string | undefined>,
): Bench {
  const choosable = computed(() => (isCrowded(build.value) ? build.value.mechanisms.map(({ id }) => id) : []))
  const picked = signal<{ readonly id: string | null; readonly taken: string | undefined } | null>(null)
  const chosen = computed(() => {
    const all = choosable.value
    const pick = picked.value?.taken === taken.value ? picked.value : null
    if (pick && (pick.id === null || all.includes(pick.id))) return pick.id
    return all.find((id) => id === taken.value) ?? all[0] ?? null
  })
  return Object.create(bench, {
    choosable: { get: () => choosable.value, enumerable: true },
    chosen: own(chosen),
    choose: own((id: string | null) => {
      if (id === null || choosable.peek().includes(id)) picked.value = { id, taken: taken.peek() }
    }),
  }) as Bench
}

/**
 * The bench as pictures show it: a part that is hidden is not drawn, and what is hidden or locked has no handles. All
 * else, and what hands do, is the bench's own; the very same bench where nothing is set aside.
 */
export function benchInSight(bench: Bench, aside: Aside): Bench {
  if (aside.hidden.length + aside.locked.length === 0) return bench
  const design = computed(() => inSight(bench.design.value, aside))
  const hidden = computed(() => hiddenIn(bench.design.value, aside))
  const isOut = (key: string): boolean => hidden.value.has(ownerOf(key))
  return Object.create(bench, {
    design: own(design),
    poser: own(
      computed(() => (design.value === bench.design.value ? bench.poser.value : compile(design.value))),
    ),
    handles: own(
      computed(() =>
        bench.handles.value.filter(({ key }) => !isOut(key) && !aside.locked.includes(ownerOf(key))),
      ),
    ),
    checks: own(
      computed(() => bench.checks.value?.filter(({ ids }) => !ids.some(isOut)) ?? bench.checks.value),
    ),
    choosable: { get: () => bench.choosable.filter((id) => !isOut(id)), enumerable: true },
    chosen: own(
      computed(() => {
        const id = bench.chosen.value
        return id !== null && isOut(id) ? null : id
      }),
    ),
  }) as Bench
}
