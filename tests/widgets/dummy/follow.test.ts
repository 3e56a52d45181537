import { describe, expect, test } from 'vitest'
import type { Design } from '../../../src/paper/index.ts'
import { parseDesign } from '../../../src/paper/index.ts'
import type { Dummy } from '../../../src/widgets/dummy/model/dummy-model.ts'
import { dummyModel } from '../../../src/widgets/dummy/model/dummy-model.ts'
import { depthsOf, followed } from '../../../src/widgets/dummy/model/follow.ts'
import type { History } from '../../../src/widgets/keeping/history.ts'
import { begun, present } from '../../../src/widgets/keeping/history.ts'
import { NO_FRAMES } from '../../../src/widgets/model/frames.ts'

const card = (title: string): Design =>
  parseDesign({ hingebook: 1, title, card: { width: 105, height: 148 }, mechanisms: [] })

/** A dummy, and the history that follows it as the page keeps it. */
function kept(start: Design): { readonly dummy: Dummy; readonly history: () => History } {
  const dummy = dummyModel(start, NO_FRAMES)
  let history = begun(start)
  let depths = depthsOf(dummy.past.value)
  return {
    dummy,
    history: () => {
      const now = depthsOf(dummy.past.value)
      history = followed(history, depths, now, { design: dummy.bench.design.value, aside: dummy.aside.value })
      depths = now
      return history
    },
  }
}

const titles = ({ steps, at }: History) =>
  steps.map(({ design }, k) => `${design.title}${k === at ? ' <' : ''}`)

describe('the history that is kept', () => {
  test('follows steps, undo and redo', () => {
    const { dummy, history } = kept(card('a'))
    dummy.put(card('b'), '')
    history()
    dummy.put(card('c'), '')
    expect(titles(history())).toEqual(['a', 'b', 'c <'])
    dummy.bench.undo()
    expect(titles(history())).toEqual(['a', 'b <', 'c'])
    dummy.bench.redo()
    expect(titles(history())).toEqual(['a', 'b', 'c <'])
    dummy.bench.undo()
    history()
    dummy.put(card('d'), '')
    expect(titles(history())).toEqual(['a', 'b', 'd <'])
  })

  test('counts a drag as one step, however many pictures it has', () => {
    const { dummy, history } = kept(card('a'))
    dummy.bench.hold('x')
    for (const title of ['b', 'c', 'd']) {
      dummy.bench.move((now) => ({ ...now, design: card(title) }))
      history()
    }
    dummy.bench.release()
    expect(titles(history())).toEqual(['a', 'd <'])
    dummy.bench.hold('x')
    dummy.bench.move((now) => ({ ...now, design: card('e') }))
    history()
    dummy.bench.release()
    expect(titles(history())).toEqual(['a', 'd', 'e <'])
  })

  test('a dummy that is laid on the table can be undone and redone as it was left', () => {
    const { dummy, history } = kept(card('a'))
    for (const title of ['b', 'c']) {
      dummy.put(card(title), '')
      history()
    }
    dummy.bench.undo()
    const left = history()
    const later = dummyModel(card('z'), NO_FRAMES)
    later.lay(left)
    expect(later.bench.design.value).toBe(present(left).design)
    later.bench.redo()
    expect(later.bench.design.value.title).toBe('c')
    later.bench.undo()
    later.bench.undo()
    expect(later.bench.design.value.title).toBe('a')
    expect(later.bench.canUndo.value).toBe(false)
  })
})
