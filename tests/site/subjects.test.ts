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

test('every word of the trade leads to its meaning and to each chapter that speaks of it', () => {
  for (const { id, forms } of glossary) {
    expect(places(id)[0], id).toBe(`/words/#${id.replaceAll(' ', '-')}`)
    const said = [id, ...(forms ?? [])].map((form) => form.replace(/[-]/g, '\\$&')).join('|')
    for (const { body, href } of chapters)
      if (new RegExp(`<Term>(?:${said})</Term>|<Term word="(?:${said})">`, 'i').test(body))
        expect(
          places(id).some((place) => place.startsWith(`${href}#`)),
          `${id} in ${href}`,
        ).toBe(true)
  }
})

test('a word leads to the first cell of a chapter that has it, once', () => {
  // Front matter, tries and reasons of chapter 12, as they stand in its file.
  expect(places('grain')).toContain('/chapters/paper-itself/#why')
  expect(places('joint')).toContain('/chapters/paper-itself/#try-it')
  expect(places('glue tab').filter((place) => place.includes('paper-itself'))).toEqual([
    '/chapters/paper-itself/#try-it',
  ])
})

test('every material leads to where it is needed', () => {
  expect(thingsIn('dry ball pen or a spoon')).toEqual(['dry ball pen', 'spoon'])
  expect(thingsIn('card for the card and its cover')).toEqual(['card'])
  expect(thingsIn('a book with square corners')).toEqual(['book'])
  for (const { href, materials } of chapters)
    for (const material of materials)
      expect(places(thingsIn(material)[0] ?? ''), `${material}, ${href}`).toContain(`${href}#make-it`)
})

test('every trouble of every chapter is led to', () => {
  const all = new Set(subjects.flatMap((one) => one.places.map(({ href }) => href)))
  let count = 0
  for (const { body, href } of chapters)
    for (const [, sign = ''] of body.matchAll(/<Slip sign="([^"]+)"/g)) {
      count++
      const anchor = sign
        .toLowerCase()
        .replace(/[^a-z0-9]+/g, '-')
        .replace(/^-|-$/g, '')
      expect(all, sign).toContain(`${href}#${anchor}`)
    }
  expect(count).toBeGreaterThan(50)
  expect(places('jams half-way').length).toBeGreaterThan(3)
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
