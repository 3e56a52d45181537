// The question that stands for a measure which answers the guess.
import { expect, test } from 'vitest'
import type { WordMark } from '../../src/drawing/pen/marks.ts'
import { view } from '../../src/drawing/view/view.ts'
import { veiled } from '../../src/widgets/figures/veil.ts'
import { chapter } from '../site/chapters.ts'

test.each([15, 53])('stands at the foot of the line, off the face above it: words of %d px', (text) => {
  const { design } = chapter('one-slit-two-v-folds')
  const { marks } = view(
    design,
    96,
    { turn: -13, tilt: 10 },
    { width: 897, height: 684 },
    {
      ...{ stand: 'edge', rise: ['beak'], text },
    },
  )
  const dot = (name: string) => {
    const mark = marks.find((one) => one.mark === 'dot' && one.of === `beak/${name}`)
    if (mark?.mark !== 'dot') throw new Error(`no dot at the ${name}`)
    return mark.at
  }
  const [question] = veiled(marks).filter(
    (mark): mark is WordMark => mark.mark === 'word' && mark.of === 'veil',
  )
  if (!question) throw new Error('no question')
  expect(question.text).toBe('?')
  const [[x, y], [left, base]] = [dot('rise'), question.at]
  expect(left).toBeGreaterThan(Math.max(x, dot('tip')[0]))
  expect(base - 0.74 * text).toBeGreaterThan(y - 0.1 * text)
  expect(Math.hypot(left - x, base - y)).toBeLessThan(1.1 * text)
})
