// The small picture beside a trouble shows its sign: a card that fails the very check that it is about, marked there.
// That a picture shows what its words speak of is common practice, no source.
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { toSvg } from '../../src/drawing/pen/svg.ts'
import type { Flat } from '../../src/paper/index.ts'
import { check } from '../../src/paper/index.ts'
import type { RawDesign, WrongCard } from '../../src/site/fault-picture.ts'
import { spoilt } from '../../src/site/fault-picture.ts'
import { troubleFigure } from '../../src/site/trouble-figure.ts'
import type { TroublePicture } from '../../src/site/trouble-rows.ts'
import { rowsOf } from '../../src/site/trouble-rows.ts'
import { dummy, slugs, sourceOf } from './chapters.ts'

const rawDummy = (name: string): RawDesign =>
  JSON.parse(
    readFileSync(new URL(`../../content/dummies/${name}.hingebook.json`, import.meta.url), 'utf8'),
  ) as RawDesign

const troubles = slugs.flatMap((slug) => {
  const source = sourceOf(slug)
  const name = /^dummy: (.*)$/m.exec(source)?.[1] ?? ''
  const point = /^ {2}point: (.*)$/m.exec(source)?.[1]
  const raw = rawDummy(name)
  return rowsOf(source, { design: dummy(name), dummy }).map((row) => ({
    ...{ ...row, slug, raw },
    point: point === undefined ? undefined : (JSON.parse(point) as Flat),
    title: `${slug}: ${row.sign}`,
  }))
})

const draw = (raw: RawDesign, picture: TroublePicture, point?: Flat) =>
  troubleFigure(raw, picture, { point, place: 'here' })

/** The checks that a card fails. */
const failing = (raw: RawDesign, set: unknown = {}): readonly string[] =>
  check(spoilt(raw, set as WrongCard['set']), { repairs: false }).flatMap(({ ok, name }) =>
    ok ? [] : [name],
  )

/** What a sign says in so many words is a check. */
const SIGNS: readonly (readonly [RegExp, string])[] = [
  [/sticks out/, 'stays-inside'],
  [/before (it|the card) is flat/, 'opens-flat'],
  [/will not shut flat/, 'shuts-flat'],
  [/stays open a little/, 'shuts-flat'],
  [/run into|scrapes|clicks/, 'clear-motion'],
]

describe('the picture of a trouble', () => {
  test.each(SIGNS)('whose sign is like %s marks the check %s', (sign, name) => {
    const found = troubles.filter((one) => sign.test(one.sign))
    expect(found.length).toBeGreaterThan(0)
    for (const { picture, title } of found) expect(picture.marks, title).toBe(name)
  })

  test.each(troubles.filter(({ picture }) => picture.marks !== undefined))(
    'fails its check, marked, where the right sizes do not: $title',
    ({ raw, picture, point }) => {
      expect(failing(raw, picture.set)).toContain(picture.marks)
      expect(draw(raw, picture, point).marks.some(({ role }) => role === 'fault')).toBe(true)
      expect(failing(raw)).not.toContain(picture.marks)
      const { set: _, ...right } = picture
      expect(() => draw(raw, right, point)).toThrow(
        `marks is ${picture.marks}, which this card does not fail`,
      )
    },
  )

  test('is its own in its chapter, without words that none can read', () => {
    const seen = new Map<string, string>()
    for (const { slug, raw, picture, point, title } of troubles) {
      const drawing = draw(raw, picture, point)
      expect(
        drawing.marks.filter(({ mark }) => mark === 'word'),
        title,
      ).toEqual([])
      const key = `${slug} ${toSvg(drawing, { digits: 1 })}`
      expect(seen.get(key), title).toBeUndefined()
      seen.set(key, title)
    }
    expect(seen.size).toBe(troubles.length)
  })

  test('of what was made wrongly has the wrong sizes in a state of making, too', () => {
    const raw = rawDummy('beak')
    const flat = (picture: TroublePicture) => toSvg(draw(raw, { shows: 'flat', ...picture }), { digits: 1 })
    expect(flat({ set: { beak: { cut: 30 } } })).not.toBe(flat({}))
  })

  test('of a piece stuck on keeps what is drawn on it, at sizes that its file does not have', () => {
    const raw = rawDummy('moon')
    const { art, mechanisms } = spoilt(raw, { moon: { size: 62 } })
    expect(art?.length).toBe((raw.art as unknown[]).length)
    expect(mechanisms).not.toEqual(spoilt(raw, {}).mechanisms)
    expect(spoilt(raw, { hill: { apex: 20 } }).art).toBeUndefined()
  })

  test.each([
    ['neither', {}, 'needs one of shows (a state of making) and opening (the card as it stands).'],
    ['both', { shows: 'flat', opening: 90 }, 'needs one of shows'],
    [
      'a strange mechanism',
      { opening: 90, set: { beek: { cut: 3 } } },
      'set names beek; the card has beak, jaw.',
    ],
    ['a strange field', { opening: 90, set: { beak: { cutt: 3 } } }, /cutt/],
    ['no fields', { opening: 90, set: { beak: 3 } }, 'has a wrong set.beak: '],
    ['an opening that no card has', { opening: 200 }, 'has a wrong opening: '],
    [
      'a check that holds',
      { opening: 90, marks: 'opens-flat' },
      'marks is opens-flat, which this card does not fail; it fails none.',
    ],
    [
      'a fault of another opening',
      { opening: 90, set: { beak: { apex: 170, cut: 60 } }, marks: 'stays-inside' },
      /which this card fails at 0°.*; it is drawn at 90°\./,
    ],
    [
      'a strange crease',
      { opening: 90, where: 'beak/left/middle' },
      'where names beak/left/middle; the card has',
    ],
    ['nothing to go near', { opening: 90, near: 2 }, 'near asks for something that is marked'],
    [
      'a camera in a step',
      { shows: 'flat', camera: { turn: 0, tilt: 0 } },
      'has camera, which goes with opening',
    ],
    ['a step’s opening', { opening: 90, at: 60 }, 'has at, which goes with shows, not with opening.'],
    [
      'dots without a point',
      { shows: 'open', dots: true },
      'has dots, and this chapter’s bench has no point.',
    ],
  ] as const)('says where it is written what is wrong: %s', (_, picture, sentence) => {
    const drawn = () => draw(rawDummy('beak'), picture)
    expect(drawn).toThrow('here <Slip> ')
    expect(drawn).toThrow(sentence)
  })
})
