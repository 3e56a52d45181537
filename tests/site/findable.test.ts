// The search: what a reader asks for in plain words leads to the place that tells it. No answer of a guess is in it.
import { readdirSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import glossary from '../../content/glossary.json' with { type: 'json' }
import { cellsOf, plain } from '../../src/site/findable.ts'
import { lookThrough } from '../../src/widgets/search/look-through.ts'

const folder = new URL('../../content/chapters/', import.meta.url)

const places = [
  ...readdirSync(folder).flatMap((file) => {
    const body = readFileSync(new URL(file, folder), 'utf8')
    const line = (name: string) => new RegExp(`^${name}: (.*)$`, 'm').exec(body)?.[1] ?? ''
    return cellsOf({ title: line('title'), lead: line('lead'), href: `/${file.replace('.mdx', '')}/`, body })
  }),
  ...glossary.map(({ id, says }) => ({ title: id, where: 'Word', text: says, href: `/words/#${id}` })),
]

const find = lookThrough(places)

test('a text without its marks is words alone', () => {
  expect(plain('Fold **it** <Term>flat</Term>, <Num of="left" id="x" decimals={0} /> deep.')).toBe(
    'Fold it flat, deep.',
  )
  expect(plain('<Phrase id="a" set={{ depth: 42 }}>10 mm deeper</Phrase>.')).toBe('10 mm deeper.')
  expect(plain('See [chapter 2](/chapters/x/).')).toBe('See chapter 2.')
  for (const { text } of places) expect(text).not.toMatch(/[<>{}]/)
})

test('what answers a guess is not looked through', () => {
  expect(plain('A <Guess says="It rises" right>\n\nYes.\n\n</Guess> B <Answer>42</Answer> C')).toBe('A B C')
  expect(places.some(({ title }) => title === 'Predict' || title === 'Do you remember')).toBe(false)
})

test.each([
  ['gutter', '/words/#gutter'],
  ['how do I make a lantern', '/layers/'],
  ['tent', '/tents-and-floating-layers/'],
  ['bone folder', '/paper-itself/'],
])('“%s” leads to %s', (words, href) => {
  const found = find(words)
    .slice(0, 5)
    .map((one) => one.href)
  expect(found.some((one) => one.includes(href))).toBe(true)
})

test('the sentence shown holds what was asked for', () => {
  const [first] = find('gutter')
  expect(first?.sentence.toLowerCase()).toMatch(/fold|gutter|card/)
  for (const { sentence, text } of find('slit apex')) expect(text).toContain(sentence)
})

test('nothing is found for nothing', () => {
  for (const words of ['', '   ', 'the of and', 'qqqqzzzz']) expect(find(words)).toEqual([])
})

test('a sentence is shown rather than a heading that holds as much', () => {
  const look = lookThrough([
    { title: 'Why', where: 'Paper', text: 'Grain. Fibres lie along the grain.', href: '/' },
  ])
  expect(look('grain')[0]?.sentence).toBe('Fibres lie along the grain.')
  // Two words of it are worth more than one in a sentence.
  const other = lookThrough([
    { title: 'Why', where: 'Paper', text: 'Grain, weight. Fibres lie along the grain.', href: '/' },
  ])
  expect(other('grain weight')[0]?.sentence).toBe('Grain, weight.')
})
