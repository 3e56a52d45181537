// A picture kept up to date holds what a picture made anew would. The page is linkedom's (ISC).
import fc from 'fast-check'
import { DOMParser, parseHTML } from 'linkedom'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { SvgNode } from '../../src/drawing/pen/nodes.ts'
import { written } from '../../src/drawing/pen/svg.ts'
import { livePicture } from '../../src/widgets/figures/live.ts'
import { runs } from '../paper/shared/designs.ts'

const { document } = parseHTML('<html><body></body></html>')

beforeAll(() => {
  Object.assign(globalThis, { document })
})
afterAll(() => {
  Reflect.deleteProperty(globalThis, 'document')
})

const svg = (): Element => document.createElementNS('http://www.w3.org/2000/svg', 'svg')

const kind = (tag: string, ...names: string[]) => ({ tag, names })

const PATH = kind('path', 'class', 'd')

const WORD = kind('text', 'x')

const GROUP = kind('g', 'class')

const path = (d: string, key?: string): SvgNode => ({
  kind: PATH,
  values: ['m-cut', d],
  inner: [],
  ...(key === undefined ? {} : { key }),
})

const word = (text: string): SvgNode => ({ kind: WORD, values: ['1'], inner: text })

const sheet = (key: string, ...inner: readonly SvgNode[]): SvgNode => ({
  kind: GROUP,
  values: ['sheet'],
  inner,
  key,
})

/** What an element holds: tags, attributes in the order of their names, words. */
const held = ({ children, textContent }: Element): unknown =>
  children.length === 0
    ? textContent
    : [...children].map((child) => [
        child.tagName.toLowerCase(),
        [...child.attributes].map(({ name, value }) => `${name}=${value}`).sort(),
        held(child),
      ])

const anew = (nodes: readonly SvgNode[]): unknown => {
  const picture = svg()
  livePicture(picture)(nodes)
  return held(picture)
}

describe('a picture in the page', () => {
  test('is what the pen for text writes', () => {
    const nodes = [path('M0 0'), sheet('a', path('M1 1'), word('a < b'))]
    const text = `<svg>${nodes.map(written).join('')}</svg>`
    const { documentElement } = new DOMParser().parseFromString(text, 'image/svg+xml')
    expect(anew(nodes)).toEqual(held(documentElement as unknown as Element))
  })

  test('keeps its elements: values change, surfaces change places', () => {
    const picture = svg()
    const paint = livePicture(picture)
    paint([sheet('a', path('M0 0')), path('M1 1'), sheet('b', path('M2 2'))])
    const [a, line, b] = [...picture.children]
    paint([sheet('b', path('M2 2')), sheet('a', path('M0 9')), path('M1 5')])
    expect([...picture.children]).toEqual([b, a, line])
    expect(a?.children[0]?.getAttribute('d')).toBe('M0 9')
    expect(line?.getAttribute('d')).toBe('M1 5')
  })

  test('touches nothing where nodes are the same or say the same', () => {
    const picture = svg()
    const paint = livePicture(picture)
    const kept = sheet('a', path('M0 0'))
    paint([kept, path('M1 1')])
    const touched: string[] = []
    for (const element of picture.querySelectorAll('*'))
      element.setAttribute = (name: string) => touched.push(name)
    paint([kept, path('M1 1')])
    expect(touched).toEqual([])
    paint([kept, path('M1 2')])
    expect(touched).toEqual(['d'])
  })

  test('gives and takes attributes that come and go', () => {
    const picture = svg()
    const paint = livePicture(picture)
    const TURNED = kind('path', 'transform', 'd')
    const turned = (transform: string | undefined): SvgNode => ({
      kind: TURNED,
      values: [transform, 'M0 0'],
      inner: [],
    })
    for (const transform of ['scale(2)', undefined, 'scale(3)']) {
      paint([turned(transform)])
      expect(picture.children[0]?.getAttribute('transform') ?? undefined).toBe(transform)
    }
  })

  const leaf: fc.Arbitrary<SvgNode> = fc.oneof(
    fc.constantFrom('M0 0', 'M1 1', 'M2 2').map((d) => path(d)),
    fc.constantFrom('a', 'b').map(word),
  )

  const nodes: fc.Arbitrary<SvgNode[]> = fc
    .array(
      fc.oneof(
        leaf,
        fc
          .tuple(fc.constantFrom(...'abcdef'), fc.array(leaf, { maxLength: 3 }))
          .map(([key, inner]) => sheet(key, ...inner)),
        fc.constantFrom(...'abc').map((key) => path('M3 3', key)),
      ),
      { maxLength: 8 },
    )
    .map((list) => list.filter(({ key }, k) => !key || list.findIndex((one) => one.key === key) === k))

  test('after any changes is what it would be if made anew', () => {
    fc.assert(
      fc.property(fc.array(nodes, { minLength: 2, maxLength: 5 }), (frames) => {
        const picture = svg()
        const paint = livePicture(picture)
        for (const frame of frames) {
          paint(frame)
          expect(held(picture)).toEqual(anew(frame))
        }
      }),
      runs(300),
    )
  })
})
