// What the plans say is done here with the page's own edits, searches and mending, and what comes of it is judged by the
// checks. Sizes of pages: ISO 216:2007.
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, test, vi } from 'vitest'
import type { CheckName, Design, Find, Wish } from '../../src/paper/index.ts'
import {
  change,
  check,
  compile,
  find,
  mend,
  offers,
  parseDesign,
  riseOf,
  settable,
  tipAt,
} from '../../src/paper/index.ts'
import { handsOf } from '../../src/site/hands.ts'
import { pointOver } from '../../src/widgets/dummy/model/wishes.ts'
import { FORMATS } from '../../src/widgets/dummy/slips/CardSlip.tsx'
import type { Edit } from '../../src/widgets/keeping/edits.ts'
import { duplicate, mirror, rename, setCard, setSize } from '../../src/widgets/keeping/edits.ts'

// A search costs seconds on a busy machine.
vi.setConfig({ testTimeout: 180_000 })

const CONTENT = new URL('../../content/', import.meta.url)

const dummy = (name: string): Design =>
  parseDesign(JSON.parse(readFileSync(new URL(`dummies/${name}.hingebook.json`, CONTENT), 'utf8')))

const failing = (design: Design): readonly CheckName[] =>
  check(design, { repairs: false })
    .filter(({ ok }) => !ok)
    .map(({ name }) => name)

const done = (edit: Edit): Design => {
  if (!edit.done) throw new Error(edit.sentence)
  return edit.design
}

const lastOf = (design: Design): string => design.mechanisms.at(-1)?.id ?? ''

const named = (design: Design, name: string): Design => done(rename(design, lastOf(design), name))

const sized = (design: Design, id: string, sizes: Readonly<Record<string, number>>): Design =>
  Object.entries(sizes).reduce((now, [field, value]) => done(setSize(now, id, field, value)), design)

/** The way of a wish that is one mechanism of this kind: there is one such way alone, in whatever order they are shown. */
function used(ways: readonly Find[], kind: string): Find {
  const [way, ...others] = ways.filter(
    ({ ids, design }) => ids.length === 1 && design.mechanisms.at(-1)?.kind === kind,
  )
  if (!way || others.length > 0) throw new Error(`${others.length + (way ? 1 : 0)} ways are ${kind} alone`)
  return way
}

const ways = (design: Design, wish: Wish): readonly Find[] => {
  const found = find(design, wish)
  return Array.isArray(found) ? found : []
}

/** The offer of a kind. Where two carry its name the plan has to say which: the first one, or its variant's words. */
function offered(design: Design, on: string, kind: string, which?: string): Design {
  const all = offers(design, on, { sitsOn: 'crease' }).filter((offer) => offer.kind === kind)
  if (which === undefined && all.length > 1) throw new Error(`${all.length} offers are ${kind}`)
  const one = which === undefined || which === 'first' ? all[0] : all.find(({ variant }) => variant === which)
  if (!one) throw new Error(`${kind} is not offered on ${on}`)
  return one.design
}

const twin = (design: Design, id: string): Design => {
  const copied = done(duplicate(design, id))
  return done(mirror(copied, lastOf(copied)))
}

const mechanismsOf = ({ mechanisms }: Design) => mechanisms

const textOf = (slug: string): string => readFileSync(new URL(`plans/${slug}.mdx`, CONTENT), 'utf8')

