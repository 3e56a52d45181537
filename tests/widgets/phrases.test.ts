// Words in the prose that move the card: what they ask for, the way there, and the way back.
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { parseDesign, settingOf } from '../../src/paper/index.ts'
import type { Bench } from '../../src/widgets/model/bench-model.ts'
import { benchModel } from '../../src/widgets/model/bench-model.ts'
import type { PhraseMove } from '../../src/widgets/model/moved.ts'
import { movedOn } from '../../src/widgets/model/moved.ts'
import { onTheWay, phraseDesign, phraseHolds, phraseState } from '../../src/widgets/phrase/phrase-state.ts'
import { pressPhrase, putBack } from '../../src/widgets/phrase/pressing.ts'
import type { BenchState } from '../../src/widgets/state/state.ts'
import { opened, startState } from '../../src/widgets/state/state.ts'
import { bare, bareConfig, beak } from './benches.ts'

const moth = parseDesign({
  hingebook: 1,
  title: 'Moth',
  card: { width: 105, height: 148 },
  mechanisms: [
    {
      id: 'moth',
      kind: 'glued-v-fold',
      on: 'gutter',
      apex: 60,
      toward: 1,
      base: 50,
      facet: 60,
      foot: 40,
      ridge: 40,
    },
  ],
})

const number = ({ design }: BenchState, field: string): number => {
  const [m] = design.mechanisms
  return m ? settingOf(m, field) : Number.NaN
}

describe('what a phrase asks for', () => {
  const start = startState(beak, {})

  test('is set on the chapter’s own card', () => {
    const own = phraseDesign(beak, { id: 'beak', set: { cut: 30, apex: 100 } })
    expect(own?.mechanisms[0]).toMatchObject({ cut: 30, apex: 100 })
    // The shared slit goes along.
    expect(own?.mechanisms[1]).toMatchObject({ cut: 30 })
    expect(phraseDesign(beak, { opening: 30 })).toBeNull()
    expect(phraseDesign(beak, { id: 'beak' })).toBeNull()
    expect(phraseDesign(beak, { set: { cut: 3 } })).toBeNull()
  })

  test('may be a word where the kind has a choice', () => {
    expect(phraseDesign(moth, { id: 'moth', set: { pop: 'down', foot: 30 } })?.mechanisms[0]).toMatchObject({
      pop: 'down',
      foot: 30,
    })
    expect(() => phraseDesign(moth, { id: 'moth', set: { pop: 'sideways' } })).toThrow(
      'moth has no pop that could be sideways',
    )
    expect(() => phraseDesign(moth, { id: 'moth', set: { foot: 'long' } })).toThrow(RangeError)
    expect(() => phraseDesign(moth, { id: 'moth', set: { wing: 3 } })).toThrow(
      'moth has no wing that could be 3',
    )
    expect(() => phraseDesign(moth, { id: 'owl', set: { foot: 3 } })).toThrow('owl')
  })

  test('leaves all else as it is', () => {
    const now = { ...start, opening: 40, station: 12 }
    expect(phraseState(now, start, { opening: 120 })).toEqual({ ...now, opening: 120 })
    const set = phraseState(now, start, { id: 'beak', set: { cut: 30 } })
    expect(set).toMatchObject({ opening: 40, station: 12 })
    expect(number(set, 'cut')).toBe(30)
    const card = startState(bare, bareConfig)
    expect(phraseState(card, card, { across: 33 }).point).toEqual([33, 80])
    // Where there is no point there is none to move.
    expect(phraseState(start, start, { across: 33 }).point).toBeNull()
    expect(phraseState(card, card, { opening: 10 }).point).toEqual([60, 80])
  })

  test('holds until the reader changes just that', () => {
    const move: PhraseMove = { id: 'beak', set: { cut: 30 }, opening: 60 }
    const reached = phraseState(start, start, move)
    expect(phraseHolds(reached, reached, move)).toBe(true)
    expect(phraseHolds({ ...reached, station: 3 }, reached, move)).toBe(true)
    expect(phraseHolds({ ...reached, design: beak }, reached, move)).toBe(false)
    expect(phraseHolds({ ...reached, opening: 60.04 }, reached, move)).toBe(true)
    expect(phraseHolds({ ...reached, opening: 59.9 }, reached, move)).toBe(false)
    expect(phraseHolds({ ...reached, design: beak }, reached, { opening: 60 })).toBe(true)
    expect(phraseHolds({ ...reached, opening: 10 }, reached, { id: 'beak', set: { cut: 30 } })).toBe(true)
    const card = startState(bare, bareConfig)
    expect(phraseHolds(card, card, { across: 60 })).toBe(true)
    expect(phraseHolds({ ...card, point: [61, 80] }, card, { across: 60 })).toBe(false)
    expect(phraseHolds({ ...card, point: [60, 20] }, card, { across: 60 })).toBe(true)
  })
})

