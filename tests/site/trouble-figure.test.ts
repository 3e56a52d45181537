// The small picture beside a trouble shows its sign: a card that fails the very check that it is about, marked there.
// That a picture shows what its words speak of is common practice, no source.
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { toSvg } from '../../src/drawing/pen/svg.ts'
import type { Flat } from '../../src/paper/index.ts'
import { check } from '../../src/paper/index.ts'
import type { RawDesign, WrongCard } from '../../src/site/fault-picture.ts'
import { spoilt } from '../../src/site/fault-picture.ts'
import { shadowFitted } from '../../src/site/shadow-room.ts'
import { isPictured, troubleFigure } from '../../src/site/trouble-figure.ts'
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

const pictured = troubles.filter(({ picture }) => isPictured(picture))

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
      const { set: _, where: __, ...right } = picture
      expect(() => draw(raw, right, point)).toThrow(
        `marks is ${picture.marks}, which this card does not fail`,
      )
    },
  )

  test('is its own in its chapter, without words that none can read', () => {
    const seen = new Map<string, string>()
    for (const { slug, raw, picture, point, title } of pictured) {
      const drawing = draw(raw, picture, point)
      expect(
        drawing.marks.filter(({ mark }) => mark === 'word'),
        title,
      ).toEqual([])
      const key = `${slug} ${toSvg(drawing, { digits: 1 })}`
      expect(seen.get(key), title).toBeUndefined()
      seen.set(key, title)
    }
    expect(seen.size).toBe(pictured.length)
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
    const drawnOn = (set: WrongCard['set']) =>
      new Set((spoilt(raw, set).art ?? []).map(({ on }) => on.split('/')[0]))
    expect(drawnOn({ hill: { ridge: 60 } })).toEqual(new Set(['moon', 'cloud', 'tree', 'star']))
    // Only its place is another: it is cut as it was drawn for.
    expect(drawnOn({ hill: { apex: 20 } })).toContain('hill')
  })

  test('puts one ring where several would overlap, and none round what two parts that meet are', () => {
    const raw = rawDummy('owl')
    const meeting = {
      opening: 180,
      set: { 'left-wing': { toward: -1, apex: 54 }, 'right-wing': { toward: -1, apex: 54 } },
      marks: 'clear-motion',
    }
    const faults = draw(raw, meeting).marks.filter(({ role }) => role === 'fault')
    expect(faults.map(({ mark }) => mark)).toEqual(['dot'])
    const apart = draw(raw, { opening: 120, where: 'gutter/start gutter/end' }).marks
    expect(apart.filter(({ role }) => role === 'fault').length).toBe(2)
  })

  test('goes round a fold in a loop that keeps off it: red dashes on it would read as a valley', () => {
    const { marks } = draw(rawDummy('card'), { opening: 180, where: 'gutter' })
    const loop = marks.find(({ role }) => role === 'fault')
    const ends = draw(rawDummy('card'), { opening: 180, where: 'gutter/start gutter/end' }).marks.flatMap(
      (mark) => (mark.mark === 'dot' && mark.role === 'fault' ? [mark.at] : []),
    )
    const [a = [0, 0], b = [0, 0]] = ends
    const long = Math.hypot(b[0] - a[0], b[1] - a[1])
    if (loop?.mark !== 'path') throw new Error('no loop')
    expect(loop.closed).toBe(true)
    for (const [x, y] of loop.runs.flat()) {
      const along = ((x - a[0]) * (b[0] - a[0]) + (y - a[1]) * (b[1] - a[1])) / long
      const off = Math.abs((x - a[0]) * (b[1] - a[1]) - (y - a[1]) * (b[0] - a[0])) / long
      expect(along < -3 || along > long + 3 || off > 3).toBe(true)
    }
  })

  test('has beside a fold that is elsewhere the line where it should be', () => {
    const ghosts = (set: object) =>
      draw(rawDummy('layers'), {
        opening: 120,
        set,
        where: 'body/ridge',
        camera: { turn: -78, tilt: 42 },
      }).marks.filter(({ role }) => role === 'ghost').length
    expect(ghosts({})).toBe(0)
    expect(
      ghosts({ body: { kind: 'cut-trapezoid', left: null, right: null, startCut: 44, endCut: 18 } }),
    ).toBe(1)
  })

  test('rings a part, a place on a fold, and a tear in the page', () => {
    const raw = rawDummy('tree')
    const drawn = (where: string) => draw(raw, { opening: 150, where }).marks
    const ring = (where: string) =>
      drawn(where).filter((mark) => mark.mark === 'dot' && mark.role === 'fault')
    expect(ring('owl').length).toBe(1)
    expect(ring('tree/ridge/20')).not.toEqual(ring('tree/ridge/start'))
    expect(drawn('tear:wall/right/end').length - drawn('wall/right/end').length).toBe(2)
    expect(draw(raw, { shows: 'reversing', where: 'wall' }).marks.at(-1)?.mark).toBe('dot')
    expect(() => draw(raw, { shows: 'reversing', where: 'wal' })).toThrow('where names wal, of which nothing')
  })

  test('of what has not been pushed through shows no hand that does it', () => {
    for (const { shows, title, raw, point, picture } of pictured.map((one) => ({
      ...one,
      shows: one.picture.shows,
    })))
      if (shows === 'reversing' || shows === 'popping')
        expect(
          draw(raw, picture, point).marks.filter(({ role }) => role === 'hand' || role === 'ghost'),
          title,
        ).toEqual([])
  })

  test('of a crooked gutter has corners that miss each other by more, the more crooked it is', () => {
    const radius = (crooked: number): number => {
      const { marks } = draw(rawDummy('card'), { opening: 8, crooked, camera: { turn: -26, tilt: 42 } })
      const rings = marks.flatMap((mark) =>
        mark.mark === 'dot' && mark.role === 'fault' ? [mark.radius] : [],
      )
      expect(rings.length).toBe(1)
      return rings[0] ?? 0
    }
    expect(radius(5)).toBeGreaterThan(radius(2))
    expect(() => draw(rawDummy('beak'), { opening: 8, crooked: 2 })).toThrow('a card without parts')
  })

  test('has the light of a flame by night only where the flame is seen', () => {
    const hazes = (opening: number, stand: string) =>
      draw(rawDummy('scene'), { opening, stand }).marks.filter(({ role }) => role === 'haze').length
    expect(hazes(22, 'left')).toBe(0)
    expect(hazes(110, 'gutter')).toBe(1)
  })

  test('has all of the shadow in it, where the whole card is', () => {
    for (const { raw, picture, point, title } of pictured) {
      if (picture.near !== undefined) continue
      const { box, marks } = draw(raw, picture, point)
      const shadow = marks.flatMap((mark) =>
        mark.mark === 'path' && mark.role === 'shadow' && mark.of === 'table' ? mark.runs.flat() : [],
      )
      for (const [x, y] of shadow) {
        expect(x, title).toBeLessThanOrEqual(box[0] + box[2])
        expect(y, title).toBeLessThanOrEqual(box[1] + box[3])
      }
    }
    const far = { ...draw(rawDummy('card'), { opening: 60 }), box: [0, 0, 90, 63] as const }
    expect(shadowFitted(far, 1.3)).toBe(far)
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
