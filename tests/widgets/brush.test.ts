// What a moving picture asks of its painter, by a painter that answers when the test says so; in a document of
// linkedom, with a clock and frames told by hand.
import { parseHTML } from 'linkedom'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import type { Design } from '../../src/paper/index.ts'
import { parseDesign } from '../../src/paper/index.ts'
import { brushOf } from '../../src/widgets/figures/brush.ts'
import type { Answer, LooksOrder, Scene, SceneOrder } from '../../src/widgets/figures/painter.ts'

const art = [
  {
    on: 'page/left',
    face: 'front',
    shape: [
      [-9, 9],
      [-5, 9],
      [-5, 15],
    ],
    closed: true,
    fill: 'moon',
  },
]

const card = (title: string, more: object = {}): Design =>
  parseDesign({ hingebook: 1, title, card: { width: 60, height: 90 }, mechanisms: [], ...more })

const scene = (design: Design, opening: number): Scene => ({
  design,
  opening,
  camera: { turn: 0, tilt: 30 },
  size: { width: 40, height: 30 },
  options: {},
})

class Painter extends EventTarget {
  readonly orders: (SceneOrder | LooksOrder)[] = []
  postMessage(order: SceneOrder | LooksOrder): void {
    this.orders.push(order)
  }
  says(data: Answer): void {
    this.dispatchEvent(Object.assign(new Event('message'), { data }))
  }
}

interface Dots {
  readonly width: number
  readonly height: number
  closed: boolean
  close(): void
}

const dots = (): Dots => ({
  width: 40,
  height: 30,
  closed: false,
  close() {
    this.closed = true
  },
})

let shown: unknown[]
let frames: Map<number, (time: number) => void>
let clock: number

beforeEach(() => {
  shown = []
  frames = new Map()
  clock = 1000
  const { document } = parseHTML('<div class="stage"><svg class="drawing"></svg></div>')
  const make = document.createElement.bind(document)
  document.createElement = ((tag: string) =>
    Object.assign(make(tag), {
      getContext: () => ({ transferFromImageBitmap: (bitmap: unknown) => shown.push(bitmap) }),
    })) as typeof document.createElement
  let ticket = 0
  vi.stubGlobal('document', document)
  vi.stubGlobal('devicePixelRatio', 2)
  vi.stubGlobal('performance', { now: () => clock })
  vi.stubGlobal('requestAnimationFrame', (run: (time: number) => void) => {
    frames.set(++ticket, run)
    return ticket
  })
  vi.stubGlobal('cancelAnimationFrame', (one: number) => frames.delete(one))
})

afterEach(() => vi.unstubAllGlobals())

/** The screen shows its next picture. */
function nextFrame(): void {
  const runs = [...frames.values()]
  frames.clear()
  for (const run of runs) run(clock)
}

function set() {
  const painter = new Painter()
  const brush = brushOf(painter as unknown as Worker)
  // Shown at half the size that it is drawn at.
  const picture = Object.assign(document.querySelector('svg') as unknown as SVGSVGElement, {
    clientWidth: 20,
  })
  const isShown = (): boolean => {
    const canvas = document.querySelector('canvas')
    return canvas !== null && !canvas.hidden
  }
  const painted = (bitmap = dots()): Dots => {
    painter.says({ answer: 'painted', picture: 0, bitmap: bitmap as unknown as ImageBitmap })
    return bitmap
  }
  const scenes = () => painter.orders.filter((order) => order.order === 'scene')
  return { brush, picture, isShown, painted, scenes }
}

test('a design is sent when it is another one, its art when that is', () => {
  const { brush, picture, painted, scenes } = set()
  const first = card('first', { art })
  brush.paint(picture, scene(first, 80))
  painted()
  brush.paint(picture, scene(first, 81))
  painted()
  brush.paint(picture, scene({ ...first, title: 'second' }, 81))
  painted()
  brush.paint(picture, scene(card('third'), 81))
  expect(scenes().map(({ design }) => design?.title)).toEqual(['first', undefined, 'second', 'third'])
  expect(scenes().map(({ art }) => art)).toEqual([first.art, undefined, undefined, null])
  expect(scenes().every(({ design }) => design === undefined || !('art' in design))).toBe(true)
  expect(scenes().every((order) => order.dots === 1)).toBe(true)
})