describe('on the way', () => {
  const start = startState(beak, {})

  test('openings and sizes go along, a tenth of a degree at a time', () => {
    const move: PhraseMove = { id: 'beak', set: { cut: 58 }, opening: 33 }
    const to = phraseState(start, start, move)
    const at = (part: number) => onTheWay(start, to, start, move, part)
    expect(at(0).opening).toBe(90)
    expect(at(0.5).opening).toBe(61.5)
    expect(at(0.333).opening).toBe(71)
    expect(number(at(0.25), 'cut')).toBeCloseTo(38 + 0.25 * 20, 9)
    expect(at(1)).toBe(to)
    expect(at(1.5)).toBe(to)
  })

  test('a card of the reader’s own jumps to the chapter’s', () => {
    const move: PhraseMove = { id: 'beak', set: { cut: 58 }, opening: 30 }
    const own = { ...start, design: phraseDesign(beak, { id: 'beak', set: { apex: 100 } }) ?? beak }
    const to = phraseState(own, start, move)
    const half = onTheWay(own, to, start, move, 0.5)
    expect(half.design).toBe(to.design)
    expect(half.opening).toBe(60)
  })

  test('words jump, numbers beside them do not', () => {
    const from = startState(moth, {})
    const move: PhraseMove = { id: 'moth', set: { side: 'outside', foot: 20 } }
    const half = onTheWay(from, phraseState(from, from, move), from, move, 0.5)
    expect(half.design.mechanisms[0]).toMatchObject({ side: 'outside', foot: 30 })
  })

  test('the point of a bare card goes straight there', () => {
    const card = startState(bare, bareConfig)
    const move: PhraseMove = { across: 20 }
    expect(onTheWay(card, phraseState(card, card, move), card, move, 0.25).point).toEqual([50, 80])
  })
})

describe('a pressed phrase', () => {
  let frames: ((time: number) => void)[] = []
  let calm = false

  beforeEach(() => {
    frames = []
    calm = false
    vi.stubGlobal('requestAnimationFrame', (run: (time: number) => void) => frames.push(run))
    vi.stubGlobal('cancelAnimationFrame', (ticket: number) => {
      frames[ticket - 1] = () => {}
    })
    vi.stubGlobal('matchMedia', () => ({ matches: calm }))
  })
  afterEach(() => vi.unstubAllGlobals())

  /** The next picture, at so many milliseconds. */
  const show = (time: number): void => {
    const now = frames
    frames = []
    for (const run of now) run(time)
  }
  const settle = () => new Promise<void>((resolve) => setTimeout(resolve))

  const press = (bench: Bench, slug: string, move: PhraseMove) => pressPhrase(bench, slug, 'first', move)

  test('moves the card in six tenths of a second: slow, fast, slow', () => {
    const bench = benchModel(beak, {})
    press(bench, 'way', { opening: 30 })
    show(1000)
    expect(bench.state.value.opening).toBe(90)
    show(1150)
    // A quarter of the time: (1 - cos 45) / 2 of the way.
    expect(bench.state.value.opening).toBeCloseTo(90 - 60 * ((1 - Math.SQRT1_2) / 2), 0)
    show(1300)
    expect(bench.state.value.opening).toBe(60)
    show(1450)
    expect(bench.state.value.opening).toBeCloseTo(90 - 60 * ((1 + Math.SQRT1_2) / 2), 0)
    show(1600)
    expect(bench.state.value.opening).toBe(30)
    expect(frames).toEqual([])
    // All of it is one step to undo.
    bench.undo()
    expect(bench.state.value.opening).toBe(90)
    expect(bench.canUndo.value).toBe(false)
  })

  test('moves it at once for who wants calm', () => {
    calm = true
    const bench = benchModel(beak, {})
    press(bench, 'calm', { opening: 30 })
    show(1000)
    expect(bench.state.value.opening).toBe(30)
    expect(frames).toEqual([])
  })

  test('is put back to the very state it was pressed in', () => {
    calm = true
    const bench = benchModel(beak, {})
    bench.step('opening', (now) => opened(now, 70))
    bench.rest()
    const before = bench.state.value
    press(bench, 'back', { id: 'beak', set: { cut: 30 }, opening: 120 })
    expect(movedOn('back').value).toMatchObject({ phrase: 'first', before })
    expect(movedOn('back').value?.was.rise).toBeCloseTo(
      bench.readings.value.find(({ name }) => name === 'rise')?.value ?? 0,
      9,
    )
    show(0)
    expect(number(bench.state.value, 'cut')).toBe(30)
    // Another phrase begins from there as well.
    pressPhrase(bench, 'back', 'second', { opening: 20 })
    show(0)
    expect(number(bench.state.value, 'cut')).toBe(38)
    expect(movedOn('back').value).toMatchObject({ phrase: 'second', before })
    calm = false
    putBack(bench, 'back')
    expect(movedOn('back').value).toBeNull()
    show(0)
    show(300)
    expect(bench.state.value.opening).toBe(45)
    show(600)
    expect(bench.state.value).toBe(before)
    putBack(bench, 'back')
    expect(frames).toEqual([])
  })

  test('ends the one that is still under way', () => {
    const bench = benchModel(beak, {})
    press(bench, 'twice', { opening: 30 })
    show(0)
    show(300)
    pressPhrase(bench, 'twice', 'second', { opening: 150 })
    show(400)
    show(700)
    // Halfway from where the first was pressed to where the second leads.
    expect(bench.state.value.opening).toBe(120)
    show(1000)
    expect(bench.state.value.opening).toBe(150)
    expect(frames).toEqual([])
  })

  test('lets go once the reader moves on, and of nothing else', async () => {
    calm = true
    const bench = benchModel(beak, {})
    press(bench, 'lets-go', { opening: 30 })
    show(0)
    bench.step('section', (now) => ({ ...now, station: 20 }))
    bench.rest()
    await settle()
    expect(movedOn('lets-go').value?.phrase).toBe('first')
    bench.step('opening', (now) => opened(now, 50))
    await settle()
    expect(movedOn('lets-go').value).toBeNull()
  })

  test('keeps the reader’s place to look from', () => {
    calm = true
    const bench = benchModel(beak, {})
    press(bench, 'camera', { opening: 30 })
    show(0)
    bench.step('camera', (now) => ({ ...now, camera: { turn: -50, tilt: 10 } }))
    bench.rest()
    pressPhrase(bench, 'camera', 'second', { opening: 60 })
    show(0)
    expect(bench.state.value.camera).toEqual({ turn: -50, tilt: 10 })
  })
})
