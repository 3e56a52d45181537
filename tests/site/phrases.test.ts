// What the prose drives: each phrase does what it says, and its own words name the numbers it sets.
import { describe, expect, test } from 'vitest'
import { check, measure, settingOf } from '../../src/paper/index.ts'
import type { Leaf } from '../../src/site/cells/grammar.ts'
import type { PhraseMove } from '../../src/widgets/model/moved.ts'
import { onTheWay, phraseHolds, phraseState } from '../../src/widgets/phrase/phrase-state.ts'
import { startState } from '../../src/widgets/state/state.ts'
import { all, attribute, chapter, dummy, plain, slugs, sourceOf } from './chapters.ts'

const move = (node: Leaf): PhraseMove =>
  Object.fromEntries(
    ['opening', 'id', 'set', 'across'].flatMap((name) => {
      const value = attribute(node, name)
      return value === undefined ? [] : [[name, value]]
    }),
  )

describe.each(slugs)('%s', (slug) => {
  const { tree, design, config } = chapter(slug)
  const start = startState(design, config)
  const phrases = all(tree, 'Phrase')

  test('drives its card from its text, before the guess, in the answer or in Why', () => {
    const where = (cell: string) => all(tree, cell).flatMap((one) => all(one, 'Phrase')).length
    expect(where('TryIt')).toBeGreaterThanOrEqual(1)
    expect(where('Answer') + where('Why')).toBeGreaterThanOrEqual(3)
    // The question and the guesses move nothing: that would tell.
    expect(all(tree, 'Guess').flatMap((one) => all(one, 'Phrase'))).toEqual([])
  })

  test('says in words what each phrase sets', () => {
    for (const phrase of phrases) {
      const { opening, id, set = {}, across } = move(phrase)
      const words = plain(phrase)
      const mechanism = design.mechanisms.find((m) => m.id === id)
      // The size itself, or how much it differs from the card that the chapter begins with.
      const meant = Object.entries(set).flatMap(([name, value]) =>
        mechanism && typeof value === 'number' && name !== 'toward'
          ? [value, Math.round(Math.abs(value - settingOf(mechanism, name)) * 1000) / 1000]
          : [],
      )
      for (const [, number, unit] of words.matchAll(/(\d+(?:\.\d+)?)\s*(mm|°)/g)) {
        const known = [...meant, ...(unit === '°' ? [opening] : [across])]
        expect(known, `${words}: ${JSON.stringify(move(phrase))}`).toContain(Number(number))
      }
      expect(words, 'short enough for a button').toMatch(/^.{3,40}$/)
    }
  })

  test('asks for states that differ from the first one, and that hold once they are reached', () => {
    for (const phrase of phrases) {
      const asked = move(phrase)
      const there = phraseState(start, start, asked)
      expect(there, plain(phrase)).not.toEqual(start)
      expect(phraseHolds(there, there, asked)).toBe(true)
      expect(phraseHolds(start, there, asked), plain(phrase)).toBe(false)
    }
  })

  test('goes from one state to the other, ends included', () => {
    for (const phrase of phrases) {
      const asked = move(phrase)
      const there = phraseState(start, start, asked)
      expect(onTheWay(start, there, start, asked, 1)).toBe(there)
      const first = onTheWay(start, there, start, asked, 0)
      expect(first.opening).toBe(start.opening)
      const half = onTheWay(start, there, start, asked, 0.5)
      expect(half.opening).toBeCloseTo((start.opening + there.opening) / 2, 1)
      for (const [name, value] of Object.entries(asked.set ?? {})) {
        const [from, at] = [start, half].map(({ design }) => {
          const m = design.mechanisms.find(({ id }) => id === asked.id)
          return m && typeof value === 'number' && name !== 'toward' ? settingOf(m, name) : null
        })
        if (typeof value === 'number' && typeof from === 'number')
          expect(at, plain(phrase)).toBeCloseTo((from + value) / 2, 6)
      }
    }
  })

  test('moves the reader’s card only as far as it says: an opening leaves all sizes alone', () => {
    for (const phrase of phrases) {
      const asked = move(phrase)
      if (asked.set === undefined) expect(phraseState(start, start, asked).design).toBe(design)
      else expect(phraseState(start, start, asked).design).not.toBe(design)
    }
  })
})

test('a phrase speaks of the chapter’s own card, whatever the reader has made of it', () => {
  const { design, config } = chapter('one-slit-two-v-folds')
  const start = startState(design, config)
  const readers = phraseState(start, start, { id: 'beak', set: { lean: 10 } })
  const there = phraseState(readers, start, { id: 'beak', set: { cut: 52 }, opening: 90 })
  const beak = there.design.mechanisms.find(({ id }) => id === 'beak')
  expect(beak && settingOf(beak, 'lean')).toBe(0)
  expect(beak && settingOf(beak, 'cut')).toBe(52)
  // The jaw shares the slit, so it goes along.
  const jaw = there.design.mechanisms.find(({ id }) => id === 'jaw')
  expect(jaw && settingOf(jaw, 'cut')).toBe(52)
})

test('a phrase that names what is not there is refused by name', () => {
  const { design, config } = chapter('one-slit-two-v-folds')
  const start = startState(design, config)
  expect(() => phraseState(start, start, { id: 'beak', set: { depth: 9 } })).toThrow('beak has no depth')
  expect(() => phraseState(start, start, { id: 'wing', set: { cut: 9 } })).toThrow('wing')
})

describe.each(slugs)('the recall of %s', (slug) => {
  const { tree } = chapter(slug)
  const number = Number(/^number: (\d+)$/m.exec(sourceOf(slug))?.[1])
  const questions = all(tree, 'Question')

  test('asks of this chapter and of an earlier one', () => {
    expect(questions.length).toBe(2)
    const from = questions.map((one) => attribute(one, 'from')).filter((one) => one !== undefined)
    expect(from.length).toBe(number === 1 ? 0 : 1)
    for (const earlier of from)
      expect(Number(/^number: (\d+)$/m.exec(sourceOf(String(earlier)))?.[1])).toBeLessThan(number)
  })

  test('has one right answer to each question, and not always in the same place', () => {
    for (const question of questions)
      expect(all(question, 'Guess').filter((one) => attribute(one, 'right') !== undefined).length).toBe(1)
  })
})

test('the right answers of the recall do not all stand in one place', () => {
  const places = slugs.flatMap((slug) =>
    all(chapter(slug).tree, 'Question').map((question) =>
      all(question, 'Guess').findIndex((one) => attribute(one, 'right') !== undefined),
    ),
  )
  expect(new Set(places).size).toBe(3)
})

test('the mouth shuts as the card opens, and it works as paper', () => {
  const mouth = dummy('mouth')
  expect(check(mouth).filter(({ ok }) => !ok)).toEqual([])
  const apart = (opening: number) => {
    const { lower, upper } = measure(mouth, opening).tips
    return (upper?.reach ?? 0) - (lower?.reach ?? 0)
  }
  // Flat open each ridge lies along the gutter: 108 mm between the apexes less twice 50 mm. Shut, base and facet
  // angle are a right angle together: each tip lies straight out from its own apex.
  expect(apart(180)).toBeCloseTo(108 - 2 * 50, 6)
  expect(apart(0)).toBeCloseTo(108, 6)
  expect(apart(60)).toBeGreaterThan(apart(150))
})
