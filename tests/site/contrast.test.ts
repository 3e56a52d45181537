import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { contrast, tokens } from './contrast.ts'

// WCAG 2.2: 1.4.6 asks 7:1 of words and 4.5:1 of large ones (14 pt bold counts); 1.4.11 asks 3:1 of lines.
const WORDS = 7

const LARGE_OR_PRESSED = 4.5

const LINES = 3

const all = tokens()

const themes = ['day', 'night'] as const

describe('the measure', () => {
  // Values worked out by others: the greys on white that just pass and just fail WCAG's thresholds.
  test.each([
    ['#767676', 4.5422],
    ['#777777', 4.4781],
    ['#949494', 3.0335],
    ['#959595', 2.9953],
    ['#000000', 21],
  ])('%s on white is %f', (grey, ratio) => {
    expect(contrast(grey, '#ffffff')).toBeCloseTo(ratio, 4)
  })

  test('reads every colour that the style sheet names', () => {
    const css = readFileSync(new URL('../../src/site/styles/tokens.css', import.meta.url), 'utf8')
    const named = [...css.matchAll(/--([\w-]+):\s*light-dark\(#/g)].map(([, name]) => name)
    expect(Object.keys(all).sort()).toEqual(named.sort())
    expect(named.length).toBeGreaterThan(10)
  })
})

const rules: readonly (readonly [token: string, ground: string, least: number, use: string])[] = [
  ['ink', 'ground', WORDS, 'words'],
  ['quiet', 'ground', WORDS, 'small words'],
  ['ink', 'good', WORDS, 'words on a check that holds'],
  ['red', 'ground', LARGE_OR_PRESSED, 'margin labels and dimensions, large and bold'],
  ['blue', 'ground', LARGE_OR_PRESSED, 'what is pressed or dragged'],
  ['blue', 'good', LARGE_OR_PRESSED, 'what is pressed beside a check that holds'],
  ['on-blue', 'blue', LARGE_OR_PRESSED, 'words on the first button'],
  ['ground', 'ink', WORDS, 'words on a pressed switch'],
  ['soft', 'ground', LINES, 'axes and edges'],
  ['soft', 'square', LINES, 'axes on squared paper'],
  ['card-0', 'ground', LINES, 'the base card'],
  ['blue', 'table', LINES, 'what is dragged, on the table'],
  ['blue', 'table-far', LINES, 'what is dragged, at the far end of the table'],
]

describe.each(themes)('by %s', (theme) => {
  test.each(rules)('%s on %s reaches %f: %s', (token, ground, least) => {
    const [a, b] = [all[token], all[ground]]
    if (!a || !b) throw new Error(`tokens.css has no ${token} or no ${ground}`)
    expect(contrast(a[theme], b[theme])).toBeGreaterThanOrEqual(least)
  })
})

test('the tokens are those of the look, but for quiet, which had to be darker than soft ink to reach 7:1', () => {
  expect(contrast('#555b78', '#fdfdfa')).toBeLessThan(WORDS)
  expect(Object.fromEntries(Object.entries(all).map(([name, { day }]) => [name, day]))).toMatchObject({
    ground: '#fdfdfa',
    ink: '#1a1d33',
    soft: '#555b78',
    rule: '#d5d9ea',
    square: '#dfe6f5',
    'margin-line': '#e58a96',
    red: '#c8102e',
    blue: '#1b4dd1',
    good: '#dff0e2',
    'card-0': '#39437f',
    'card-1': '#f4b942',
  })
})

test('a margin label is large text: 14 pt bold or more', () => {
  const css = readFileSync(new URL('../../src/site/styles/tokens.css', import.meta.url), 'utf8')
  const rem = Number(/--size-label:\s*([\d.]+)rem/.exec(css)?.[1])
  expect(rem * 16).toBeGreaterThanOrEqual((14 * 96) / 72)
})
