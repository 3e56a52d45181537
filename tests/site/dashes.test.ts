// Lines differ by dash pattern first: where they are stronger, on a projector, their dashes are longer with them, or
// they run into one another. By arithmetic.
import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'

const read = (path: string): string => readFileSync(new URL(`../../src/${path}`, import.meta.url), 'utf8')

const SHEETS = ['site/styles/cells.css', 'widgets/figures/figures.css']

/** What stands between braces, without what is nested in it, and sets a weight. */
const weighty = SHEETS.flatMap((path) =>
  [...read(path).matchAll(/--weight: ([\d.]+);((?:\s*--[\w-]+: [^;]+;)*)/g)].map(([, weight, rest = '']) => ({
    path,
    weight: Number(weight),
    dashes: new Map(
      [...rest.matchAll(/--dash-(\w+): ([^;]+);/g)].map(([, name = '', lengths = '']) => [
        name,
        lengths.split(' ').map(Number.parseFloat),
      ]),
    ),
  })),
)

/** By marks.css at a weight of one: width, and the shortest gap. */
const LINES = { valley: [1.4, 3], mountain: [1.4, 3], fault: [2, 3] } as const

test.each(weighty)('lines of weight $weight in $path have dashes that stay apart', ({ weight, dashes }) => {
  for (const [name, [width, gap]] of Object.entries(LINES)) {
    const [, between = 0] = dashes.get(name) ?? []
    expect(between, name).toBeGreaterThanOrEqual(0.9 * gap * weight)
    expect(between, name).toBeGreaterThan(width * weight)
  }
})

test('there are such lines', () => {
  expect(weighty.length).toBe(3)
})

/** The rules of marks.css that set dashes. */
const rules = [
  ...read('drawing/pen/marks.css').matchAll(/^([^{}\n][^{}]*)\{([^{}]*stroke-dasharray:[^{}]*)\}/gm),
]

test('all other dashes grow with the weight, and those of a fault end square', () => {
  expect(rules.length).toBeGreaterThan(10)
  for (const [, selector = '', body = ''] of rules) {
    const lengths = (/stroke-dasharray:\s*([^;]+);/.exec(body)?.[1] ?? '').replace(/\s+/g, ' ')
    expect(lengths, selector).toMatch(
      /^(none|var\(--dash-\w+, [\d .]+\)|(calc\([\d.]+px \* var\(--weight, 1\)\) ?)+)$/,
    )
  }
  const fault = rules.find(([, selector = '']) => selector.includes('path.m-fault'))
  expect(fault?.[2]).toContain('stroke-linecap: butt')
})
