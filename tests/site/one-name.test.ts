// One thing has one name wherever a reader is spoken to.
import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { mdxToMdast } from 'satteri'
import { expect, test } from 'vitest'
import type { Leaf } from '../../src/site/cells/grammar.ts'
import { all, plain } from './chapters.ts'

const content = fileURLToPath(new URL('../../content/', import.meta.url))

/** A printed sheet goes from hand to hand: there it is the reader’s end, whoever holds it. */
const files = readdirSync(content, { recursive: true, encoding: 'utf8' }).filter(
  (name) => /\.(ts|mdx|md|json)$/.test(name) && !name.startsWith('words/sheet'),
)

test('what stands on the gutter is an apex, for the tip is the upper end of the ridge', () => {
  const others = files
    .filter((name) => name.startsWith('chapters'))
    .flatMap((name) =>
      (
        readFileSync(`${content}${name}`, 'utf8').match(
          /\btip(?: of the [a-z]+)? (?:on the (?:gutter|apex)|(?:sits|does not sit|must lie)\b)[^.]*|\btip of the \w+ is not in the joint/gi,
        ) ?? []
      ).map((found) => `${name}: ${found}`),
    )
  expect(others).toEqual([])
})

test('a piece is drawn by what the reader has before them: its places go by their end', () => {
  // The near edge is where the shut card may let something stick out; nothing is measured from there.
  const others = files
    .filter((name) => name.startsWith('chapters'))
    .flatMap((name) =>
      all(
        mdxToMdast(readFileSync(`${content}${name}`, 'utf8'), { features: { frontmatter: true } }) as Leaf,
        'Step',
      )
        .map(plain)
        .filter((text) => /from the near edge/.test(text))
        .map((text) => `${name}: ${text}`),
    )
  expect(others).toEqual([])
})

test('the end of the card that is nearest to the reader is their end, and neither mine nor the start', () => {
  expect(files.length).toBeGreaterThan(50)
  const others = files.flatMap((name) =>
    (
      readFileSync(`${content}${name}`, 'utf8').match(
        /\bmy end\b|(from|to) the start(?! of the)|reader’s end\b/gi,
      ) ?? []
    ).map((found) => `${name}: ${found}`),
  )
  expect(others).toEqual([])
})
