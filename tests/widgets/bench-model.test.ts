import { effect } from '@preact/signals'
import { describe, expect, test } from 'vitest'
import { change, check, measure, settingOf } from '../../src/paper/index.ts'
import { nudged, toEnd } from '../../src/widgets/model/bench-handles.ts'
import type { Bench } from '../../src/widgets/model/bench-model.ts'
import { benchModel } from '../../src/widgets/model/bench-model.ts'
import type { Frames } from '../../src/widgets/model/frames.ts'
import { offeredBy } from '../../src/widgets/model/offered.ts'
import { cutAt, opened, seenFrom } from '../../src/widgets/state/state.ts'
import { bare, bareConfig, beak, dummy, layer } from './benches.ts'

/** Frames that come when the test says so. */
function handFrames(): Frames & { show(time: number): void; readonly asked: number } {
  let waiting: ((time: number) => void)[] = []
  let asked = 0
  return {
    ask(run) {
      waiting.push(run)
      asked++
      return asked
    },
    drop() {
      waiting = []
    },
    show(time) {
      const now = waiting
      waiting = []
      for (const run of now) run(time)
    },
    get asked() {
      return asked
    },
  }
}

const number = (bench: Bench, id: string, field: string): number => {
  const m = bench.design.value.mechanisms.find((one) => one.id === id)
  return m ? settingOf(m, field) : Number.NaN
}

const handle = (bench: Bench, key: string) => {
  const found = bench.handles.value.find((one) => one.key === key)
  if (!found) throw new Error(`${key} is not among ${bench.handles.value.map((one) => one.key).join(', ')}`)
  return found
}

const setField = (bench: Bench, key: string, value: number): void => {
  const field = offeredBy(bench).fields.find((one) => one.key === key)
  if (!field)
    throw new Error(
      `${key} is not among ${offeredBy(bench)
        .fields.map((one) => one.key)
        .join(', ')}`,
    )
  bench.step(key, (now) => field.set(now, value))
  bench.rest()
}

/** Drags a handle by so many mm across and along the sheet, in three moves. */
const drag = (bench: Bench, key: string, dx: number, dy: number): void => {
  const held = handle(bench, key)
  const [x, y] = held.at
  bench.hold(key)
  for (const part of [0.3, 0.7, 1]) bench.move((from) => held.drag(from, [x + part * dx, y + part * dy]))
  bench.release()
}

describe('a gesture', () => {
  test('a drag, keys and the number field give the same design', () => {
    const [dragged, keyed, typed] = [benchModel(beak, {}), benchModel(beak, {}), benchModel(beak, {})]
    drag(dragged, 'beak/slit-end', 5, 0)
    for (let k = 0; k < 5; k++) {
      const now = handle(keyed, 'beak/slit-end')
      const to = nudged(now, { right: 1, up: 0, by: 1 })
      keyed.step('beak/slit-end', (state) => now.drag(state, to))
    }
    setField(typed, 'beak.cut', 43)
    expect(keyed.design.value).toEqual(dragged.design.value)
    expect(typed.design.value).toEqual(dragged.design.value)
    expect(number(dragged, 'jaw', 'cut')).toBe(43)
  })

  test('many moves between two pictures cause one new state', () => {
    const frames = handFrames()
    const bench = benchModel(beak, {}, { frames })
    let states = 0
    const stop = effect(() => {
      bench.measured.value
      states++
    })
    const held = handle(bench, 'beak/slit-end')
    bench.hold('beak/slit-end')
    for (let k = 1; k <= 20; k++) bench.move((from) => held.drag(from, [38 + k / 2, 70 + k / 4]))
    expect(states).toBe(1)
    frames.show(16)
    expect(states).toBe(2)
    expect(frames.asked).toBe(1)
    expect(number(bench, 'beak', 'cut')).toBe(48)
    expect(number(bench, 'beak', 'lean')).toBe(5)
    stop()
  })

  test('it ends where the hand was, even if the last move was not shown', () => {
    const bench = benchModel(beak, {}, { frames: handFrames() })
    const held = handle(bench, 'beak/slit-end')
    bench.hold('beak/slit-end')
    bench.move((from) => held.drag(from, [50, 70]))
    bench.release()
    expect(number(bench, 'beak', 'cut')).toBe(50)
    expect(bench.held.value).toBeNull()
  })

  test('the way to a place does not matter, only the place', () => {
    const [straight, round] = [benchModel(beak, {}), benchModel(beak, {})]
    drag(straight, 'beak/apex', 0, 8)
    const held = handle(round, 'beak/apex')
    round.hold('beak/apex')
    for (const y of [30, 148, 60, 118]) round.move((from) => held.drag(from, [0, y]))
    round.release()
    expect(round.design.value).toEqual(straight.design.value)
  })

  test('escape brings back what was there, and leaves nothing to undo', () => {
    const bench = benchModel(beak, {})
    const held = handle(bench, 'beak/slit-end')
    bench.hold('beak/slit-end')
    bench.move((from) => held.drag(from, [60, 70]))
    bench.cancel()
    expect(bench.design.value).toBe(beak)
    expect(bench.canUndo.value).toBe(false)
  })

  test('a bench that is dropped in mid-drag does nothing more', () => {
    const frames = handFrames()
    const bench = benchModel(beak, {}, { frames })
    const held = handle(bench, 'beak/slit-end')
    bench.hold('beak/slit-end')
    bench.move((from) => held.drag(from, [60, 70]))
    bench.dispose()
    frames.show(16)
    expect(bench.design.value).toBe(beak)
    expect(bench.held.value).toBeNull()
  })
})

