// What chapters 9 to 13 say of their dummies, and of paper, is true of them.
// Facts of the trade that no test can reach are marked in the text beside them as what they are: on which side to
// score, how glues and tapes hold, how long they dry, what tears first, strips behind a gutter and flat spines are
// common practice, no source; grain, its tests by bending and tearing, and that a sheet swells more across it were
// read on printing.org and expertsinfinishing.com; that a wet strip curls round the grain is from memory.
import { describe, expect, test } from 'vitest'
import { orderOf } from '../../src/booklet/index.ts'
import type { Change, Design, Vec3 } from '../../src/paper/index.ts'
import {
  change,
  check,
  fieldsFor,
  measure,
  openingRange,
  partMargin,
  pieces,
  poseAt,
  settingOf,
  thickest,
} from '../../src/paper/index.ts'
import { answer } from '../../src/site/cells/number.ts'
import { between, crossOf, dotOf, minus, RAD, unit } from '../paper/shared/space.ts'
import { all, attribute, chapter, dummy, plain, slugs, sourceOf } from './chapters.ts'

const found = (design: Design, id: string) => {
  const m = design.mechanisms.find((one) => one.id === id)
  if (!m) throw new Error(`${design.title} has no ${id}`)
  return m
}

const size = (design: Design, id: string, name: string): number => settingOf(found(design, id), name)

const tip = (design: Design, opening: number, id: string) => {
  const measured = measure(design, opening).tips[id]
  if (!measured) throw new Error(`${id} has no tip`)
  return measured
}

const failed = (design: Design) => check(design, { repairs: false }).filter(({ ok }) => !ok)

/** What a chapter's guess calls right. */
const rightOf = (tree: Parameters<typeof all>[0]) =>
  all(tree, 'Predict')
    .flatMap((cell) => all(cell, 'Guess'))
    .filter((one) => attribute(one, 'right') !== undefined)
    .map((one) => attribute(one, 'says'))

const shutsTo = (design: Design): number => openingRange(design)[0]

const grows = (numbers: readonly number[]): void => {
  for (let k = 1; k < numbers.length; k++) expect(numbers[k]).toBeGreaterThan(numbers[k - 1] as number)
}

