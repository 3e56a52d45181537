// A maker who sees a fault finds its cause: by its picture, or in words of their own. What makers say is common
// practice, no source; that a search finds it is tried with words that are not those of the rows.
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import faults from '../../content/faults.json' with { type: 'json' }
import { parseDesign } from '../../src/paper/index.ts'
import { anchorOf } from '../../src/site/anchor.ts'
import { faultPicture, faultPictureSchema } from '../../src/site/fault-picture.ts'
import { rowsOf } from '../../src/site/trouble-rows.ts'
import { lookUp } from '../../src/widgets/fault/look-up.ts'
import type { Trouble } from '../../src/widgets/fault/trouble.ts'

const folder = new URL('../../content/chapters/', import.meta.url)

const texts = readdirSync(folder).map((file) => ({
  slug: file.replace('.mdx', ''),
  body: readFileSync(new URL(file, folder), 'utf8'),
}))

const dummy = (name: string) =>
  parseDesign(
    JSON.parse(
      readFileSync(new URL(`../../content/dummies/${name}.hingebook.json`, import.meta.url), 'utf8'),
    ),
  )

const troubles = texts.flatMap(({ slug, body }) =>
  rowsOf(body, { design: dummy(/^dummy: (.*)$/m.exec(body)?.[1] ?? ''), dummy }).map(
    ({ sign, fault, cure }): Trouble => {
      const title = /^title: (.*)$/m.exec(body)?.[1] ?? ''
      return {
        ...{ sign, fault, cure, card: '', picture: '' },
        chapter: { number: 1, title },
        href: `${slug}#${anchorOf(sign)}`,
      }
    },
  ),
)

const list = Object.entries(faults).map(([id, one]) => ({ id, ...one, picture: '' }))

describe('the signs', () => {
  test('gather every trouble row of every chapter', () => {
    const written = texts.reduce((sum, { body }) => sum + body.split('<Slip ').length - 1, 0)
    expect(troubles).toHaveLength(written)
    for (const { sign, cure, fault } of troubles) {
      expect(sign).not.toBe('')
      expect(cure.length).toBeGreaterThan(20)
      expect(Object.keys(faults)).toContain(fault)
    }
  })

  test('have a picture with dots where the words speak of those that the maker drew', () => {
    // Common practice, no source: a picture shows what its words speak of.
    const gutter = texts.filter(({ body }) => /^ {2}point: /m.test(body))
    expect(gutter.length).toBeGreaterThan(0)
    for (const { body } of gutter)
      for (const { cure, picture } of rowsOf(body, { design: dummy('card'), dummy }))
        expect(picture.dots).toBe(/\bdots\b/.test(cure))
  })

  test('each have a cause at least, and an order of their own', () => {
    for (const id of Object.keys(faults)) expect(troubles.some((one) => one.fault === id)).toBe(true)
    expect(list.map(({ number }) => number).sort((a, b) => a - b)).toEqual(list.map((_, k) => k + 1))
  })

  test('lead to one place each', () => {
    expect(new Set(troubles.map(({ href }) => href)).size).toBe(troubles.length)
  })

  test.each(Object.entries(faults).filter(([, one]) => 'picture' in one))(
    '%s has a picture that can be drawn',
    (_, one) => {
      const picture = faultPictureSchema.parse((one as { picture?: unknown }).picture)
      const raw = JSON.parse(
        readFileSync(
          new URL(`../../content/dummies/${picture.dummy}.hingebook.json`, import.meta.url),
          'utf8',
        ),
      )
      expect(parseDesign(raw).title).not.toBe('')
      const { marks } = faultPicture(raw, picture)
      expect(marks.length).toBeGreaterThan(3)
      const rings = marks.filter(({ role }) => role === 'fault')
      expect(rings.length > 0).toBe('marks' in picture)
    },
  )
})

describe('a maker’s own words', () => {
  const find = lookUp(list, troubles)
  test.each([
    ['nothing happens when I open it', 'stays-flat'],
    ['my V-fold stays down', 'stays-flat'],
    ['it gets stuck half way', 'jams'],
    ['the paper ripped at the slit', 'tears'],
    ['the tip peeks out when it is shut', 'sticks-out'],
    ['the card doesn’t close properly', 'will-not-shut'],
    ['the moth is crooked', 'leans'],
    ['it keeps springing open', 'springs-back'],
    ['the glue does not hold', 'peels-off'],
    ['I can see the tab', 'shows'],
    ['it is not as high as it should be', 'else'],
  ])('“%s” is %s', (words, fault) => {
    const found = find(words).slice(0, 3)
    expect(found.map((one) => one.fault)).toContain(fault)
    expect(found[0]?.fault).toBe(fault)
  })

  test.each(['my V-fold stays down', 'My v fold stays down', 'vfold stays down'])(
    '“%s” begins with a V-fold',
    (words) => {
      const { sign = '', chapter } = find(words)[0] ?? {}
      expect(`${sign} ${chapter?.title}`).toMatch(/V-fold/)
    },
  )

  test('that fit nothing find nothing, and break nothing', () => {
    for (const words of ['', '  ', 'zzzzqqqq', '*?[', 'a'.repeat(5000), '\u0000'])
      expect(find(words)).toEqual([])
  })
})
