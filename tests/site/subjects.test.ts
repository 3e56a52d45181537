// The index, made of the book's own texts: all that it should lead to is there, in the order of an alphabet.
import { readdirSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import faults from '../../content/faults.json' with { type: 'json' }
import glossary from '../../content/glossary.json' with { type: 'json' }
import { byLetter, sortedBy, subjectAnchor, subjectsOf, thingsIn } from '../../src/site/subjects.ts'

const folder = new URL('../../content/chapters/', import.meta.url)

const chapters = readdirSync(folder).map((file) => {
  const body = readFileSync(new URL(file, folder), 'utf8')
  const line = (name: string) => new RegExp(`^${name}: (.*)$`, 'm').exec(body)?.[1] ?? ''
  return {
    number: Number(line('number')),
    title: line('title'),
    href: `/chapters/${file.replace('.mdx', '')}/`,
    materials: line('materials').slice(1, -1).split(', '),
    body,
  }
})

const signs = Object.entries(faults).map(([id, { see }]) => ({ id, see }))

const subjects = subjectsOf(
  chapters.toSorted((a, b) => a.number - b.number),
  glossary,
  signs,
  [{ name: 'Tent', places: [{ label: 'beside the others', href: '/choose/#tent' }] }],
)

const places = (name: string): readonly string[] =>
  subjects.find((one) => one.name === name)?.places.map(({ href }) => href) ?? []

/** Where the cells of a chapter are found on its page. */
const ANCHORS: Readonly<Record<string, string>> = {
  TryIt: 'try-it',
  Predict: 'predict',
  Why: 'why',
  MakeIt: 'make-it',
  MeasureYours: 'measure-yours',
  Challenge: 'challenge',
  GoesWrong: 'when-it-goes-wrong',
  Recall: 'do-you-remember',
  ForTeachers: 'for-teachers',
}

test('every word of the trade leads to its meaning, and to the first cell of each chapter that speaks of it', () => {
  let count = 0
  for (const { id, forms } of glossary) {
    expect(places(id)[0], id).toBe(`/words/#${id.replaceAll(' ', '-')}`)
    const said = [id, ...(forms ?? [])].join('|')
    const term = new RegExp(`<Term>(?:${said})</Term>|<Term word="(?:${said})">`, 'i')
    for (const { body, href } of chapters) {
      const at = body.search(term)
      const there = places(id).filter((place) => place.startsWith(`${href}#`) && place !== `${href}#make-it`)
      const [, cell = ''] =
        [...body.slice(0, Math.max(0, at)).matchAll(/^<(\w+)>$/gm)].findLast(
          ([, name = '']) => name in ANCHORS,
        ) ?? []
      const first = at < 0 ? [] : [`${href}#${ANCHORS[cell]}`]
      count += first.length
      // A thing on the table may have its place in Make it besides.
      expect(there, `${id} in ${href}`).toEqual(first.filter((place) => place !== `${href}#make-it`))
      for (const place of first) expect(places(id)).toContain(place)
    }
  }
  expect(count).toBeGreaterThan(60)
})

test('every material leads to where it is needed', () => {
  expect(thingsIn('dry ball pen or a spoon')).toEqual(['dry ball pen', 'spoon'])
  expect(thingsIn('card for the card and its cover')).toEqual(['card'])
  expect(thingsIn('a book with square corners')).toEqual(['book'])
  for (const { href, materials } of chapters)
    for (const material of materials)
      expect(places(thingsIn(material)[0] ?? ''), `${material}, ${href}`).toContain(`${href}#make-it`)
})

test('every trouble of every chapter stands under the sign that it names, or for itself', () => {
  const rows = chapters
    .toSorted((x, y) => x.number - y.number)
    .flatMap(({ body, href }) =>
      [...body.matchAll(/<Slip sign="([^"]+)" fault="([^"]+)"/g)].map(([, sign = '', fault = '']) => {
        const anchor = sign
          .toLowerCase()
          .replace(/[^a-z0-9]+/g, '-')
          .replace(/^-|-$/g, '')
        return { sign: sign.replace(/\.$/, ''), fault, at: `${href}#${anchor}` }
      }),
    )
  expect(rows.length).toBeGreaterThan(50)
  const under: Readonly<Record<string, string>> = {
    jams: 'jams half-way',
    'sticks-out': 'sticks out',
    shows: 'tabs or folds show',
    tears: 'tears or cracks',
  }
  for (const [fault, name] of Object.entries(under))
    expect(places(name), name).toEqual(rows.filter((row) => row.fault === fault).map(({ at }) => at))
  for (const { sign, fault, at } of rows) {
    if (fault === 'else') expect(places(sign)).toEqual([at])
    else expect(subjects.filter((one) => one.places.some(({ href }) => href === at)).length, sign).toBe(1)
  }
})

test('what is found under another name leads there, and what has one name stands once', () => {
  expect(places('facet')).toEqual(['#panel'])
  expect(places('tab')).toEqual(['#glue-tab'])
  expect(places('facets')).toEqual([])
  expect(places('tent')).toContain('/choose/#tent')
  const anchors = subjects.map(({ name }) => subjectAnchor(name))
  expect(new Set(anchors).size).toBe(anchors.length)
  for (const { name, places: all } of subjects) {
    expect(all.length, name).toBeGreaterThan(0)
    expect(new Set(all.map(({ href }) => href)).size, name).toBe(all.length)
  }
  for (const href of subjects.flatMap((one) => one.places.map((place) => place.href)))
    if (href.startsWith('#')) expect(anchors).toContain(href.slice(1))
})

test('it goes from A to Z, as a reader looks for it', () => {
  const letters = byLetter(subjects).map(([letter]) => letter)
  expect(letters).toEqual([...new Set(letters)].toSorted())
  expect(letters[0]).toBe('A')
  for (const [letter, those] of byLetter(subjects))
    for (const { name } of those) expect(sortedBy(name)[0]?.toUpperCase()).toBe(letter)
  expect(sortedBy('The gutter tears')).toBe('gutter tears')
})

test('what a reason is about is told in more than a word, but where that word is one of the trade', () => {
  const trade = new Set(
    glossary.flatMap(({ id, forms }) => [id, ...(forms ?? [])]).map((one) => one.toLowerCase()),
  )
  const heads = chapters.flatMap(({ body }) =>
    [...(/^<Why>$([\s\S]*?)^<\/Why>$/m.exec(body)?.[1] ?? '').matchAll(/^\*\*([^*]+?)\.?\*\*/gm)].map(
      ([, head = '']) => head,
    ),
  )
  expect(heads.length).toBeGreaterThan(15)
  for (const head of heads) if (!head.includes(' ')) expect(trade, head).toContain(head.toLowerCase())
})
