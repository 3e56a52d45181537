import { describe, expect, test } from 'vitest'
import { check } from '../../src/paper/index.ts'
import type { Goal } from '../../src/widgets/challenge/judge.ts'
import { judge, measuresOf } from '../../src/widgets/challenge/judge.ts'
import { benchFields } from '../../src/widgets/state/fields.ts'
import type { BenchState } from '../../src/widgets/state/state.ts'
import { opened, startState } from '../../src/widgets/state/state.ts'
import { bare, bareConfig, beak, layer } from './benches.ts'

const set = (state: BenchState, key: string, value: number): BenchState => {
  const field = benchFields(state.design, {}).find((one) => one.key === key)
  if (!field) throw new Error(`no ${key}`)
  return field.set(state, value)
}

const says = (goal: Goal, state: BenchState, config = {}) =>
  judge(goal, state, config, check(state.design, { repairs: false }))

describe('a challenge', () => {
  test('tells what it has the bench measure', () => {
    expect(measuresOf({ measure: 'rise', atLeast: 3 })).toEqual(['rise'])
    expect(measuresOf({ sound: true })).toEqual([])
    expect(
      measuresOf({
        all: [{ sound: true }, { all: [{ measure: 'gape', atMost: 3 }] }, { measure: 'field', field: 'cut' }],
      }),
    ).toEqual(['gape', 'field'])
  })

  // The rise of a layer is its depth times the sine of the opening: 34 mm at 90 degrees.
  const start = startState(layer, {})

  test('says what is and how far it is to go, from the middle where it lies between two', () => {
    expect(says({ measure: 'rise', at: 90, between: [37.5, 38.5] }, start)).toEqual({
      done: false,
      says: 'Rise is 34.0\u00a0mm at 90°. It needs 4.0\u00a0mm more.',
    })
    expect(says({ measure: 'rise', atMost: 30 }, start)).toEqual({
      done: false,
      says: 'Rise is 34.0\u00a0mm. That is 4.0\u00a0mm too much.',
    })
  })

  test('is done when the number lies within its bounds, ends included', () => {
    expect(says({ measure: 'rise', at: 90, between: [34, 35] }, start).done).toBe(true)
    expect(says({ measure: 'rise', at: 90, atLeast: 34 }, start)).toEqual({
      done: true,
      says: 'Rise is 34.0\u00a0mm at 90°.',
    })
  })

  test('a number that is shown as the bound counts as the bound', () => {
    const state = set(start, 'body.depth', 33.96)
    expect(says({ measure: 'rise', at: 90, atLeast: 34 }, state).done).toBe(true)
  })

  test('is judged at the opening it names, whatever the screen shows', () => {
    const shut = opened(start, 10)
    expect(says({ measure: 'rise', at: 90, atLeast: 34 }, shut).done).toBe(true)
    expect(says({ measure: 'rise', atLeast: 34 }, shut).done).toBe(false)
  })

  test('several goals tell only what is still open, then all that is reached', () => {
    const goal: Goal = {
      all: [
        { measure: 'rise', at: 90, atLeast: 34 },
        { measure: 'margin', atLeast: 50 },
      ],
    }
    const verdict = says(goal, start)
    expect(verdict.done).toBe(false)
    expect(verdict.says).not.toContain('Rise')
    expect(verdict.says).toContain('It needs')
  })

  test('a field of the design can be asked for', () => {
    const goal: Goal = { measure: 'field', id: 'beak', field: 'cut', atMost: 30 }
    expect(says(goal, startState(beak, {}))).toEqual({
      done: false,
      says: 'Slit is 38.0\u00a0mm. That is 8.0\u00a0mm too much.',
    })
  })

  test('a number that the chapter names is told by that name', () => {
    const goal: Goal = { measure: 'field', id: 'beak', field: 'cut', atMost: 30 }
    const config = { fields: [{ id: 'beak', field: 'cut', label: 'Beak: depth of the slit' }] }
    expect(says(goal, startState(beak, config), config).says).toBe(
      'Beak: depth of the slit 38.0\u00a0mm. That is 8.0\u00a0mm too much.',
    )
  })

  test('of two parts it is said whose number it is', () => {
    const goal: Goal = {
      all: [
        { measure: 'rise', id: 'beak', at: 90, atLeast: 90 },
        { measure: 'rise', id: 'jaw', at: 90, atLeast: 90 },
      ],
    }
    expect(says(goal, startState(beak, {})).says).toMatch(
      /^Rise of the beak is [\d.]+\u00a0mm at 90°\. It needs [\d.]+\u00a0mm more\. Rise of the jaw is /,
    )
  })

  test('of one part it is said without its name, as the bench reads it, though the margin is asked for too', () => {
    const goal: Goal = {
      all: [
        { measure: 'rise', id: 'beak', at: 90, atLeast: 90 },
        { measure: 'margin', atLeast: 90 },
      ],
    }
    expect(says(goal, startState(beak, {})).says).toMatch(/^Rise is /)
  })

  test('where how far it is to go would be the answer, it says only what is true now', () => {
    const goal: Goal = { measure: 'field', id: 'beak', field: 'cut', atMost: 30, quiet: true }
    expect(says(goal, startState(beak, {}))).toEqual({ done: false, says: 'Slit is 38.0\u00a0mm.' })
  })

  test('sound paper is judged by the kernel’s checks, and is not known without them', () => {
    const unsound = set(startState(beak, {}), 'beak.cut', 104)
    expect(says({ sound: true }, startState(beak, {})).done).toBe(true)
    expect(says({ sound: true }, unsound).done).toBe(false)
    expect(judge({ sound: true }, unsound, {}, null).done).toBe(false)
  })

  test('the gap of a bare card is a chord', () => {
    const verdict = says({ measure: 'gape', between: [59.5, 60.5] }, startState(bare, bareConfig), bareConfig)
    expect(verdict).toEqual({ done: true, says: 'Gap is 60.0\u00a0mm.' })
  })

  test('a goal that the bench cannot measure is a mistake of the chapter', () => {
    expect(() => says({ measure: 'gape', atLeast: 1 }, start)).toThrow('asks for gape')
    expect(() => says({ measure: 'field', id: 'body', field: 'wing', atLeast: 1 }, start)).toThrow(
      'asks for wing',
    )
  })

  test('lengths are told in inches to who asked for inches', () => {
    const verdict = judge({ measure: 'rise', at: 90, atLeast: 40 }, start, {}, [], 'in')
    expect(verdict.says).toBe('Rise is 1.34\u00a0in at 90°. It needs 0.24\u00a0in more.')
  })
})