describe('the numbers', () => {
  test('slit and wedge: set one, the other follows', () => {
    const bench = benchModel(beak, {})
    setField(bench, 'beak.wedge', 45)
    expect(number(bench, 'beak', 'cut')).toBeCloseTo(40, 3)
    setField(bench, 'beak.cut', 30)
    // tan(wedge) = slit / run
    expect(number(bench, 'beak', 'wedge')).toBeCloseTo((Math.atan2(30, 40) * 180) / Math.PI, 9)
  })

  test('the apex moves alone: the slit stays where it is, for both halves of the beak', () => {
    const bench = benchModel(beak, {})
    setField(bench, 'beak.apex', 120)
    expect(number(bench, 'beak', 'apex') + number(bench, 'beak', 'run')).toBeCloseTo(70, 9)
    expect(bench.design.value.mechanisms[1]).toEqual(beak.mechanisms[1])
  })

  test('a value outside its range goes to the end of it', () => {
    const bench = benchModel(beak, {})
    setField(bench, 'beak.cut', 5000)
    expect(number(bench, 'beak', 'cut')).toBe(105)
  })

  test('a rule that ties two fields together is kept', () => {
    const bench = benchModel(layer, {})
    setField(bench, 'body.start', 120)
    expect(number(bench, 'body', 'end')).toBeGreaterThanOrEqual(number(bench, 'body', 'start'))
  })

  test('a chapter that names a field or handle which is not there is told so', () => {
    expect(() => offeredBy(benchModel(beak, { fields: [{ id: 'beak', field: 'wing' }] }))).toThrow(
      'beak has no wing',
    )
    expect(() => benchModel(beak, { handles: [{ id: 'owl', handle: 'apex' }] }).handles.value).toThrow(
      'there is no handle owl apex',
    )
  })
})

describe('the handles', () => {
  test('a shared slit has one handle, not two on top of each other', () => {
    const places = benchModel(beak, {}).handles.value.map(({ at }) => at.join())
    expect(new Set(places).size).toBe(places.length)
  })

  test('keys move a handle the way they point on the screen', () => {
    const bench = benchModel(dummy('lantern'), {})
    const left = handle(bench, 'body/left-fold')
    expect(nudged(left, { right: -1, up: 0, by: 1 })[0]).toBeLessThan(left.at[0])
    expect(nudged(left, { right: 1, up: 0, by: 1 })[0]).toBeGreaterThan(left.at[0])
    const apex = handle(benchModel(beak, {}), 'beak/apex')
    expect(nudged(apex, { right: 0, up: 1, by: 10 })[1]).toBeCloseTo(apex.at[1] + 10, 9)
  })

  test('home and end stay on the card', () => {
    const bench = benchModel(beak, {})
    const slit = handle(bench, 'beak/slit-end')
    bench.step('slit', (state) => slit.drag(state, toEnd(state.design, slit, 1)))
    expect(number(bench, 'beak', 'cut')).toBe(105)
    bench.step('slit', (state) => slit.drag(state, toEnd(state.design, slit, -1)))
    expect(number(bench, 'beak', 'cut')).toBe(0)
  })

  test('a shared slit dragged level with an apex stops a millimetre before it, and the card still opens flat', () => {
    for (const along of [36, 36.4, 78, 105, 110, 145, 0]) {
      const bench = benchModel(beak, {})
      drag(bench, 'beak/slit-end', -8, along - handle(bench, 'beak/slit-end').at[1])
      for (const m of bench.design.value.mechanisms) {
        const outward =
          Math.sign(number(bench, m.id, 'run')) * (number(bench, m.id, 'run') + number(bench, m.id, 'lean'))
        expect(outward).toBeGreaterThanOrEqual(1 - 1e-9)
      }
      const flat = check(bench.design.value, { repairs: false }).filter(({ name }) => name === 'opens-flat')
      expect(flat.every(({ ok }) => ok)).toBe(true)
    }
  })

  test('a handle stops where it would push another one off the card', () => {
    const bench = benchModel(beak, {})
    // Its side fold turned level: the slit would have to be endless.
    drag(bench, 'beak/fold-line', 0, 200)
    const { width } = bench.design.value.card
    expect(number(bench, 'beak', 'cut')).toBeLessThanOrEqual(width)
    expect(number(bench, 'beak', 'cut')).toBeGreaterThan(width - 2)
    // What is off the card already may be dragged back.
    const wide = benchModel(beak, {})
    wide.step('slit', (state) => ({ ...state, design: change(state.design, 'beak', { cut: 120 }) }))
    drag(wide, 'beak/slit-end', -60, 0)
    expect(number(wide, 'beak', 'cut')).toBeLessThan(105)
  })

  test('the point of a bare card is dragged on its own page only', () => {
    const bench = benchModel(bare, bareConfig)
    drag(bench, 'point/point', -200, 10)
    expect(bench.state.value.point).toEqual([0, 90])
    // A chord: at 60 degrees as long as the radius.
    setField(bench, 'point.across', 50)
    expect(bench.readings.value[0]?.value).toBeCloseTo(50, 9)
  })
})

