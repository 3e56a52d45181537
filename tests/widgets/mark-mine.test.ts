// Which way at the top is marked where the steps are those of a maker's own card. The page is linkedom's (ISC).
import { parseHTML } from 'linkedom'
import { expect, test } from 'vitest'
import { markMine } from '../../src/widgets/booklet/mark-mine.ts'

const HOME = 'https://example.org/book/'

test('with a card of one’s own the planning page is marked, and the garden no longer', () => {
  const { document } = parseHTML(`<ul class="ways">
    <li><a href="${HOME}garden/" aria-current="true">Garden</a></li>
    <li><a href="${HOME}dummy/">My dummy</a></li>
  </ul><p><a href="${HOME}words/" aria-current="true">Words</a></p>`)
  markMine(document, `${HOME}dummy/`)
  const marked = [...document.querySelectorAll('[aria-current]')].map(({ textContent }) => textContent)
  expect(marked).toEqual(['My dummy', 'Words'])
})
