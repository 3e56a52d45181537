// What a lesson at the back of a room says, and what its keys mean.
import { describe, expect, it } from 'vitest'
import { veiled } from '../../src/widgets/figures/veil.ts'
import { headline, pressOf } from '../../src/widgets/projector/lesson.ts'

const task = 'Drag the slit.'
const ask = { asks: 'A longer slit: what will the tip do?', answer: 'It stands higher.' }
const said = { task, ask, asked: true, covered: false, was: '31.1 mm', now: '33.9 mm' }

describe('the headline', () => {
  it('is the task until something is asked', () => {
    expect(headline({ ...said, asked: false })).toBe(task)
    expect(headline({ task, asked: true, covered: true, was: '', now: '' })).toBe(task)
  })

  it('asks while the answer is covered', () => {
    expect(headline({ ...said, covered: true })).toBe(ask.asks)
  })

  it('answers, and keeps what was read before where it has changed', () => {
    expect(headline(said)).toBe('It stands higher. Was 31.1 mm.')
    expect(headline({ ...said, now: '31.1 mm' })).toBe('It stands higher.')
    expect(headline({ ...said, was: '' })).toBe('It stands higher.')
  })
})

const key = (name: string, more: object = {}) =>
  pressOf({ key: name, ctrlKey: false, metaKey: false, altKey: false, target: null, ...more })

/** An element of which only its kind is known. */
const target = (kind: string) => ({ matches: (selector: string) => selector.split(/,\s*/).includes(kind) })

describe('a key', () => {
  it.each([
    ['PageDown', 'next'],
    ['PageUp', 'back'],
    ['s', 'show'],
    ['S', 'show'],
    [' ', 'play'],
    ['Escape', 'end'],
    ['ArrowDown', null],
    ['x', null],
  ])('%s means %s', (name, press) => {
    expect(key(name)).toBe(press)
  })

  it('means nothing with a modifier: those are the browser’s', () => {
    for (const modifier of ['ctrlKey', 'metaKey', 'altKey']) expect(key('s', { [modifier]: true })).toBeNull()
  })

  it('is typed where one types, and pressed where one presses', () => {
    expect(key('s', { target: target('input[type="text"]') })).toBeNull()
    expect(key(' ', { target: target('button') })).toBeNull()
    expect(key('PageDown', { target: target('button') })).toBe('next')
    expect(key('s', { target: target('select') })).toBeNull()
    expect(key('PageDown', { target: target('select') })).toBe('next')
  })
})

describe('a covered measure', () => {
  const word = {
    mark: 'word',
    at: [5, 5],
    text: '31.1 mm',
    role: 'dimension',
    anchor: 'end',
    size: 20,
  } as const
  const tip = { mark: 'dot', at: [100, 50], radius: 5, role: 'dimension', of: 'beak/tip' } as const

  const foot = { mark: 'dot', at: [100, 90], radius: 3, role: 'dimension', of: 'beak/rise' } as const

  it('has a question beside the foot of its line, and not on the face at its tip', () => {
    const question = veiled([word, tip, foot]).at(-1)
    expect(question).toMatchObject({ mark: 'word', text: '?', of: 'veil' })
    if (question?.mark !== 'word') throw new Error('no word')
    expect(Math.hypot(question.at[0] - 100, question.at[1] - 90)).toBeLessThan(20)
  })

  it('without a line has it where its number would stand', () => {
    const question = veiled([word, tip]).at(-1)
    expect(question?.mark === 'word' && question.at).toEqual(word.at)
  })

  it('that is not there has none', () => {
    expect(veiled([tip])).toEqual([tip])
  })
})
