// The page that helps to choose: it has every kind, and each card does what its words and its filter say.
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import type { Design } from '../../src/paper/index.ts'
import { check, kinds, measure, parseDesign } from '../../src/paper/index.ts'
import { factsOf, workOf } from '../../src/site/choice-facts.ts'
import { WANTS } from '../../src/site/choosing.ts'
import { slugs } from './chapters.ts'
import { counts, grade } from './reading-age.ts'

interface Written {
  readonly id: string
  readonly title: string
  readonly does: string
  readonly goes: string
  readonly strong: string
  readonly ways: readonly string[]
  readonly chapter: string
  readonly design: unknown
  readonly subject: string
}

const written: readonly Written[] = JSON.parse(
  readFileSync(new URL('../../content/choices.json', import.meta.url), 'utf8'),
)

const choices = written.map((one) => ({ ...one, design: parseDesign(one.design) }))

const tip = (design: Design, id: string, opening: number) => {
  const found = measure(design, opening).tips[id]
  if (!found) throw new Error(`${id} has no tip`)
  return found
}

const wanted = (way: string) => choices.filter(({ ways }) => ways.includes(way))

test('every kind of mechanism is there, and every way to look for one finds one', () => {
  const there = new Set(choices.flatMap(({ design }) => design.mechanisms.map(({ kind }) => kind)))
  expect([...there].sort()).toEqual(kinds.map(({ kind }) => kind).sort())
  for (const { name } of WANTS) expect(wanted(name).length, name).toBeGreaterThan(0)
})

describe.each(choices)('$title', ({ id, design, subject, chapter, does, goes, strong }) => {
  test('is a sound card and has a chapter', () => {
    expect(check(design, { repairs: false }).filter(({ ok }) => !ok)).toEqual([])
    expect(slugs).toContain(chapter)
    expect(design.mechanisms.map((m) => m.id)).toContain(subject)
    expect(written.filter((one) => one.id === id).length).toBe(1)
  })

  test('can be read at the age of ten', () => {
    expect(grade(counts([does, goes, strong]))).toBeLessThanOrEqual(6)
  })
})

describe('what it is found by is true of its card', () => {
  test('what needs no glue has no glue place, and all that has none is found', () => {
    for (const { ways, design, title } of choices)
      expect(/glue/.test(workOf(design).work), title).toBe(!ways.includes('uncut'))
  })

  test('what rises stands up 20 mm at 90° and no more to one side than it is high', () => {
    for (const { design, subject, title } of wanted('rises')) {
      const { rise, at } = tip(design, subject, 90)
      expect(rise, title).toBeGreaterThan(20)
      expect(Math.abs(at[0]), title).toBeLessThan(1e-6)
    }
  })

  test('what swings goes along its fold, what only rises does not', () => {
    const along = (design: Design, id: string) =>
      Math.abs(tip(design, id, 150).reach - tip(design, id, 30).reach)
    for (const { design, subject, title } of wanted('swings'))
      expect(along(design, subject), title).toBeGreaterThan(5)
    for (const { design, subject, title, ways } of wanted('rises').filter(
      ({ ways }) => !ways.includes('swings'),
    ))
      expect(along(design, subject), `${title} ${ways}`).toBeLessThan(1e-6)
  })

  test('what sweeps goes far out to one side', () => {
    for (const { design, subject, title } of wanted('sweeps'))
      expect(
        Math.abs(tip(design, subject, 150).at[0] - tip(design, subject, 10).at[0]),
        title,
      ).toBeGreaterThan(10)
  })

  test('what nods and turns leaves the middle, farther the wider the card is open', () => {
    for (const { design, subject, title } of wanted('turns')) {
      const aside = (opening: number) => Math.abs(tip(design, subject, opening).at[0])
      expect(aside(90), title).toBeGreaterThan(5)
      expect(aside(150), title).toBeGreaterThan(aside(90))
    }
  })

  test('what opens like a mouth has two tips that part as it shuts', () => {
    for (const { design, title } of wanted('mouth')) {
      const gape = (opening: number) => measure(design, opening).gapes[0]?.gape ?? Number.NaN
      expect(gape(120), title).toBeGreaterThan(5)
      expect(gape(180), title).toBeCloseTo(0, 6)
    }
  })

  test('a guest sits on what another mechanism has made', () => {
    for (const { design, subject, ways, title } of choices) {
      const host = design.mechanisms.find((m) => m.id === subject)?.on
      expect(host !== 'gutter' && !host?.startsWith('page/'), title).toBe(ways.includes('guest'))
    }
  })
})

test('the numbers beside it are those of its card', () => {
  // At 90° a layer stands as high as it is deep, and shut it reaches twice as far (tests/site/chapters.test.ts).
  const layer = choices.find(({ id }) => id === 'layer')
  expect(layer && factsOf(layer.design, layer.subject)).toEqual([
    ['Height', '36\u00a0mm at 90°'],
    ['Room', '72\u00a0mm from the gutter when shut'],
    ['Layers', '4 when shut'],
  ])
  expect(layer && workOf(layer.design)).toEqual({ level: 1, work: 'easy: 2 cuts, 4 folds' })
  const works = choices.map(({ design }) => workOf(design).level)
  expect(Math.max(...works)).toBe(3)
})