describe('Why it shuts flat', () => {
  const house = dummy('house')
  const walls = (leftWall: number): Design => change(house, 'house', { leftWall })

  test.each([45, 46, 48, 52])('a left wall of %d mm stops the card by the rule of cosines', (wall) => {
    // Euclid II.12 and 13: gutter, left joint and ridge, once the right wall lies on its page.
    const [a, far] = [30, 22 + 52]
    const theta = Math.acos((a * a + far * far - wall * wall) / (2 * a * far)) / RAD
    expect(shutsTo(walls(wall))).toBeCloseTo(theta, 6)
    expect(answer(house, { of: 'shuts-to', id: 'house', with: { leftWall: wall } })).toMatchObject({
      unit: 'deg',
      value: shutsTo(walls(wall)),
    })
  })

  test('a slip four times as large opens the gap about twice as wide', () => {
    // Near nothing the cosine is a parabola, so the gap goes with the root of the slip.
    const [small, large] = [shutsTo(walls(44.02)), shutsTo(walls(44.08))]
    expect(large / small).toBeCloseTo(2, 2)
    const ratio = shutsTo(walls(52)) / shutsTo(walls(46))
    expect(ratio).toBeGreaterThan(1.9)
    expect(ratio).toBeLessThan(2.2)
  })

  test('a base angle that is too large stops the fir by the rule of cosines on a ball', () => {
    // Hann, Elements of Spherical Trigonometry, 1866, p. 4: right base and facet angle lie in one line by then.
    const [base, facet, far] = [50, 55, 100].map((degrees) => degrees * RAD) as [number, number, number]
    const cosine = (Math.cos(facet) - Math.cos(base) * Math.cos(far)) / (Math.sin(base) * Math.sin(far))
    expect(shutsTo(change(house, 'fir', { 'left.base': 50 }))).toBeCloseTo(Math.acos(cosine) / RAD, 6)
  })

  test('is spoilt by one number, and says by how much; two numbers mend it', () => {
    const gap = (id: string, fields: Change) =>
      failed(change(house, id, fields)).find(({ name }) => name === 'shuts-flat')?.value
    expect(gap('house', { rightFoot: 30 })).toBeCloseTo(8, 9)
    expect(gap('fir', { 'left.base': 50 })).toBeCloseTo(5, 9)
    for (const [id, fields] of [
      ['house', { rightFoot: 30, leftFoot: 38 }],
      ['fir', { 'left.base': 50, 'left.facet': 50 }],
      ['fir', { 'left.base': 50, 'right.facet': 60 }],
    ] as const)
      expect(gap(id, fields), JSON.stringify(fields)).toBeUndefined()
    expect(failed(house)).toEqual([])
  })

  /** Angles from fold to fold round the apex of a cut V-fold in the flat sheet, in order, degrees. */
  function sectors(design: Design): readonly number[] {
    const lines = pieces(design).flatMap(({ lines }) => lines)
    const apex = lines.find(({ of }) => of === 'beak/ridge')?.points[0]
    if (!apex) throw new Error('there is no ridge')
    const same = (p: readonly [number, number]) => Math.hypot(p[0] - apex[0], p[1] - apex[1]) < 1e-9
    const ways = lines
      .filter(({ points }) => points.length === 2 && points.some(same))
      .map(({ points }) => points.find((p) => !same(p)) as readonly [number, number])
      .map(([x, y]) => Math.atan2(y - apex[1], x - apex[0]) / RAD)
      .sort((a, b) => a - b)
    return ways.map((way, k) => ((ways[(k + 1) % ways.length] as number) - way + 360) % 360)
  }

  test.each([20, 42, 60])('Kawasaki’s theorem holds at the apex of a slit %d mm deep', (cut) => {
    // T. Kawasaki 1989: going round, sector angles taken away and added by turns make 0, so opposite ones 180°.
    const [a, b, c, d, ...more] = sectors(change(dummy('beak'), 'beak', { cut })) as [
      number,
      number,
      number,
      number,
    ]
    expect(more).toEqual([])
    expect(a + c).toBeCloseTo(180, 9)
    expect(b + d).toBeCloseTo(180, 9)
  })

  test('Maekawa’s theorem holds there: mountains and valleys differ by two', () => {
    // J. Maekawa, 1980s. The gutter counts as far as it runs up to the apex.
    const lines = pieces(dummy('beak')).flatMap((piece) => piece.lines)
    const apex = lines.find(({ of }) => of === 'beak/ridge')?.points[0]
    const kinds = lines
      .filter(({ points }) => points.length === 2 && points.some((p) => String(p) === String(apex)))
      .map(({ kind }) => kind)
    expect(kinds.filter((kind) => kind === 'mountain').length).toBe(1)
    expect(kinds.filter((kind) => kind === 'valley').length).toBe(3)
  })
})

