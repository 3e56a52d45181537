// When a bench is examined, and what follows the address: with clocks, workers and addresses made by hand.
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import type { Check, Design } from '../../src/paper/index.ts'
import { check } from '../../src/paper/index.ts'
import { addressOf, followAddress } from '../../src/widgets/model/address.ts'
import type { Bench } from '../../src/widgets/model/bench-model.ts'
import { benchModel } from '../../src/widgets/model/bench-model.ts'
import { keepExamined, prepareChecker } from '../../src/widgets/model/examine.ts'
import type { Frames } from '../../src/widgets/model/frames.ts'
import { NO_FRAMES, pending } from '../../src/widgets/model/frames.ts'
import { offeredBy } from '../../src/widgets/model/offered.ts'
import { opened } from '../../src/widgets/state/state.ts'
import { beak } from './benches.ts'

/** What a bench fetches when it is wanted is there; every promise is through. */
const settle = async (): Promise<void> => {
  await Promise.all([
    import('../../src/widgets/model/checker.ts'),
    import('../../src/widgets/link/read-link.ts'),
  ])
  for (let k = 0; k < 10; k++) await new Promise((resolve) => setImmediate(resolve))
}

const setCut = (bench: Bench, cut: number): void => {
  const field = offeredBy(bench).fields.find(({ key }) => key === 'beak.cut')
  if (!field) throw new Error('no slit')
  bench.step('cut', (now) => field.set(now, cut))
  bench.rest()
}

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] })
})

afterEach(() => {
  vi.useRealTimers()
  vi.unstubAllGlobals()
})

describe('a bench is examined', () => {
  let desks: Desk[] = []

  class Desk {
    design: Design | null = null
    ended = false
    onmessage: ((event: { data: readonly Check[] }) => void) | null = null
    onerror: (() => void) | null = null
    constructor() {
      desks.push(this)
    }
    postMessage(design: Design): void {
      this.design = design
    }
    terminate(): void {
      this.ended = true
    }
    answers(): void {
      this.onmessage?.({ data: [] })
    }
  }

  beforeEach(() => {
    desks = []
    vi.stubGlobal('Worker', Desk)
  })

  /** A bench that was examined when its page was made. */
  const examined = () => benchModel(beak, {}, { checks: check(beak, { repairs: false }) })

  const failing = (bench: Bench) => (bench.checks.value ?? []).filter(({ ok }) => !ok)

  test('not at all while nobody touches it', async () => {
    const bench = examined()
    const stop = keepExamined(bench)
    vi.advanceTimersByTime(1000)
    await settle()
    expect(bench.knows(false)).toBe(true)
    expect(bench.knows(true)).toBe(false)
    expect(desks).toEqual([])
    stop()
  })

  test('between frames while the hands move, with repairs when they rest', async () => {
    const bench = examined()
    const stop = keepExamined(bench)
    setCut(bench, 104)
    expect(bench.knows(false)).toBe(false)
    vi.advanceTimersByTime(119)
    await settle()
    expect(bench.knows(false)).toBe(false)
    vi.advanceTimersByTime(1)
    await settle()
    expect(bench.knows(false)).toBe(true)
    expect(failing(bench).length).toBeGreaterThan(0)
    expect(desks).toHaveLength(0)
    vi.advanceTimersByTime(29)
    expect(desks).toHaveLength(0)
    vi.advanceTimersByTime(1)
    expect(desks).toHaveLength(1)
    expect(desks[0]?.design).toBe(bench.design.value)
    expect(bench.knows(true)).toBe(false)
    desks[0]?.answers()
    expect(bench.knows(true)).toBe(true)
    expect(bench.checks.value).toEqual([])
    stop()
    expect(desks[0]?.ended).toBe(true)
  })

  test('no repairs are looked for while something is held', async () => {
    const bench = examined()
    const stop = keepExamined(bench)
    bench.hold('beak/slit-end')
    const [slit] = bench.handles.value.filter(({ key }) => key === 'beak/slit-end')
    bench.move((from) => slit?.drag(from, [60, 70]) ?? from)
    vi.advanceTimersByTime(500)
    await settle()
    expect(bench.knows(false)).toBe(true)
    expect(desks).toHaveLength(0)
    bench.release()
    vi.advanceTimersByTime(150)
    expect(desks).toHaveLength(1)
    stop()
  })

  test('a search for another card is ended; an answer that comes too late is not believed', async () => {
    const bench = examined()
    const stop = keepExamined(bench)
    setCut(bench, 104)
    vi.advanceTimersByTime(150)
    const [first] = desks
    setCut(bench, 103.5)
    vi.advanceTimersByTime(150)
    await settle()
    expect(desks).toHaveLength(2)
    expect([first?.ended, desks[1]?.ended]).toEqual([true, false])
    first?.answers()
    expect(bench.knows(true)).toBe(false)
    desks[1]?.answers()
    expect(bench.knows(true)).toBe(true)
    // The desk is kept for the next one.
    setCut(bench, 103)
    vi.advanceTimersByTime(150)
    expect(desks).toHaveLength(2)
    expect(desks[1]?.design).toBe(bench.design.value)
    stop()
  })

  test('here, where there is nobody beside the page', async () => {
    const bench = examined()
    const stop = keepExamined(bench)
    setCut(bench, 30)
    vi.advanceTimersByTime(150)
    desks[0]?.onerror?.()
    await settle()
    expect(bench.knows(true)).toBe(true)
    stop()
  })

  test('when the browser has time, but no later than a tenth of a second', async () => {
    const idle = vi.fn<(run: () => void, options: { timeout: number }) => number>(() => 7)
    const called: number[] = []
    vi.stubGlobal('requestIdleCallback', idle)
    vi.stubGlobal('cancelIdleCallback', (ticket: number) => called.push(ticket))
    const bench = examined()
    const stop = keepExamined(bench)
    setCut(bench, 104)
    vi.advanceTimersByTime(120)
    await settle()
    expect(idle).toHaveBeenCalledTimes(1)
    expect(idle.mock.calls[0]?.[1]).toEqual({ timeout: 100 })
    expect(bench.knows(false)).toBe(false)
    stop()
    expect(called).toEqual([7])
    idle.mock.calls[0]?.[0]()
    await settle()
    expect(bench.knows(false)).toBe(false)
  })

  test('no more once it is gone', async () => {
    const bench = examined()
    const stop = keepExamined(bench)
    setCut(bench, 104)
    stop()
    vi.advanceTimersByTime(1000)
    await settle()
    expect(bench.knows(false)).toBe(false)
    expect(desks).toHaveLength(0)
  })

  test('from the start, where the page was made without verdicts', async () => {
    prepareChecker()
    const bench = benchModel(beak, {})
    const stop = keepExamined(bench)
    vi.advanceTimersByTime(120)
    await settle()
    expect(bench.knows(false)).toBe(true)
    stop()
  })
})

