// Outside values: ISO 216:2007 and ANSI/ASME Y14.1 as published in printers' and encyclopaedias' tables;
// Unicode CLDR 48 for where letter paper is used.
import { expect, test } from 'vitest'
import { paperForLocale, paperNamed, paperOf, papers } from '../../src/sheet/index.ts'

/** ISO 216:2007: A0 is 841 x 1189; every next size is half the one before, cut across, rounded down. */
function isoA(n: number): readonly [number, number] {
  let [width, height] = [841, 1189]
  for (let k = 0; k < n; k++) [width, height] = [Math.floor(height / 2), width]
  return [width, height]
}

test.each([
  ['a3', 3],
  ['a4', 4],
  ['a5', 5],
] as const)('%s is A0 halved as ISO 216 says', (name, n) => {
  const { width, height } = paperOf(name)
  expect([width, height]).toEqual(isoA(n))
})

test('the halving rule gives the published A sizes', () => {
  // ISO 216:2007, table of the A series.
  expect([3, 4, 5].map(isoA)).toEqual([
    [297, 420],
    [210, 297],
    [148, 210],
  ])
})

test('A0 has one square metre and sides as 1 to the root of 2, to the standard’s tolerance of 3 mm', () => {
  // ISO 216: area 1 m², ratio 1 : √2; above 600 mm a side may be off by 3 mm.
  const height = Math.sqrt(1e6 * Math.SQRT2)
  const [w, h] = isoA(0)
  expect(Math.abs(h - height)).toBeLessThan(3)
  expect(Math.abs(w - height / Math.SQRT2)).toBeLessThan(3)
})

test.each([
  // ANSI/ASME Y14.1: A 8.5 x 11 in, B 11 x 17 in; legal 8.5 x 14 in is a trade size.
  ['letter', 215.9, 279.4],
  ['legal', 215.9, 355.6],
  ['tabloid', 279.4, 431.8],
] as const)('US %s is %d by %d mm', (name, width, height) => {
  expect(paperOf(name).width).toBeCloseTo(width, 9)
  expect(paperOf(name).height).toBeCloseTo(height, 9)
})

test('papers stand upright, each under its own name', () => {
  expect(new Set(papers.map(({ name }) => name)).size).toBe(papers.length)
  for (const paper of papers) {
    expect(paper.width).toBeLessThan(paper.height)
    expect(paperNamed(paper.name.toUpperCase())).toBe(paper)
  }
  expect(paperNamed('foolscap')).toBeUndefined()
})

// CLDR 48, supplemental/measurementData.json: "paperSize": US-Letter in BZ CA CL CO CR GT MX NI PA PH PR
// SV US VE, A4 in 001, the world.
test.each('BZ CA CL CO CR GT MX NI PA PH PR SV US VE'.split(' '))(
  'readers in %s have letter paper',
  (region) => {
    expect(paperForLocale(`es-${region}`)).toBe('letter')
  },
)

test.each(['en-GB', 'de-DE', 'de', 'fr-FR', 'pt-BR', 'es-AR', 'ja', 'en-AU', 'en-001', '', 'no locale', 'x'])(
  'readers of %o have A4',
  (locale) => {
    expect(paperForLocale(locale)).toBe('a4')
  },
)

test('a locale without a region is read as where most of its speakers live', () => {
  // CLDR likely subtags: en is en-Latn-US, es is es-Latn-ES, fil is fil-Latn-PH.
  expect([paperForLocale('en'), paperForLocale('es'), paperForLocale('fil')]).toEqual([
    'letter',
    'a4',
    'letter',
  ])
})