describe('a heron in the reeds', () => {
  const end = dummy('heron-in-the-reeds')
  const wish: Wish = { opening: 90, at: pointOver({ rise: 40, along: 84, aside: 0 }, 90), made: 'card' }
  const start = dummy('blank')

  test('begins with nothing that could rise', () => {
    expect(start.mechanisms).toEqual([])
    expect(failing(start)).toEqual([])
  })

  test('goes step by step from the wish to its end', () => {
    const way = used(ways(start, wish), 'cut-v-fold')
    expect(way.miss).toBeLessThan(1)
    let design = named(way.design, 'beak')
    expect(mechanismsOf(design)).toEqual(mechanismsOf(dummy('heron-beak')))
    const [beak] = design.mechanisms as unknown as readonly [
      { readonly apex: number; readonly run: number; readonly cut: number; readonly lean: number },
    ]
    design = named(offered(design, 'gutter', 'cut-v-fold', 'away from your end'), 'jaw')
    expect(textOf('heron')).toContain('Press the “V-fold cut from the card” that goes away from your end.')
    design = sized(design, 'jaw', {
      apex: 28,
      run: beak.apex + beak.run - 28,
      cut: beak.cut,
      lean: beak.lean,
    })
    expect(failing(design)).toEqual([])
    design = named(offered(design, 'gutter', 'cut-layer'), 'bank')
    design = named(offered(design, 'bank/left', 'cut-layer'), 'reed')
    design = twin(sized(design, 'reed', { left: 44, right: 14 }), 'reed')
    expect(mechanismsOf(design)).toEqual(mechanismsOf(end))
  })

  test('ends sound, its tip 40 mm over the page at 90°, the reeds nearer to the reader than the beak', () => {
    expect(failing(end)).toEqual([])
    const poser = compile(end)
    poser(90)
    const tip = tipAt(poser, 0)
    expect(Math.abs(riseOf(tip, 90) - 40)).toBeLessThan(0.5)
    expect(tip[1].toFixed(0)).toBe('84')
    const { panels } = poser(90)
    const along = (part: RegExp): number[] =>
      Object.entries(panels).flatMap(([name, points]) => (part.test(name) ? points.map(([, y]) => y) : []))
    expect(Math.max(...along(/^(bank|reed)/))).toBeLessThan(Math.min(...along(/^(beak|jaw)\//)))
  })
})

/** How far inside the card that part stays which comes nearest to an edge, mm. A hand is off by half a millimetre: common practice, no source. */
const spareOf = (design: Design): number =>
  Math.min(
    ...check(design, { repairs: false }).flatMap(({ name, value }) =>
      name === 'stays-inside' ? [value] : [],
    ),
  )

describe('an owl that spreads its wings', () => {
  const end = dummy('owl-wings')
  const just = ['wing', 'wing-2'].reduce((now, id) => change(now, id, { ridge: 98.7 }), end)
  const wish: Wish = { opening: 90, at: pointOver({ rise: 50, along: 90, aside: 0 }, 90), made: 'own' }

  test('goes step by step: the wings stick out, and mending both leaves the owl as it was', () => {
    const way = used(ways(dummy('blank'), wish), 'glued-v-fold')
    let design = named(way.design, 'owl')
    expect(mechanismsOf(design)).toEqual(mechanismsOf(dummy('owl-body')))
    design = named(offered(design, 'owl/left', 'glued-v-fold', 'first'), 'wing')
    expect(textOf('owl')).toContain('Press “V-fold of its own card”, the first one.')
    expect(failing(design)).toEqual([])
    expect(
      settable(design.mechanisms[1] as Design['mechanisms'][number]).map(({ label }) => label),
    ).toContain('Ridge')
    expect(design.mechanisms[1]).toMatchObject({ ridge: 34 })
    design = twin(sized(design, 'wing', { ridge: 120 }), 'wing')
    expect(failing(design)).toEqual(['stays-inside', 'stays-inside'])
    const { design: mended, changes, left } = mend(design, { pins: ['owl.ridge'] })
    expect(left).toEqual([])
    expect(changes.map(({ id, field, from }) => [id, field, from])).toEqual([
      ['wing', 'ridge', 120],
      ['wing-2', 'ridge', 120],
    ])
    expect(mechanismsOf(mended)).toEqual(mechanismsOf(just))
    expect(textOf('owl')).toContain("set={{ wing: { ridge: 98.7 }, 'wing-2': { ridge: 98.7 } }}")
  })

  test('ends sound, with a hand’s breadth to spare: mended alone, a tenth more sticks out', () => {
    expect(failing(end)).toEqual([])
    expect(failing(change(just, 'wing', { ridge: 98.9 }))).toContain('stays-inside')
    expect(spareOf(end)).toBeGreaterThan(1)
    expect(spareOf(just)).toBeLessThan(0.2)
  })

  test('the picture of what fails shows what a reader has then', () => {
    expect(textOf('owl')).toContain("set={{ wing: { ridge: 120 }, 'wing-2': { ridge: 120 } }}")
    const shown = ['wing', 'wing-2'].reduce((now, id) => change(now, id, { ridge: 120 }), end)
    expect(failing(shown)).toEqual(['stays-inside', 'stays-inside'])
  })
})

describe('a card for the class', () => {
  const start = dummy('class-card-large')
  const end = dummy('class-card')
  const a6 = FORMATS.find(({ name }) => name === 'A6, gutter upright')

  test('begins sound on larger pages, and fails on A6 as the text says', () => {
    expect(start.card.width).toBeGreaterThan(105)
    expect(start.card.height).toBeGreaterThan(148)
    expect(failing(start)).toEqual([])
    const small = done(setCard(start, { width: 105, height: 148 }))
    expect(a6).toMatchObject({ width: 105, height: 148 })
    const faults = check(small, { repairs: false }).filter(({ ok }) => !ok)
    expect(faults.map(({ name }) => name).sort()).toEqual(['glue', 'stays-inside'])
    expect(faults.every(({ ids }) => ids.every((id) => !id.startsWith('name')))).toBe(true)
    expect(faults.find(({ name }) => name === 'stays-inside')?.sentence).toMatch(
      /moon sticks out .* far edge/,
    )
  })

  test('one change mends both', () => {
    const small = done(setCard(start, { width: 105, height: 148 }))
    const { design, changes, left } = mend(small)
    expect(left).toEqual([])
    expect(changes.map(({ id, field, from }) => [id, field, from])).toEqual([['moon', 'apex', 104]])
    const just = change(end, 'moon', { apex: 84.3 })
    expect(mechanismsOf(design)).toEqual(mechanismsOf(just))
    expect(textOf('class-card')).toContain('set={{ moon: { apex: 84.3 } }}')
    expect(spareOf(just)).toBeLessThan(0.2)
    expect(spareOf(end)).toBeGreaterThan(1)
    expect(failing(end)).toEqual([])
    expect(end.card).toMatchObject({ width: 105, height: 148 })
  })

  test('the picture of what fails shows what a reader has then', () => {
    expect(textOf('class-card')).toContain('set={{ moon: { apex: 104 } }}')
    expect([...failing(change(end, 'moon', { apex: 104 }))].sort()).toEqual(['glue', 'stays-inside'])
  })
})

describe.each(readdirSync(new URL('plans/', CONTENT)))('content/plans/%s', (file) => {
  const text = textOf(file.replace('.mdx', ''))

  test('presses what the page has: its words stand in the widgets, or where they take theirs from', () => {
    const room = /^(?:dummy|keeping|template|fields)(?:\/.*)?\.tsx?$/
    const source = ['src/widgets/', 'content/words/']
      .map((folder) => new URL(`../../${folder}`, import.meta.url))
      .flatMap((folder) =>
        readdirSync(folder, { recursive: true, encoding: 'utf8' })
          .filter((name) => room.test(name))
          .map((name) => readFileSync(new URL(name, folder), 'utf8')),
      )
      .join('\n')
    const kinds = readdirSync(new URL('../../src/paper/mechanisms/', import.meta.url))
      .filter((name) => name.endsWith('.ts'))
      .map((name) => readFileSync(new URL(`../../src/paper/mechanisms/${name}`, import.meta.url), 'utf8'))
      .join('\n')
    const typed = ['beak', 'jaw', 'bank', 'reed', 'owl', 'wing']
    const own = ['Open the start']
    const pressed = [...text.matchAll(/“([^”]+)”/g)].map(([, words]) => words ?? '')
    expect(pressed.length).toBeGreaterThan(5)
    expect(
      pressed.filter((words) => ![...typed, ...own].includes(words) && !`${source}${kinds}`.includes(words)),
    ).toEqual([])
  })

  test('begins its caution with the school’s own rules, and has no exclamation marks', () => {
    expect(text).toMatch(/<TakeCare>\s+Your school’s own rules come first\./)
    expect(text.replace(/<!--|!==?/g, '')).not.toContain('!')
    expect(text).toMatch(/adult/)
  })

  test('types no number that the model knows', () => {
    const prose = text
      .split('---')[2]
      ?.replace(/<[^>]*>/g, '')
      .replace(/set=\{\{.*?\}\}\}?/g, '')
    // Ways of saying an opening or a paper, which are no sizes of the model.
    const numbers = [...(prose ?? '').matchAll(/(?<![A-Z])\b\d[\d.]*\s*(?:mm|°)?/g)].map(([word]) =>
      word.trim(),
    )
    expect(numbers.filter((word) => !['90°', '100'].includes(word))).toEqual([])
  })
})

describe('what a dummy asks of the hands', () => {
  test('a beak of one slit: one cut, and the gutter, two ridges and four side folds', () => {
    // Counted on the card itself: a V-fold has a ridge and two side folds, and the two share a slit.
    expect(handsOf(dummy('beak'))).toEqual({ cuts: 1, folds: 7, glued: 0, parts: 2 })
  })

  test('a moth of its own card: its rim is cut, ridge and joints fold, two joints are glued', () => {
    expect(handsOf(dummy('moth'))).toEqual({ cuts: 1, folds: 4, glued: 2, parts: 1 })
  })
})
