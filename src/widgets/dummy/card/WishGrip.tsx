import type { JSX } from 'preact'
import { useState } from 'preact/hooks'
import { onPlane } from '../../../drawing/view/places.ts'
import type { View } from '../../../drawing/view/view.ts'
import type { Vec3 } from '../../../paper/index.ts'
import { Grip } from '../../figures/Grip.tsx'
import { lengthUnit } from '../../model/page.ts'
import { shown, spoken } from '../../state/format.ts'
import type { Dummy } from '../model/dummy-model.ts'
import { placeOfWish, wishAt } from '../model/wishes.ts'

interface WishGripProps {
  readonly dummy: Dummy
  readonly drawn: View
}

/** The wished tip over the card: it is dragged in the plane in which it lies, and moved with the arrow keys. */
export function WishGrip({ dummy, drawn }: WishGripProps): JSX.Element {
  const { wish } = dummy
  const [held, setHeld] = useState(false)
  const { at } = wish.value
  const unit = lengthUnit.value
  const { rise, along } = placeOfWish(wish.value)
  const [, , width, height] = drawn.box
  const foot: Vec3 = [at[0], at[1], 0]
  const [a, b] = [drawn.toScreen(at), drawn.toScreen(foot)]
  const move = (to: Vec3) => {
    const place = placeOfWish({ ...wish.peek(), at: to })
    wish.value = wishAt(wish.peek(), {
      rise: Math.max(1, Math.round(place.rise * 10) / 10),
      along: Math.round(place.along * 10) / 10,
    })
  }
  return (
    <>
      <svg class="over" viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
        <path class="over-wish-halo" d={`M${a.join(' ')}L${b.join(' ')}`} />
        <path class="over-wish" d={`M${a.join(' ')}L${b.join(' ')}`} />
      </svg>
      <Grip
        label="The wished tip"
        at={a}
        box={{ width, height }}
        value={{
          now: Math.round(rise * 10) / 10,
          min: 0,
          max: Math.max(rise, 200),
          text: `${spoken(rise, 'mm', unit)} high, ${spoken(along, 'mm', unit)} from your end`,
        }}
        held={held}
        rides={`${shown(rise, 'mm', unit)} high`}
        onHold={() => setHeld(true)}
        onMove={(to) => move(onPlane(drawn.toScreen, wish.peek().at, to))}
        onRelease={() => setHeld(false)}
        onCancel={() => setHeld(false)}
        onKey={(press) => {
          if (press.kind === 'end') return
          const { rise: high, along: far } = placeOfWish(wish.peek())
          wish.value = wishAt(wish.peek(), {
            rise: Math.max(1, high + press.by * press.up),
            along: far + press.by * press.right,
          })
        }}
        onRest={() => {}}
      />
    </>
  )
}