describe('verdicts', () => {
  test('are taken once for each design, and once more with repairs', () => {
    const bench = benchModel(beak, {})
    const checker = vi.fn<(design: Design, options?: { repairs?: boolean }) => readonly Check[]>(() => [])
    expect(bench.checks.value).toBeNull()
    for (const repairs of [false, false, true, true, false]) bench.examine(checker, repairs)
    expect(checker.mock.calls.map(([, options]) => options)).toEqual([{ repairs: false }, { repairs: true }])
    setCut(bench, 30)
    expect(bench.knows(false)).toBe(false)
    bench.examine(checker, false)
    expect(checker).toHaveBeenCalledTimes(3)
    expect(checker.mock.calls[2]?.[0]).toBe(bench.design.value)
  })
})

describe('the address', () => {
  let heard: EventTarget
  let place = { origin: 'https://garden.example', pathname: '/beak/', search: '?a', hash: '' }
  let written: string[] = []

  beforeEach(() => {
    heard = new EventTarget()
    place = { origin: 'https://garden.example', pathname: '/beak/', search: '?a', hash: '' }
    written = []
    vi.stubGlobal('location', place)
    vi.stubGlobal('history', {
      state: null,
      replaceState: (_: unknown, __: string, address: string) => written.push(address),
    })
    vi.stubGlobal('addEventListener', heard.addEventListener.bind(heard))
    vi.stubGlobal('removeEventListener', heard.removeEventListener.bind(heard))
  })

  test('is the page’s own until something was changed', () => {
    const bench = benchModel(beak, {})
    expect(addressOf(bench)).toBe('https://garden.example/beak/?a')
    bench.step('opening', (now) => opened(now, 60))
    expect(addressOf(bench)).toBe('https://garden.example/beak/?a#opening=60')
  })

  test('is opened, and no step back leads behind it', async () => {
    place.hash = '#opening=60'
    const bench = benchModel(beak, {})
    const stop = followAddress(bench)
    await settle()
    expect(bench.state.value.opening).toBe(60)
    expect(bench.canUndo.value).toBe(false)
    place.hash = '#opening=75'
    heard.dispatchEvent(new Event('hashchange'))
    await settle()
    expect(bench.state.value.opening).toBe(75)
    expect(bench.canUndo.value).toBe(true)
    stop()
    place.hash = '#opening=20'
    heard.dispatchEvent(new Event('hashchange'))
    await settle()
    expect(bench.state.value.opening).toBe(75)
  })

  test('that names a place of the page is left alone', async () => {
    place.hash = '#why'
    const bench = benchModel(beak, {})
    const stop = followAddress(bench)
    await settle()
    vi.advanceTimersByTime(1000)
    expect(written).toEqual([])
    expect(bench.state.value).toBe(bench.start)
    bench.step('opening', (now) => opened(now, 60))
    vi.advanceTimersByTime(300)
    expect(written).toEqual(['https://garden.example/beak/?a#opening=60'])
    stop()
  })

  test('follows three tenths of a second after the last change, and not while a hand holds on', async () => {
    const bench = benchModel(beak, {})
    const stop = followAddress(bench)
    await settle()
    vi.advanceTimersByTime(1000)
    expect(written).toEqual([])
    bench.step('opening', (now) => opened(now, 60))
    vi.advanceTimersByTime(299)
    bench.step('opening', (now) => opened(now, 61))
    vi.advanceTimersByTime(299)
    expect(written).toEqual([])
    vi.advanceTimersByTime(1)
    expect(written).toEqual(['https://garden.example/beak/?a#opening=61'])
    bench.hold('opening')
    bench.move((now) => opened(now, 70))
    vi.advanceTimersByTime(1000)
    expect(written).toHaveLength(1)
    bench.release()
    vi.advanceTimersByTime(300)
    expect(written.at(-1)).toBe('https://garden.example/beak/?a#opening=70')
    bench.step('opening', (now) => opened(now, 10))
    stop()
    vi.advanceTimersByTime(1000)
    expect(written).toHaveLength(2)
  })

  test('that cannot be read says so, and the card stands as it is', async () => {
    place.hash = '#beak.cut=9999'
    const bench = benchModel(beak, {})
    const stop = followAddress(bench)
    await settle()
    expect(bench.notes.value).toHaveLength(1)
    expect(bench.state.value.design).toEqual(beak)
    stop()
  })
})

