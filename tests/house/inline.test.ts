// Scripts in pages are made smaller and stay what they are. Held against HTML's own rule (WHATWG, HTML, 4.12.1.3: a
// script ends at the first `</script`), and by running both.
import { runInNewContext } from 'node:vm'
import { expect, test } from 'vitest'
import { withSmallScripts } from '../../src/house/inline.mjs'

const script = (html: string): string => /<script[^>]*>([\s\S]*?)<\/script/.exec(html)?.[1] ?? ''

const SAID = `(() => {
  const long = 'a word'
  for (const other of [1, 2]) said.push(long + other)
  try { lost() } catch { said.push('caught') }
})()`

test('a script in a page is smaller and says the same', async () => {
  const page = `<p>before</p><script>${SAID}</script><p>after</p>`
  const small = await withSmallScripts(page)
  expect(small.length).toBeLessThan(page.length - 30)
  expect(small.replace(script(small), '')).toBe(page.replace(SAID, ''))
  const run = (code: string): readonly string[] => {
    const said: string[] = []
    runInNewContext(code, { said })
    return said
  }
  expect(run(script(small))).toEqual(['a word1', 'a word2', 'caught'])
  expect(run(script(page))).toEqual(run(script(small)))
})

test.each([
  ['data', '<script type="application/json">{ "a" : 1 }</script>'],
  ['a script of another address', '<script type="module" src="/a.js"></script>'],
])('%s is left as it is', async (_, page) => {
  expect(await withSmallScripts(page)).toBe(page)
})

test('what would end a script stays hidden in it', async () => {
  const page = String.raw`<script>document.write( '<script src="a.js"><\/script>' )</script>`
  const small = await withSmallScripts(page)
  expect(small).toMatch(/<\/script>$/)
  expect(small.match(/<\/script/g)).toHaveLength(1)
})