describe('Lopsided on purpose', () => {
  const lilies = dummy('lilies')
  const split = (lb: number, lf: number, rb: number, rf: number): Design =>
    change(lilies, 'near-lily', { 'left.base': lb, 'left.facet': lf, 'right.base': rb, 'right.facet': rf })
  const OPENINGS = [20, 50, 80, 110, 140, 170]

  test('the tip goes to the side of the narrow facet, and farther the wider the card is open', () => {
    grows(OPENINGS.map((opening) => -(tip(lilies, opening, 'near-lily').at[0] as number)))
    grows(OPENINGS.map((opening) => tip(lilies, opening, 'far-lily').at[0] as number))
    expect(answer(lilies, { of: 'aside', id: 'near-lily', at: 90 }).value).toBeCloseTo(
      Math.abs(tip(lilies, 90, 'near-lily').at[0] as number),
      9,
    )
  })

  test.each(OPENINGS)('at %d° the ridge keeps its facet angle from either joint', (opening) => {
    // The two planes and the ball of the formula: what is drawn on stiff paper keeps its angles.
    const { creases } = poseAt(lilies, opening)
    const way = (name: string): Vec3 => {
      const line = creases[`near-lily/${name}`]
      if (!line) throw new Error(`there is no near-lily/${name}`)
      return minus(line.end, line.start)
    }
    expect(between(way('ridge'), way('left'))).toBeCloseTo(40, 9)
    expect(between(way('ridge'), way('right'))).toBeCloseTo(80, 9)
  })

  test('shut, only the sum of base and facet angle says where the ridge lies', () => {
    const where = (design: Design) => tip(design, 0, 'near-lily')
    // 56 mm at 110°, by the sine and the cosine.
    for (const design of [lilies, split(50, 60, 50, 60), split(60, 50, 40, 70)]) {
      expect(where(design).standOff).toBeCloseTo(56 * Math.sin(110 * RAD), 9)
      expect(where(design).reach).toBeCloseTo(30 + 56 * Math.cos(110 * RAD), 9)
      expect(partMargin(design, 'near-lily')).toBeCloseTo(partMargin(lilies, 'near-lily'), 9)
    }
    expect(where(split(50, 55, 50, 55)).standOff).toBeGreaterThan(where(lilies).standOff + 1)
  })

  test('a tip that leans stands lower', () => {
    grows([lilies, split(60, 50, 40, 70), split(50, 60, 50, 60)].map((d) => tip(d, 90, 'near-lily').rise))
  })

  test('the broad face turns to the reader', () => {
    const eye = unit([0, -Math.cos(28 * RAD), Math.sin(28 * RAD)])
    const turned = [40, 70, 100, 130, 150].map((opening) => {
      const [a, b, c] = poseAt(lilies, opening).panels['near-lily/right'] as [Vec3, Vec3, Vec3]
      return Math.abs(dotOf(unit(crossOf(minus(b, a), minus(c, a))), eye))
    })
    grows(turned)
  })

  test('one angle alone jams it, and 80° with 30° lies down too early', () => {
    const names = (fields: Change) => failed(change(lilies, 'near-lily', fields)).map(({ name }) => name)
    expect(names({ 'left.base': 75 })).toContain('shuts-flat')
    const low = names({ 'left.base': 80, 'left.facet': 30 })
    expect(low).not.toContain('shuts-flat')
    expect(low).toContain('clear-motion')
  })
})

describe('Will it fit?', () => {
  const card = dummy('tree')
  const tree = (fields: Change): Design => change(card, 'tree', fields)

  test('a layer needs twice its height, so none rises more than half of the page', () => {
    expect(tip(card, 90, 'wall').rise).toBeCloseTo(24, 9)
    expect(tip(card, 0, 'wall').standOff).toBeCloseTo(48, 9)
    const deep = (depth: number) => change(card, 'wall', { left: depth, right: depth })
    expect(partMargin(deep(52.4), 'wall')).toBeGreaterThan(0)
    expect(partMargin(deep(52.6), 'wall')).toBeLessThan(0)
  })

  test('a V-fold rises at 90° seven tenths of its ridge at most', () => {
    // Half of the right angle between the pages: sin 45°.
    let best = 0
    for (let base = 20; base <= 60; base += 5)
      for (let facet = base; facet <= 85; facet += 5) {
        const { rise } = tip(
          tree({ 'left.base': base, 'right.base': base, 'left.facet': facet, 'right.facet': facet }),
          90,
          'tree',
        )
        expect(rise).toBeLessThanOrEqual(86 * Math.SQRT1_2 + 1e-9)
        best = Math.max(best, rise / 86)
      }
    expect(best).toBeGreaterThan(0.7)
    expect(tip(card, 0, 'tree').standOff).toBeCloseTo(86 * Math.sin(100 * RAD), 9)
  })

  test('hides more height for its room than a layer does', () => {
    const spent = (id: string) => tip(card, 0, id).standOff / tip(card, 90, id).rise
    expect(spent('wall')).toBeCloseTo(2, 9)
    expect(spent('tree')).toBeLessThan(1.5)
  })

  test('a ridge of 112 mm sticks out most half-way, as the page says', () => {
    const out = failed(tree({ ridge: 112 })).find(({ name }) => name === 'stays-inside')
    expect(out?.opening).toBeGreaterThan(70)
    expect(out?.opening).toBeLessThan(86)
    const shut = partMargin(tree({ ridge: 112 }), 'tree')
    expect(shut).toBeLessThan(0)
    expect(Math.abs(out?.value ?? 0)).toBeGreaterThan(-shut)
  })

  test('at a slant a longer ridge fits', () => {
    const slant = tree({ 'left.base': 30, 'right.base': 30, 'left.facet': 75, 'right.facet': 75, ridge: 100 })
    expect(failed(slant)).toEqual([])
    expect(tip(slant, 90, 'tree').rise).toBeGreaterThan(tip(card, 90, 'tree').rise + 5)
  })

  test('is seven sheets thick: two of the cover, two of the card, two of the tree, the owl', () => {
    expect(thickest(card).layers).toBe(7)
    expect(thickest({ ...card, card: { ...card.card, cover: false } }).layers).toBe(5)
    const bare = { ...card, mechanisms: card.mechanisms.filter(({ id }) => id !== 'owl') }
    expect(thickest(bare).layers).toBe(6)
    expect(thickest(card).thickness).toBeCloseTo(7 * 0.25, 9)
  })
})

