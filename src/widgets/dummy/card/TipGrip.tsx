import type { JSX } from 'preact'
import { useRef } from 'preact/hooks'
import * as says from '../../../../content/words/dummy/over.ts'
import { onPlane } from '../../../drawing/view/places.ts'
import type { View } from '../../../drawing/view/view.ts'
import type { Design, Mechanism, Vec3 } from '../../../paper/index.ts'
import { kindOf, nameOf, riseOf, tipAt, tipTowards } from '../../../paper/index.ts'
import type { Place } from '../../figures/Grip.tsx'
import { Grip } from '../../figures/Grip.tsx'
import { offeredBy } from '../../model/offered.ts'
import { lengthUnit } from '../../model/page.ts'
import { spoken } from '../../state/format.ts'
import type { SliderKey } from '../../state/keys.ts'
import type { BenchState } from '../../state/state.ts'
import type { Dummy } from '../model/dummy-model.ts'

interface TipProps {
  readonly dummy: Dummy
  readonly drawn: View
  readonly owner: Mechanism
}

/** How far a key moves the tip: up and down, and along the gutter, mm. */
function keyed(press: SliderKey): Vec3 {
  if (press.kind === 'end') return [0, 0, 0]
  return [0, press.by * press.right, press.by * press.up]
}

/** The tip of the part taken up, to be put where it should be: its sizes follow, the least change first. */
export function TipGrip({ dummy, drawn, owner }: TipProps): JSX.Element | null {
  const { bench, pins } = dummy
  const held = useRef<Design | null>(null)
  const { design, opening } = bench.state.value
  const index = design.mechanisms.indexOf(owner)
  if (index < 0 || kindOf(owner).aims.length === 0) return null
  const { id } = owner
  const poser = bench.poser.value
  poser(opening)
  const tip = tipAt(poser, index)
  const rise = riseOf(tip, opening)
  const unit = lengthUnit.value
  const along = spoken(tip[1], 'mm', unit)
  const kept = pins.value.flatMap((pin) => (pin.startsWith(`${id}.`) ? [pin.slice(id.length + 1)] : []))
  const ranges = Object.fromEntries(offeredBy(bench).fields.map((field) => [field.key, field]))
  const towards = (now: BenchState, at: Vec3, from = now.design): BenchState => ({
    ...now,
    design: tipTowards(from, id, now.opening, at, { kept, ranges }),
  })
  const moved = (now: BenchState, by: Vec3): BenchState => {
    const there = bench.poser.peek()
    there(now.opening)
    const from = tipAt(there, index)
    return towards(now, [from[0] + by[0], from[1] + by[1], from[2] + by[2]])
  }
  const [, , width, height] = drawn.box
  return (
    <Grip
      label={says.tipOf(nameOf(id))}
      at={drawn.toScreen(tip)}
      box={{ width, height }}
      value={{
        now: Math.round(rise * 10) / 10,
        min: 0,
        max: Math.max(rise, design.card.width),
        text:
          rise < -0.05
            ? says.tipBehind(spoken(-rise, 'mm', unit), along)
            : says.tipHigh(spoken(Math.max(0, rise), 'mm', unit), along),
      }}
      held={bench.held.value === 'tip'}
      // The measure in the picture says it.
      rides=""
      onHold={() => {
        held.current = bench.design.peek()
        bench.hold('tip')
      }}
      // From where it was taken: a hand that goes too far and comes back finds the part as it was.
      onMove={(to: Place) =>
        bench.move((now) => towards(now, onPlane(drawn.toScreen, tip, to), held.current ?? now.design))
      }
      onRelease={bench.release}
      onCancel={bench.cancel}
      onKey={(press) => bench.step('tip', (now) => moved(now, keyed(press)))}
      onRest={bench.rest}
    />
  )
}
