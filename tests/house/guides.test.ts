import { describe, expect, test } from 'vitest'
import { lostNames, projectTree } from './guides.ts'
import { textOf } from './tree.ts'

const GUIDES = ['README.md', 'DEVELOPERS.md']

const tree = projectTree()

describe('everything that a guide names is there', () => {
  test.each(GUIDES)('in %s', (guide) => {
    const text = textOf(guide)
    expect(text.match(/`[^`]+`/g)?.length ?? 0).toBeGreaterThan(5)
    expect(lostNames(text, tree)).toEqual([])
  })
})

describe('a name that is not there is found', () => {
  test.each([
    ['a file', 'See `src/paper/glue.ts`.', '1: src/paper/glue.ts'],
    ['a folder', 'one\nSee `src/gadgets/`.', '2: src/gadgets/'],
    ['a file of the root', 'See `GUIDE.md`.', '1: GUIDE.md'],
    ['a symbol', 'Call `unfoldEverything`.', '1: unfoldEverything'],
    ['part of a symbol', 'Call `parseDes`.', '1: parseDes'],
    ['a kind', 'Place a `cut-zigzag`.', '1: cut-zigzag'],
    ['a command', 'Say `npm run polish`.', '1: npm run polish'],
    ['a command in a block', '```sh\nnpm run polish\n```', '2: npm run polish'],
    ['a file in a command', 'Say `npm run test:unit tests/nowhere`.', '1: npm run test:unit tests/nowhere'],
  ])('%s', (_, guide, found) => {
    expect(lostNames(guide, tree)).toEqual([found])
  })

  test('and one that is there is let pass', () => {
    const guide =
      '`src/paper/index.ts`, `parseDesign`, `cut-v-fold`, `npm start`, `npm run -s dummy -- check FILE`'
    expect(lostNames(guide, tree)).toEqual([])
  })
})