describe('Paper itself', () => {
  const { tree } = chapter('paper-itself')
  const rows = [
    ...sourceOf('paper-itself').matchAll(/^\| (\d+) lb (\w+) +\| (\d+) +\| ([\d.]+) +\| (.+?) +\|$/gm),
  ].map(([, pounds, sort, grams, thick, good]) => ({
    pounds: Number(pounds),
    sort: String(sort),
    grams: Number(grams),
    thick: Number(thick),
    good: String(good),
  }))

  test('A4 of 80 g/m² weighs about 5 g, and sixteen make a square metre', () => {
    // ISO 216:2007, A4 210 × 297 mm; ISO 536, mass by area: 4.99 g is the published example.
    expect((210 * 297 * 80) / 1e6).toBeCloseTo(4.99, 2)
    expect(1e6 / (210 * 297)).toBeCloseTo(16, 1)
    const why = all(tree, 'Why').map(plain).join(' ')
    expect(why).toMatch(/from a pack that says 80 g\/m².* sixteen sheets .* weighs 5 g\./)
  })

  test('tabs and joints move no tip: the guess', () => {
    const lamps = dummy('lamps')
    const before = [20, 60, 90, 120, 180].map((opening) => tip(lamps, opening, 'big').at)
    const held = change(lamps, 'big', { tab: 16, foot: 36 })
    expect([20, 60, 90, 120, 180].map((opening) => tip(held, opening, 'big').at)).toEqual(before)
    // The ridge and the angles do move it, as the answer says.
    for (const set of [{ ridge: 80 }, { apex: 58 }]) {
      const moved = tip(change(lamps, 'big', set), 90, 'big').at
      expect(Math.hypot(...moved.map((n, k) => n - (before[2]?.[k] ?? 0)))).toBeGreaterThan(3)
    }
    expect(rightOf(tree)).toEqual(['It stays just where it was'])
  })

  test('pounds are turned into grams by the size of the large sheet', () => {
    // Factors of a printer maker's paper guide; sizes in inches of the large sheet of each sort.
    const factors: Readonly<Record<string, readonly [number, number, number]>> = {
      bond: [3.76, 17, 22],
      cover: [2.704, 20, 26],
      index: [1.808, 25.5, 30.5],
    }
    expect(rows.length).toBe(6)
    const [formula] = all(tree, 'Formula').filter((one) => String(attribute(one, 'title')).includes('pounds'))
    const scale = Number(/w = ([\d.]+)/.exec(String(formula && attribute(formula, 'tex')))?.[1])
    for (const { pounds, sort, grams } of rows) {
      const [factor, width, height] = factors[sort] ?? [Number.NaN, Number.NaN, Number.NaN]
      expect(Math.abs(pounds * factor - grams), `${pounds} lb ${sort}`).toBeLessThanOrEqual(0.6)
      expect(Math.abs((scale * pounds) / (width * height) - grams), `${pounds} lb ${sort}`).toBeLessThan(0.8)
    }
  })

  test('65 lb cover is heavier than 90 lb index, and thickness goes up with the weight', () => {
    const grams = (pounds: number, sort: string) =>
      rows.find((row) => row.pounds === pounds && row.sort === sort)?.grams ?? Number.NaN
    expect(grams(65, 'cover')).toBeGreaterThan(grams(90, 'index'))
    // Trade charts of uncoated stock: 0.097, 0.19, 0.20, 0.23, 0.24 and 0.28 mm; makers vary by ±5 to 7 %.
    const charts = [0.097, 0.19, 0.2, 0.23, 0.24, 0.28]
    rows.forEach(({ thick }, k) => {
      expect(Math.abs(thick - (charts[k] as number))).toBeLessThan(0.005)
    })
    grows(rows.map((row) => row.grams))
  })

  test('what most cards here are made of is the row that comes nearest to most cards here', () => {
    const calipers = slugs.map((slug) => chapter(slug).design.card.caliper)
    const count = (caliper: number): number => calipers.filter((one) => one === caliper).length
    const usual = calipers.reduce((most, one) => (count(one) > count(most) ? one : most))
    expect(count(usual)).toBeGreaterThan(calipers.length / 2)
    const off = ({ thick }: (typeof rows)[number]): number => Math.abs(thick - usual)
    const nearest = rows.reduce((best, row) => (off(row) < off(best) ? row : best))
    expect(rows.filter(({ good }) => good === 'most cards here')).toEqual([nearest])
  })

  test('wider tabs and longer joints leave the lanterns sound', () => {
    const lamps = dummy('lamps')
    for (const fields of [{ tab: 14 }, { foot: 34 }, { tab: 12 }, { ridge: 82 }])
      expect(failed(change(lamps, 'big', fields)), JSON.stringify(fields)).toEqual([])
  })
})