describe('pictures', () => {
  test('take the last of what was asked for before each, once', () => {
    let run: ((time: number) => void) | null = null
    const dropped: number[] = []
    const frames: Frames = {
      ask(one) {
        run = one
        return 5
      },
      drop: (ticket) => void dropped.push(ticket),
    }
    const taken: string[] = []
    const moves = pending<string>(frames, (one) => taken.push(one))
    const picture = () => (run as ((time: number) => void) | null)?.(0)
    moves.ask('a')
    moves.ask('b')
    expect([moves.waiting, taken]).toEqual(['b', []])
    picture()
    expect([moves.waiting, taken]).toEqual([null, ['b']])
    // Nothing is left to drop once the picture came.
    moves.settle()
    expect([taken, dropped]).toEqual([['b'], []])
    moves.ask('c')
    moves.forget()
    expect([moves.waiting, dropped]).toEqual([null, [5]])
    moves.settle()
    moves.ask('d')
    moves.settle()
    expect([taken, dropped]).toEqual([
      ['b', 'd'],
      [5, 5],
    ])
  })

  test('that are none take everything at once', () => {
    const taken: string[] = []
    const moves = pending<string>(NO_FRAMES, (one) => taken.push(one))
    moves.ask('a')
    moves.ask('b')
    expect([moves.waiting, taken]).toEqual([null, ['a', 'b']])
    // A card cannot play without pictures.
    const bench = benchModel(beak, {})
    bench.play()
    expect(bench.playing.value).toBe(false)
  })

  test('play one card at a time, from where it stands', () => {
    let waiting: ((time: number) => void)[] = []
    const frames: Frames = {
      ask: (one) => waiting.push(one),
      drop: () => {
        waiting = []
      },
    }
    const show = (time: number) => {
      const now = waiting
      waiting = []
      for (const one of now) one(time)
    }
    const bench = benchModel(beak, {}, { frames })
    bench.play()
    bench.play()
    expect(waiting).toHaveLength(1)
    show(5000)
    expect(bench.state.value.opening).toBe(90)
    // A round takes seven seconds: a quarter of it later it is flat.
    show(5000 + 1750)
    expect(bench.state.value.opening).toBe(180)
    show(5000 + 3500)
    expect(bench.state.value.opening).toBe(90)
    bench.pause()
    expect([bench.playing.value, waiting]).toEqual([false, []])
  })
})
