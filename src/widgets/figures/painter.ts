/** Run beside the page: the card of a picture in motion is worked out and painted here, and no hand waits for it. */
import type { Mark } from '../../drawing/pen/marks.ts'
import type { Camera, Size } from '../../drawing/view/camera.ts'
import type { ViewOptions } from '../../drawing/view/view.ts'
import { cardMarks } from '../../drawing/view/view.ts'
import type { Design, Poser } from '../../paper/index.ts'
import { compile } from '../../paper/index.ts'
import type { Kinds, Looks } from './looks.ts'
import { unknownKinds } from './looks.ts'
import { FULL, paceAfter } from './pace.ts'
import { paint, picturesIn } from './paint.ts'

/** What is to be painted. */
export interface Scene {
  readonly design: Design
  readonly opening: number
  readonly camera: Camera
  readonly size: Size
  readonly options: ViewOptions
}

/** A scene as it is sent: of its design only what is another than before, its art apart from all else. */
export interface SceneOrder extends Omit<Scene, 'design'> {
  readonly order: 'scene'
  /** Tells pictures apart. */
  readonly picture: number
  readonly design?: Omit<Design, 'art'>
  readonly art?: Design['art'] | null
  /** Dots of the screen for each px. */
  readonly dots: number
  /** What was told of looks may hold no more. */
  readonly anew: boolean
}

export interface LooksOrder {
  readonly order: 'looks'
  readonly picture: number
  readonly looks: Looks
  readonly images: readonly (readonly [address: string, image: ImageBitmap])[]
}

/** `ready`: the painter has come. `ask`: these are wanted before it can go on. `painted`: the scene in dots. */
export type Answer =
  | { readonly answer: 'ready' }
  | {
      readonly answer: 'ask'
      readonly picture: number
      readonly kinds: Kinds
      readonly images: readonly string[]
    }
  | { readonly answer: 'painted'; readonly picture: number; readonly bitmap: ImageBitmap }

/** What is known of a picture. */
interface Known {
  readonly poser: Poser
  readonly art: Design['art'] | null
  readonly looks: Looks | null
  readonly images: ReadonlyMap<string, ImageBitmap>
  /** What waits for an answer of the page. */
  readonly waiting: { readonly order: SceneOrder; readonly marks: readonly Mark[] } | null
}

const answer = (one: Answer, transfer: Transferable[] = []): void => postMessage(one, { transfer })

const contextOf = () => new OffscreenCanvas(1, 1).getContext('2d') as OffscreenCanvasRenderingContext2D

const [context, small] = [contextOf(), contextOf()]

const pictures = new Map<number, Known>()

let pace = FULL

function draw({ picture, size, dots }: SceneOrder, marks: readonly Mark[], looks: Looks): void {
  const begun = performance.now()
  const images = pictures.get(picture)?.images ?? new Map()
  paint({ context, small, looks, images }, marks, size, dots * pace.fine)
  const bitmap = context.canvas.transferToImageBitmap()
  pace = paceAfter(pace, performance.now() - begun)
  answer({ answer: 'painted', picture, bitmap }, [bitmap])
}

/** What is known with this order; null: it is the first of its picture, and brings no design. */
function knownWith({ picture, anew, design, ...order }: SceneOrder): Known | null {
  const before = pictures.get(picture)
  const art = order.art === undefined ? (before?.art ?? null) : order.art
  const poser = design ? compile(art ? { ...design, art } : design) : before?.poser
  if (!poser) return null
  const { looks = null, images = new Map() } = before && !anew ? before : {}
  return { poser, art, looks, images, waiting: null }
}

function show(order: SceneOrder): void {
  const known = knownWith(order)
  if (!known) return
  const { picture, opening, camera, size, options } = order
  const { poser, looks } = known
  const marks = cardMarks(poser, opening, camera, size, options)
  const kinds = unknownKinds(marks, looks)
  const images = picturesIn(marks).filter((address) => !known.images.has(address))
  const isKnown = looks && kinds.beside.length + kinds.on.length + images.length === 0
  pictures.set(picture, isKnown ? known : { ...known, waiting: { order, marks } })
  if (isKnown) draw(order, marks, looks)
  else answer({ answer: 'ask', picture, kinds, images })
}

function learn({ picture, looks: told, images: brought }: LooksOrder): void {
  const known = pictures.get(picture)
  if (!known) return
  const looks: Looks = {
    ground: told.ground,
    beside: new Map([...(known.looks?.beside ?? []), ...told.beside]),
    on: new Map([...(known.looks?.on ?? []), ...told.on]),
  }
  const { waiting } = known
  pictures.set(picture, {
    ...known,
    looks,
    images: new Map([...known.images, ...brought]),
    waiting: null,
  })
  if (waiting) draw(waiting.order, waiting.marks, looks)
}

addEventListener('message', ({ data }: MessageEvent<SceneOrder | LooksOrder>) => {
  if (data.order === 'scene') show(data)
  else learn(data)
})

answer({ answer: 'ready' })
