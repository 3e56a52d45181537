import { stripTypeScriptTypes } from 'node:module'
import { describe, expect, test } from 'vitest'
import { foreignNames, importsOf, layerOf, wrongImports } from './layers.ts'
import { textOf, treeFiles } from './tree.ts'

const files = treeFiles().filter((file) => /\.(m?[jt]sx?|astro|mdx)$/.test(file) && layerOf(file))

const kernel = files.filter((file) => file.startsWith('src/paper/'))

describe('imports run one way', () => {
  test('in every file of the tree', () => {
    expect(files.length).toBeGreaterThan(10)
    expect(files.flatMap((file) => wrongImports(file, textOf(file)))).toEqual([])
  })

  test.each([
    ['src/paper/motion/pose.ts', "import { path } from 'd3'"],
    ['src/paper/motion/pose.ts', "import { readFileSync } from 'node:fs'"],
    ['src/paper/mechanisms/cut-layer.ts', "import type { Mark } from '../../drawing/marks.ts'"],
    ['src/drawing/section.ts', "export { sheet } from '../sheet/index.ts'"],
    ['src/drawing/section.ts', "const later = import('../widgets/slit.tsx')"],
    ['src/sheet/index.ts', "import { Widget } from '../widgets/widget.tsx'"],
    ['src/widgets/slit.tsx', "import Layout from '../site/layouts/Layout.astro'"],
    ['src/site/layouts/Layout.astro', "---\nimport Page from '../../pages/index.astro'\n---\n<p>it's</p>"],
    ['content/chapters/layers.mdx', "import {\n  a,\n} from '../../src/pages/index.astro'"],
    ['src/command/check.ts', "import { signal } from '../widgets/state/state.ts'"],
    ['src/paper/plane/outline.ts', "import { kindOf } from '../mechanisms/registry.ts'"],
    ['src/paper/design/change.ts', "import { check } from '../index.ts'"],
    ['src/widgets/state/fields.ts', "import { Bench } from '../model/bench-model.ts'"],
    ['src/paper/checks/glue.ts', "import * as says from '../../../content/words/checks.ts'"],
    ['content/words/sheet.ts', "import type { Way } from '../../src/sheet/index.ts'"],
    ['src/house/start.mjs', "import { check } from '../paper/index.ts'"],
  ])('a wrong one in %s is found: %s', (file, text) => {
    expect(wrongImports(file, text)).toHaveLength(1)
  })

  test.each([
    ['src/pages/index.astro', "---\nimport Layout from '../site/layouts/Layout.astro'\n---"],
    ['src/widgets/slit.tsx', "import { section } from '../drawing/section.ts'"],
    ['src/sheet/index.ts', "import type { Mark } from '../drawing/marks.ts'"],
    ['src/drawing/section.ts', "import { scaleLinear } from 'd3'"],
    ['src/sheet/index.ts', "import * as says from '../../content/words/sheet.ts'"],
    ['src/paper/checks/glue.ts', "import * as says from '../words/checks.ts'"],
    ['src/paper/mechanisms/cut-layer.ts', "import type { Kind } from '../plane/vector.ts'"],
  ])('a right one in %s is let pass: %s', (file, text) => {
    expect(importsOf(file, text)).toHaveLength(1)
    expect(wrongImports(file, text)).toEqual([])
  })
})

describe('the kernel', () => {
  test('names its own files with their .ts ending', () => {
    for (const file of kernel) {
      for (const imports of importsOf(file, textOf(file))) expect(imports, file).toMatch(/^\.{1,2}\/.+\.ts$/)
    }
  })

  test('knows no screen, clock, chance or machine', () => {
    expect(
      kernel.flatMap((file) => foreignNames(file, textOf(file)).map((name) => `${file}: ${name}`)),
    ).toEqual([])
  })

  test('is typed with syntax that a bare Node can erase', () => {
    for (const file of kernel) expect(() => stripTypeScriptTypes(textOf(file)), file).not.toThrow()
  })

  test('would be caught using any of them', () => {
    expect(foreignNames('x.ts', 'const now = Date.now()\nconst r = Math.random()')).toEqual([
      'Date (line 1)',
      'Math.random (line 2)',
    ])
    expect(foreignNames('x.ts', 'document.title; const half = pose.location')).toEqual(['document (line 1)'])
    expect(() => stripTypeScriptTypes('enum Side { left, right }')).toThrow()
    expect(() => stripTypeScriptTypes('class Crease { constructor(readonly name: string) {} }')).toThrow()
  })
})
