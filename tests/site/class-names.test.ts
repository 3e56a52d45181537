// A class of the page is not a class of a widget too: where both styles are loaded, one would dress the other.
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { ROOT } from '../house/tree.ts'

const sheets = readdirSync(join(ROOT, 'src'), { recursive: true, encoding: 'utf8' }).filter((name) =>
  name.endsWith('.css'),
)

/** Classes that a sheet dresses by themselves: `.name {` at the start of a line. */
const dressed = (css: string): readonly string[] =>
  [...css.replace(/\/\*.*?\*\//gs, '').matchAll(/^\.([\w-]+) \{$/gm)].map(([, name = '']) => name)

test('no class of the site is dressed by a widget too', () => {
  const found = { site: new Set<string>(), widgets: new Set<string>() }
  for (const file of sheets)
    for (const name of dressed(readFileSync(join(ROOT, 'src', file), 'utf8')))
      found[file.startsWith('widgets') ? 'widgets' : 'site'].add(name)
  expect(Math.min(found.site.size, found.widgets.size)).toBeGreaterThan(50)
  expect([...found.site].filter((name) => found.widgets.has(name))).toEqual([])
})