describe('undo and redo', () => {
  test('one entry for a drag, one for a run of keys, and back to the very design', () => {
    const bench = benchModel(beak, {})
    drag(bench, 'beak/slit-end', 5, 0)
    const dragged = bench.design.value
    for (let k = 0; k < 4; k++) bench.step('opening', (now) => opened(now, now.opening + 1))
    bench.rest()
    expect(bench.state.value.opening).toBe(94)
    bench.undo()
    expect(bench.state.value.opening).toBe(90)
    expect(bench.design.value).toBe(dragged)
    bench.undo()
    expect(bench.design.value).toBe(beak)
    expect(bench.canUndo.value).toBe(false)
    bench.redo()
    bench.redo()
    expect(bench.state.value).toMatchObject({ opening: 94, design: dragged })
    expect(bench.canRedo.value).toBe(false)
  })

  test('looking from elsewhere and moving the section are no steps, and undo leaves them', () => {
    const bench = benchModel(beak, {})
    drag(bench, 'beak/slit-end', 5, 0)
    bench.step('camera', (now) => seenFrom(now, { turn: 190, tilt: 99 }))
    bench.step('section', (now) => cutAt(now, 40))
    bench.undo()
    expect(bench.state.value).toMatchObject({ design: beak, camera: { turn: -170, tilt: 90 }, station: 40 })
  })

  test('a new step forgets what could have been redone', () => {
    const bench = benchModel(beak, {})
    drag(bench, 'beak/slit-end', 5, 0)
    bench.undo()
    drag(bench, 'beak/slit-end', 2, 0)
    expect(bench.canRedo.value).toBe(false)
  })

  test('start again can itself be undone', () => {
    const bench = benchModel(beak, {})
    drag(bench, 'beak/slit-end', 5, 0)
    const dragged = bench.design.value
    bench.reset()
    expect(bench.state.value).toEqual(bench.start)
    bench.undo()
    expect(bench.design.value).toBe(dragged)
  })
})

describe('playing', () => {
  test('it swings smoothly from where it is to flat, to shut and back, and leaves nothing to undo', () => {
    const frames = handFrames()
    const bench = benchModel(beak, {}, { frames })
    bench.play()
    const seen: number[] = []
    for (let time = 1000; time < 8100; time += 16) {
      frames.show(time)
      seen.push(bench.state.value.opening)
    }
    expect(seen[0]).toBe(90)
    expect(Math.max(...seen)).toBe(180)
    expect(Math.min(...seen)).toBe(0)
    for (let k = 1; k < seen.length; k++)
      expect(Math.abs((seen[k] as number) - (seen[k - 1] as number))).toBeLessThan(2)
    expect(bench.canUndo.value).toBe(false)
    bench.pause()
    const rested = bench.state.value.opening
    frames.show(9000)
    expect(bench.state.value.opening).toBe(rested)
  })

  test('a hand on the opening stops it', () => {
    const bench = benchModel(beak, {}, { frames: handFrames() })
    bench.play()
    bench.step('opening', (now) => opened(now, 30))
    expect(bench.playing.value).toBe(false)
  })
})

describe('checks', () => {
  test('a repair is applied as it was offered, mends the check, and can be undone', () => {
    const bench = benchModel(beak, {})
    setField(bench, 'beak.cut', 104)
    bench.examine(check, false)
    const failed = () => (bench.checks.value ?? []).filter(({ ok }) => !ok)
    expect(failed().length).toBeGreaterThan(0)
    bench.examine(check, true)
    const [first] = failed()
    const repair = first?.repair
    if (!first || !repair) throw new Error('the kernel offers no repair for a slit that is far too long')
    bench.repair(repair)
    expect(number(bench, repair.id, repair.field)).toBeCloseTo(repair.to, 3)
    expect(check(bench.design.value).filter(({ name, ok }) => name === first.name && !ok)).toEqual([])
    bench.undo()
    expect(number(bench, 'beak', 'cut')).toBe(104)
  })

  test('readings are the kernel’s own', () => {
    const bench = benchModel(beak, { readings: ['rise', 'reach', 'stand-off', 'gape', 'margin'] })
    const wanted = measure(change(beak, 'beak', { cut: 44 }), 90)
    setField(bench, 'beak.cut', 44)
    const { rise, reach, standOff } = wanted.tips.beak ?? {}
    expect(bench.readings.value.map(({ value }) => value)).toEqual([
      rise,
      reach,
      standOff,
      wanted.gapes[0]?.gape,
      wanted.margin,
    ])
  })
})