describe('A scene', () => {
  const scene = dummy('scene')

  test('is made in the order that the page gives: cut, glued, its guests, the cover last', () => {
    const works = orderOf(scene).filter(
      ({ does }) => !['cut-out', 'colour', 'pieces', 'press', 'open'].includes(does),
    )
    const first = (id: string) => works.findIndex(({ of }) => of.includes(id))
    expect(works[0]?.of).toEqual(['lantern'])
    expect(first('reeds')).toBeGreaterThan(first('lantern'))
    for (const guest of ['heron', 'moon']) expect(first(guest)).toBeGreaterThan(first('reeds'))
    expect(works.at(-1)?.does).toBe('cover')
  })

  test('has four parts, is sound and under 2 mm thick', () => {
    expect(scene.mechanisms.length).toBe(4)
    expect(failed(scene)).toEqual([])
    expect(thickest(scene).thickness).toBeLessThan(2)
  })

  test('heron and moon go along with their reeds', () => {
    const nearer = change(scene, 'reeds', { apex: 56 })
    for (const id of ['heron', 'moon'])
      expect(tip(scene, 90, id).reach - tip(nearer, 90, id).reach).toBeCloseTo(8, 9)
    const great = change(scene, 'moon', fieldsFor(found(scene, 'moon'), 'size', 46))
    expect(size(great, 'moon', 'size')).toBeCloseTo(46, 9)
  })

  test('a longer lantern meets the reeds on the way, though gutter is free between them: the guess', () => {
    const longer = change(scene, 'lantern', { end: 58 })
    expect(size(longer, 'reeds', 'apex')).toBeGreaterThan(58 + 5)
    const hits = failed(longer)
    expect(hits.map(({ name, ids }) => [name, ids.slice(0, 2)])).toEqual([
      ['clear-motion', ['lantern', 'reeds']],
    ])
    // On the way: not near either end.
    expect(hits[0]?.opening).toBeGreaterThan(40)
    expect(hits[0]?.opening).toBeLessThan(90)
    expect(tip(longer, 90, 'lantern').rise).toBeCloseTo(tip(scene, 90, 'lantern').rise, 9)
    expect(rightOf(chapter('a-scene').tree)).toEqual(['No, they meet on the way'])
  })

  test('says how many pairs can meet', () => {
    // n (n − 1) / 2: 6 of four, 45 of ten.
    const why = all(chapter('a-scene').tree, 'Why').map(plain).join(' ')
    expect(why).toContain(
      `With four parts that makes ${(4 * 3) / 2} pairs, with ten parts it makes ${(10 * 9) / 2}.`,
    )
  })
})
