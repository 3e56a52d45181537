import '../drawing/pen/marks.css'
import type { JSX } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'
import * as words from '../../content/words/site/swing.ts'
import type { Camera, Size } from '../drawing/view/camera.ts'
import { view } from '../drawing/view/view.ts'
import type { Design, Poser } from '../paper/index.ts'
import { compile } from '../paper/index.ts'
import { RangeField } from '../widgets/fields/RangeField.tsx'
import { Figure } from '../widgets/figures/Figure.tsx'
import { fetchBrush } from '../widgets/figures/fetch-brush.ts'
import { brushes } from '../widgets/figures/quick.ts'
import { screenFrames } from '../widgets/figures/screen-frames.ts'
import { wantsCalm } from '../widgets/model/calm.ts'
import { fetched } from '../widgets/model/loading.ts'

interface SwingProps {
  /** The address of the design, checked. */
  readonly design: string
  /** The picture until the card is awake: its address, and what it shows. */
  readonly picture: string
  readonly says: string
  /** Where the card stands before anyone moves it, and how far it opens as one scrolls; degrees. */
  readonly from: number
  readonly to: number
  readonly camera: Camera
  /** Of the picture, px; the page scales it. */
  readonly size: Size
  /** Says which card it is. */
  readonly label: string
}

/** Degrees for each pixel of a drag. */
const PER_PIXEL = 0.28

/** The card is at rest when nothing has moved it for this long, ms. */
const REST = 140

/** Part of the screen's height that is scrolled while the card opens from first to last. */
const SCROLLED = 0.55

/** What the slider offers, degrees. */
const LEAST = 20
const MOST = 160

const within = (opening: number): number => Math.min(MOST, Math.max(LEAST, opening))

/** The garden is fetched once the page has nothing better to do: until then its picture stands there. */
async function fetchGarden(address: string): Promise<Poser> {
  const answer = await fetched(address)
  // The site's own file, checked when the site was built.
  return compile((await answer.json()) as Design)
}

interface GardenProps {
  readonly poser: Poser
  readonly opening: number
  readonly camera: Camera
  readonly size: Size
  readonly moving: boolean
}

/** The card as it stands; while it moves it is painted beside the page, once the painter has come. */
function Garden({ poser, opening, camera, size, moving }: GardenProps): JSX.Element {
  const brush = brushes.quick
  const over = moving && brush !== undefined
  const options = { frame: [opening], moving }
  const drawn = view(poser, opening, camera, size, { ...options, over })
  const scene = over ? { design: poser.model.design, opening, camera, size, options } : undefined
  return <Figure drawing={drawn} name="garden" {...{ card: drawn.card, brush, scene }} />
}

/** The night garden that opens as one scrolls, drags or moves its slider. */
export function Swing({ design, picture, says, from, to, camera, size, label }: SwingProps): JSX.Element {
  const [poser, setPoser] = useState<Poser | null>(null)
  const [now, setNow] = useState(from)
  const [moving, setMoving] = useState(false)
  /** Whoever takes hold of the card has it: scrolling then leaves it alone. */
  const held = useRef(false)
  const drag = useRef<{ pointer: number; x: number; opening: number; way: number } | null>(null)
  const rest = useRef(0)

  const move = (opening: number) => {
    void fetchBrush()
    setNow(within(opening))
    setMoving(true)
    clearTimeout(rest.current)
    rest.current = setTimeout(() => setMoving(false), REST) as unknown as number
  }
  useEffect(() => {
    let gone = false
    // Where it cannot be fetched the picture stays.
    fetchGarden(design).then(
      (found) => {
        if (!gone) setPoser(() => found)
      },
      () => {},
    )
    return () => {
      gone = true
      clearTimeout(rest.current)
    }
  }, [design])
  useEffect(() => {
    if (wantsCalm()) return undefined
    let ticket = 0
    const follow = () => {
      screenFrames.drop(ticket)
      ticket = screenFrames.ask(() => {
        if (held.current) return
        move(from + (to - from) * Math.min(1, scrollY / (SCROLLED * innerHeight)))
      })
    }
    addEventListener('scroll', follow, { passive: true })
    return () => {
      removeEventListener('scroll', follow)
      screenFrames.drop(ticket)
    }
  }, [from, to])

  const end = (event: PointerEvent) => {
    if (drag.current?.pointer === event.pointerId) drag.current = null
  }
  return (
    <div class="swing">
      {/* The keys' way to do the same is the slider. */}
      <div
        class="swing-stage"
        onPointerDown={(event) => {
          if (event.button !== 0) return
          const { left, width } = event.currentTarget.getBoundingClientRect()
          held.current = true
          drag.current = {
            pointer: event.pointerId,
            x: event.clientX,
            opening: now,
            way: event.clientX < left + width / 2 ? -1 : 1,
          }
          event.currentTarget.setPointerCapture(event.pointerId)
        }}
        onPointerMove={(event) => {
          const { current } = drag
          if (current?.pointer === event.pointerId)
            move(current.opening + current.way * (event.clientX - current.x) * PER_PIXEL)
        }}
        onPointerUp={end}
        onPointerCancel={end}
      >
        {poser ? (
          <Garden {...{ poser, opening: now, camera, size, moving }} />
        ) : (
          <img src={picture} alt={says} width={size.width} height={size.height} fetchpriority="high" />
        )}
      </div>
      <div class="swing-bar">
        <span aria-hidden="true">{words.opening}</span>
        <RangeField
          label={words.openingOf(label)}
          value={now}
          min={LEAST}
          max={MOST}
          unit="deg"
          length="mm"
          onSet={(opening) => {
            held.current = true
            move(opening)
          }}
          onRest={() => {}}
        />
        <span class="number" aria-hidden="true">
          {now.toFixed(0)}°
        </span>
      </div>
    </div>
  )
}
