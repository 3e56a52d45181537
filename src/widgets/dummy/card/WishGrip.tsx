import type { JSX } from 'preact'
import { useState } from 'preact/hooks'
import * as says from '../../../../content/words/dummy/wish.ts'
import type { Point } from '../../../drawing/pen/marks.ts'
import { onPlane } from '../../../drawing/view/places.ts'
import type { View } from '../../../drawing/view/view.ts'
import type { Mark, Vec3, Wish } from '../../../paper/index.ts'
import { Grip } from '../../figures/Grip.tsx'
import { lengthUnit } from '../../model/page.ts'
import { angleWords, shown, spoken } from '../../state/format.ts'
import type { Dummy } from '../model/dummy-model.ts'
import type { WishedPlace } from '../model/wishes.ts'
import { markAt, placeOfWish, wishAt } from '../model/wishes.ts'

interface MarkGripProps {
  readonly label: string
  readonly drawn: View
  readonly mark: Mark
  /** Beside the number that rides on it: at which opening it is there; null: at that of the wish. */
  readonly when: string | null
  readonly least: number
  readonly onPut: (place: Partial<WishedPlace>) => void
}

/** A place where a tip is to be, dragged in the plane in which it lies, and moved with the arrow keys. */
function MarkGrip({ label, drawn, mark, when, least, onPut }: MarkGripProps): JSX.Element {
  const [held, setHeld] = useState(false)
  const unit = lengthUnit.value
  const { rise, along } = placeOfWish(mark)
  const high = shown(rise, 'mm', unit)
  const [, , width, height] = drawn.box
  const put = (up: number, far: number) =>
    onPut({ rise: Math.max(least, Math.round(up * 10) / 10), along: Math.round(far * 10) / 10 })
  return (
    <Grip
      label={label}
      at={drawn.toScreen(mark.at)}
      box={{ width, height }}
      value={{
        now: Math.round(rise * 10) / 10,
        min: 0,
        max: Math.max(rise, 200),
        text: says.placeIs(spoken(rise, 'mm', unit), spoken(along, 'mm', unit)),
      }}
      held={held}
      rides={when === null ? says.high(high) : says.highAt(when, high)}
      onHold={() => setHeld(true)}
      onMove={(to) => {
        const place = placeOfWish({ ...mark, at: onPlane(drawn.toScreen, mark.at, to) })
        put(place.rise, place.along)
      }}
      onRelease={() => setHeld(false)}
      onCancel={() => setHeld(false)}
      onKey={(press) => {
        if (press.kind !== 'end') put(rise + press.by * press.up, along + press.by * press.right)
      }}
      onRest={() => {}}
    />
  )
}

const line = (points: readonly Point[]): string => `M${points.map((point) => point.join(' ')).join('L')}`

/** The marks of a wish in the order in which the card comes to them. */
const inOrder = ({ opening, at, path = [] }: Wish): readonly Vec3[] =>
  [...path, { opening, at }].sort((a, b) => a.opening - b.opening).map((mark) => mark.at)

interface WishGripProps {
  readonly dummy: Dummy
  readonly drawn: View
}

/** The wished tip over the card, and the marks on its way. */
export function WishGrip({ dummy, drawn }: WishGripProps): JSX.Element {
  const { wish } = dummy
  const now = wish.value
  const path = now.path ?? []
  const [, , width, height] = drawn.box
  const foot: Vec3 = [now.at[0], now.at[1], 0]
  const lines = [line([drawn.toScreen(now.at), drawn.toScreen(foot)])]
  const way = path.length > 0 ? line(inOrder(now).map(drawn.toScreen)) : null
  return (
    <>
      <svg class="over" viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
        {[...lines, ...(way === null ? [] : [way])].map((d) => (
          <path key={d} class="over-wish-halo" d={d} />
        ))}
        {lines.map((d) => (
          <path key={d} class="over-wish" d={d} />
        ))}
        {way === null ? null : <path class="over-way" d={way} />}
      </svg>
      {path.map((mark, k) => (
        <MarkGrip
          key={k}
          label={says.markOnWay(k + 1, angleWords(mark.opening))}
          when={shown(mark.opening, 'deg', 'mm')}
          least={0}
          {...{ drawn, mark }}
          onPut={(place) => {
            wish.value = markAt(wish.peek(), k, place)
          }}
        />
      ))}
      <MarkGrip
        label={says.wishedTip}
        when={null}
        least={1}
        mark={now}
        drawn={drawn}
        onPut={(place) => {
          wish.value = wishAt(wish.peek(), place)
        }}
      />
    </>
  )
}
