// One thing has one name wherever a reader is spoken to.
import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'

const content = fileURLToPath(new URL('../../content/', import.meta.url))

/** A printed sheet goes from hand to hand: there it is the reader’s end, whoever holds it. */
const files = readdirSync(content, { recursive: true, encoding: 'utf8' }).filter(
  (name) => /\.(ts|mdx|md|json)$/.test(name) && !name.startsWith('words/sheet'),
)

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
