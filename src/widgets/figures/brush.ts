/**
 * A canvas for a picture in motion: its surfaces are painted beside the page and shown under its words, handles and
 * measures, which stay in the picture. Until the first of them comes, the picture's own surfaces are left standing.
 */
import type { Design } from '../../paper/index.ts'
import type { Frames } from '../model/frames.ts'
import { readLooks } from './looks.ts'
import type { Answer, LooksOrder, Scene, SceneOrder } from './painter.ts'

export interface Brush {
  /** Has a scene painted under a picture; without one the hand rests, and what was painted is put away. */
  paint(picture: SVGSVGElement, scene: Scene | undefined): void
  /** The screen's frames, but those in which a scene still waits, since the painter is at the one before it. */
  readonly frames: Frames
}

/** Nothing waits longer for a painter than this, ms: it may never answer. */
const PATIENCE = 250

/** A picture, the canvas under it, and how far the painter is with it. */
interface Easel {
  readonly number: number
  readonly picture: SVGSVGElement
  readonly canvas: HTMLCanvasElement
  readonly context: ImageBitmapRenderingContext
  /** The scene asked for last, and whether it still waits to be sent. */
  scene: Scene | null
  waits: boolean
  /** What of a design the painter has. */
  design: Design | null
  art: Design['art'] | null
  /** Counts the times that the hand took hold; of which of them a scene is painted just now: null, none is. */
  hold: number
  painting: number | null
  /** When it was begun, ms. */
  begun: number
  /** Looks are to be asked for again. */
  anew: boolean
  /** Dots of the screen for each px of the picture: a page may show it larger or smaller than it is drawn. */
  dots: number
}

function easelOf(picture: SVGSVGElement, number: number): Easel | null {
  const canvas = document.createElement('canvas')
  const context = canvas.getContext('bitmaprenderer')
  if (!context) return null
  canvas.setAttribute('aria-hidden', 'true')
  canvas.className = 'canvas'
  canvas.hidden = true
  picture.before(canvas)
  return {
    number,
    picture,
    canvas,
    context,
    scene: null,
    waits: false,
    design: null,
    art: null,
    hold: 0,
    painting: null,
    begun: 0,
    anew: true,
    dots: 1,
  }
}

/** A picture of dots that the design shows. One that cannot be had is left out, as a page leaves it out. */
async function imageAt(address: string): Promise<ImageBitmap> {
  const image = new Image()
  image.src = address
  try {
    await image.decode()
    return await createImageBitmap(image)
  } catch {
    return createImageBitmap(new ImageData(1, 1))
  }
}

async function tell(
  painter: Worker,
  easel: Easel,
  { kinds, images: asked }: Extract<Answer, { answer: 'ask' }>,
) {
  const images = await Promise.all(asked.map(async (address) => [address, await imageAt(address)] as const))
  const { number: picture } = easel
  const order: LooksOrder = { order: 'looks', picture, looks: readLooks(easel.picture, kinds), images }
  painter.postMessage(order, { transfer: images.map(([, image]) => image) })
}

/** Sends what waits, one scene at a time: of those asked for meanwhile the last is taken. */
function send(painter: Worker, easel: Easel): void {
  if (!easel.scene || !easel.waits || easel.painting !== null) return
  const { design, ...rest } = easel.scene
  const { art, ...plain } = design
  const order: SceneOrder = {
    order: 'scene',
    picture: easel.number,
    ...rest,
    ...(design === easel.design ? {} : { design: plain }),
    ...(art === easel.art ? {} : { art: art ?? null }),
    dots: easel.dots,
    anew: easel.anew,
  }
  painter.postMessage(order)
  Object.assign(easel, {
    design,
    art,
    waits: false,
    painting: easel.hold,
    begun: performance.now(),
    anew: false,
  })
}

function unveil({ canvas, context }: Easel, bitmap: ImageBitmap): void {
  const { width, height } = bitmap
  if (canvas.width !== width || canvas.height !== height) {
    canvas.width = width
    canvas.height = height
  }
  context.transferFromImageBitmap(bitmap)
  canvas.hidden = false
}

/** The screen's frames but for those in which it `isBehind`. */
function framesUnless(isBehind: () => boolean): Frames {
  /** Tickets of what was put off: what they are by now. */
  const putOff = new Map<number, number>()
  return {
    ask(run) {
      const take = (time: number): void => {
        putOff.delete(ticket)
        if (isBehind()) putOff.set(ticket, requestAnimationFrame(take))
        else run(time)
      }
      const ticket = requestAnimationFrame(take)
      return ticket
    },
    drop(ticket) {
      cancelAnimationFrame(putOff.get(ticket) ?? ticket)
      putOff.delete(ticket)
    },
  }
}

/** A brush whose scenes a painter paints; `end` puts away what is shown. */
export function brushOf(painter: Worker): Brush & { end(): void } {
  const easels = new Map<SVGSVGElement, Easel | null>()
  let count = 0
  painter.addEventListener('message', ({ data }: MessageEvent<Answer>) => {
    if (data.answer === 'ready') return
    const easel = [...easels.values()].find((one) => one?.number === data.picture)
    if (!easel) return
    if (data.answer === 'ask') {
      void tell(painter, easel, data)
      return
    }
    // What was painted for a hand that rests by now is not shown.
    if (easel.scene && easel.painting === easel.hold) unveil(easel, data.bitmap)
    else data.bitmap.close()
    easel.painting = null
    send(painter, easel)
  })
  const rest = (easel: Easel): void => {
    if (!easel.scene) return
    easel.canvas.hidden = true
    easel.scene = null
    easel.waits = false
    easel.hold++
    // Day, night or a projector may come while the hand rests.
    easel.anew = true
  }
  return {
    paint(picture, scene) {
      let easel = easels.get(picture)
      if (!scene) {
        if (easel) rest(easel)
        return
      }
      if (easel === undefined) {
        for (const [one] of easels) if (!one.isConnected) easels.delete(one)
        easel = easelOf(picture, count++)
        easels.set(picture, easel)
      }
      if (!easel || easel.scene === scene) return
      // One that is not laid out has no width of its own.
      if (!easel.scene) easel.dots = devicePixelRatio * (picture.clientWidth / scene.size.width || 1)
      easel.scene = scene
      easel.waits = true
      send(painter, easel)
    },
    frames: framesUnless(() =>
      [...easels.values()].some((one) => one?.waits && performance.now() - one.begun < PATIENCE),
    ),
    end() {
      for (const easel of easels.values()) if (easel) rest(easel)
    },
  }
}

/**
 * Calls a painter; `take` receives its brush when it has come, and nothing when it is lost. It stays away where colours
 * are the reader's own: there a picture has no light, and its elements take them by themselves.
 */
export function callPainter(take: (brush: Brush | undefined) => void): void {
  if (matchMedia('(forced-colors: active)').matches || typeof OffscreenCanvas === 'undefined') return
  const painter = new Worker(new URL('./painter.ts', import.meta.url), { type: 'module' })
  const brush = brushOf(painter)
  painter.addEventListener('message', () => take(brush), { once: true })
  painter.addEventListener('error', () => {
    painter.terminate()
    brush.end()
    take(undefined)
  })
}
