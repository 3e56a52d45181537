import { expect, test } from 'vitest'
import { textOf, treeFiles } from './tree.ts'

/** Folders of one machine, and hosts that packages are fetched from. Written so that this file does not match. */
const PLACES = [
  /(?<![\w.~@-])\/(?:work|tmp|root|home|Users|mnt)\/[\w.-]/,
  /\bC:\\\\?Users\b/,
  /registry\.[\w-]+\.(?:org|com)\b/,
  /"resolved":\s*"http/,
  /deb\.[d]ebian\.org/,
  /\b(?:10\.\d+|192\.168)\.\d+\.\d+:\d+/,
]

/** `line: text` of every place named. */
const placesIn = (text: string): string[] =>
  text.split('\n').flatMap((line, k) => {
    const match = PLACES.map((place) => place.exec(line)?.[0]).find((found) => found !== undefined)
    return match === undefined ? [] : [`${k + 1}: ${match}`]
  })

test('no committed file names a folder of one machine or a host of packages', () => {
  const text = treeFiles().filter((file) => !/\.(png|jpe?g|webp|woff2?|ttf|pdf|ico)$/.test(file))
  expect(text.length).toBeGreaterThan(20)
  const own = 'tests/house/places.test.ts'
  const named = text
    .filter((file) => file !== own)
    .flatMap((file) => placesIn(textOf(file)).map((at) => `${file}:${at}`))
  expect(named).toEqual([])
})

test.each([
  "import x from '/home/me/card.ts'",
  'saved to /tmp/card.pdf',
  '"resolved": "https://example.org/a.tgz"',
  'fetched from registry.example.org',
  'http://192.168.1.20:4321',
])('a place would be found: %s', (text) => {
  expect(placesIn(text)).toHaveLength(1)
})

test.each(["from '../home/card.ts'", 'https://example.org/home/x', './tmp/x', 'src/work/x'])(
  'no place: %s',
  (text) => {
    expect(placesIn(text)).toEqual([])
  },
)