test('a picture that is not laid out is painted as large as it is drawn', () => {
  const { brush, picture, scenes } = set()
  brush.paint(Object.assign(picture, { clientWidth: 0 }), scene(card('one'), 80))
  expect(scenes().map(({ dots }) => dots)).toEqual([2])
})

test('one scene is painted at a time, and of those asked for meanwhile the last', () => {
  const { brush, picture, painted, scenes } = set()
  const design = card('one')
  for (const opening of [70, 71, 72, 73]) brush.paint(picture, scene(design, opening))
  expect(scenes().map(({ opening }) => opening)).toEqual([70])
  painted()
  expect(scenes().map(({ opening }) => opening)).toEqual([70, 73])
  painted()
  expect(scenes().map(({ opening }) => opening)).toEqual([70, 73])
})

test('a scene that is there already is not painted again', () => {
  const { brush, picture, painted, scenes } = set()
  const same = scene(card('one'), 70)
  brush.paint(picture, same)
  painted()
  brush.paint(picture, same)
  expect(scenes()).toHaveLength(1)
})

test('the card stays as it was drawn until the first scene is painted, and is back when the hand rests', () => {
  const { brush, picture, isShown, painted } = set()
  brush.paint(picture, scene(card('one'), 70))
  expect(isShown()).toBe(false)
  const first = painted()
  expect(isShown()).toBe(true)
  expect(shown).toEqual([first])
  brush.paint(picture, undefined)
  expect(isShown()).toBe(false)
})

test('what is painted for a hand that rests by now is not shown, nor when it has taken hold again', () => {
  const { brush, picture, isShown, painted, scenes } = set()
  const design = card('one')
  brush.paint(picture, scene(design, 70))
  brush.paint(picture, undefined)
  expect(painted().closed).toBe(true)
  expect(isShown()).toBe(false)
  brush.paint(picture, scene(design, 80))
  brush.paint(picture, undefined)
  brush.paint(picture, scene(design, 90))
  expect(painted().closed).toBe(true)
  expect(isShown()).toBe(false)
  const last = painted()
  expect(last.closed).toBe(false)
  expect(shown).toEqual([last])
  // Night may have come while the hand rested: looks are asked for anew.
  expect(scenes().map(({ anew }) => anew)).toEqual([true, true, true])
})

test('looks hold while the hand does', () => {
  const { brush, picture, painted, scenes } = set()
  const design = card('one')
  for (const opening of [70, 80, 90]) {
    brush.paint(picture, scene(design, opening))
    painted()
  }
  expect(scenes().map(({ anew }) => anew)).toEqual([true, false, false])
})

test('a frame is put off while a scene waits, and taken when the painter has come to it', () => {
  const { brush, picture, painted } = set()
  const design = card('one')
  const taken: string[] = []
  brush.paint(picture, scene(design, 70))
  brush.frames.ask(() => taken.push('nothing waits'))
  nextFrame()
  brush.paint(picture, scene(design, 71))
  brush.frames.ask(() => taken.push('put off'))
  nextFrame()
  expect(taken).toEqual(['nothing waits'])
  painted()
  nextFrame()
  expect(taken).toEqual(['nothing waits', 'put off'])
  nextFrame()
  expect(taken).toHaveLength(2)
})

test('a frame that was put off can still be dropped', () => {
  const { brush, picture } = set()
  const taken: string[] = []
  brush.paint(picture, scene(card('one'), 70))
  brush.paint(picture, scene(card('one'), 71))
  const ticket = brush.frames.ask(() => taken.push('taken'))
  nextFrame()
  nextFrame()
  brush.frames.drop(ticket)
  clock += 1000
  nextFrame()
  expect(taken).toEqual([])
})

test('nothing waits for ever for a painter that does not answer', () => {
  const { brush, picture } = set()
  const taken: string[] = []
  brush.paint(picture, scene(card('one'), 70))
  brush.paint(picture, scene(card('one'), 71))
  brush.frames.ask(() => taken.push('taken'))
  clock += 249
  nextFrame()
  expect(taken).toEqual([])
  clock += 1
  nextFrame()
  expect(taken).toEqual(['taken'])
})

test('a painter that is lost leaves the card to its picture', () => {
  const { brush, picture, isShown, painted } = set()
  brush.paint(picture, scene(card('one'), 70))
  painted()
  brush.end()
  expect(isShown()).toBe(false)
})
