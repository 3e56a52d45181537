// Letters as a maker reads them: from the printed pages alone. Each page's SVG is read again by saxes, an XML
// parser, and a letter belongs to the piece whose cut outline is nearest to it, by plane geometry of its own.
import { readdirSync } from 'node:fs'
import { SaxesParser } from 'saxes'
import { describe, expect, test } from 'vitest'
import type { SheetLines } from '../../src/sheet/index.ts'
import { sheetSvg } from '../../src/sheet/index.ts'
import { dummy } from './designs.ts'

type Spot = readonly [number, number]

interface Word {
  readonly text: string
  readonly bold: boolean
  readonly of: string
  readonly at: Spot
}

interface Page {
  readonly words: readonly Word[]
  readonly outlines: readonly { readonly piece: string; readonly points: readonly Spot[] }[]
}

function read(svg: string): Page {
  const words: Word[] = []
  const outlines: { piece: string; points: Spot[] }[] = []
  const parser = new SaxesParser()
  let open: Omit<Word, 'text'> | null = null
  parser.on('opentag', ({ name, attributes }) => {
    const { class: look = '', 'data-of': of = '' } = attributes as Record<string, string>
    if (name === 'text')
      open = { bold: / bold/.test(look), of, at: [Number(attributes.x), Number(attributes.y)] }
    if (name === 'path' && /\bm-cut closed\b/.test(look)) {
      const points = [...String(attributes.d).matchAll(/[ML](\S+) ([\d.-]+)/g)].map(
        ([, x, y]): Spot => [Number(x), Number(y)],
      )
      outlines.push({ piece: of.replace(/\/piece$/, '').replaceAll(/[-/]/g, ' '), points })
    }
  })
  parser.on('text', (text) => {
    if (open && text.trim() !== '') words.push({ ...open, text })
  })
  parser.on('closetag', () => {
    open = null
  })
  parser.write(svg).close()
  return { words, outlines }
}

/** How far a point lies from an outline; 0 inside it (winding number). */
function distance([x, y]: Spot, points: readonly Spot[]): number {
  let winding = 0
  let least = Number.POSITIVE_INFINITY
  points.forEach(([ax, ay], k) => {
    const [bx, by] = points[(k + 1) % points.length] as Spot
    winding += Math.atan2(
      (ax - x) * (by - y) - (ay - y) * (bx - x),
      (ax - x) * (bx - x) + (ay - y) * (by - y),
    )
    const t = ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / ((bx - ax) ** 2 + (by - ay) ** 2 || 1)
    const s = Math.min(1, Math.max(0, t))
    least = Math.min(least, Math.hypot(x - ax - s * (bx - ax), y - ay - s * (by - ay)))
  })
  return Math.abs(winding) > Math.PI ? 0 : least
}

/** Which piece a letter stands at: the card has the first page to itself, and the cover the one that names it. */
function pieceAt(page: Page, k: number, spots: readonly Spot[]): string {
  if (k === 0) return 'card'
  if (page.words.some(({ text }) => /^(Inside|Outside) of the cover/.test(text))) return 'cover'
  const all = page.outlines.map(({ piece, points }) => ({
    piece,
    far: Math.min(...spots.map((at) => distance(at, points))),
  }))
  return all.reduce((a, b) => (b.far < a.far ? b : a)).piece
}

const isLetter = ({ text, bold, of }: Word): boolean =>
  bold && of !== '' && of !== 'name' && /^[A-Z]{1,2}$/.test(text)

/** The printed list of joints: letters in bold, and at their right what is stuck to what. */
function listed(pages: readonly Page[]): ReadonlyMap<string, readonly [string, string]> {
  const list = new Map<string, readonly [string, string]>()
  for (const { words } of pages) {
    let letters: string[] = []
    for (const { text, bold, of } of words) {
      if (of !== '') continue
      if (bold) letters = /^[A-Z]{1,2}( [A-Z]{1,2})*$/.test(text) ? text.split(' ') : letters
      const [, own, host] = /^(.+) (?:glued|taped) to (.+)$/.exec(text) ?? []
      if (own && host) for (const letter of letters) list.set(letter, [own, host])
    }
  }
  return list
}

const names = readdirSync(new URL('../../content/dummies/', import.meta.url))
  .filter((file) => file.endsWith('.hingebook.json'))
  .map((file) => file.replace('.hingebook.json', ''))

const ways: readonly SheetLines[] = ['front', 'ticks', 'back']

describe.each(names.flatMap((name) => ways.map((lines) => ({ name, lines }))))(
  '$name, $lines',
  ({ name, lines }) => {
    const design = dummy(name)
    const pages = sheetSvg(design, { paper: 'a4', lines }).map(read)
    const list = listed(pages)
    const found = pages.flatMap((page, k) =>
      page.words.flatMap((word, i) => {
        if (!isLetter(word)) return []
        const next = page.words[i + 1]
        const isNamed = next && !next.bold && next.of === word.of
        // A letter and its partner's name are one label.
        const piece = pieceAt(page, k, isNamed ? [word.at, next.at] : [word.at])
        return [{ letter: word.text, piece, partner: isNamed ? next.text : null }]
      }),
    )

    test('every letter stands at the two pieces that the list names, and at no other', () => {
      const glued = design.mechanisms.filter((m) => /^(glued|floating|rider)/.test(m.kind))
      expect(list.size > 0).toBe(glued.length > 0 || (design.card.cover === true && lines !== 'ticks'))
      // Of a good copy the letters of the cover have no twins, and the list says nothing of them.
      const told = found.filter(({ piece }) => lines !== 'ticks' || piece !== 'cover')
      expect(new Set(told.map(({ letter }) => letter))).toEqual(new Set(list.keys()))
      expect([...list.values()].some(([, host]) => host === 'cover')).toBe(
        design.card.cover === true && lines !== 'ticks',
      )
      for (const [letter, [own, host]] of list) {
        const at = found.filter((one) => one.letter === letter).map(({ piece }) => piece)
        if (host === 'cover') expect(new Set(at)).toEqual(new Set([own, host]))
        else expect([letter, ...at.sort()]).toEqual([letter, ...[own, host].sort()])
      }
    })

    test('a name beside a letter is that of the other piece', () => {
      for (const { letter, piece, partner } of found) {
        if (partner === null || (lines === 'ticks' && piece === 'cover')) continue
        const [own, host] = list.get(letter) ?? []
        expect([letter, partner]).toEqual([letter, piece === own ? host : own])
      }
    })
  },
)
