// Verdicts right at their limits and sentences word by word, in numbers worked by hand.
import { describe, expect, test } from 'vitest'
import { subjectOf } from '../../../src/paper/checks/subject.ts'
import { check } from '../../../src/paper/index.ts'
import { first, fold, layer, only } from '../shared/check-designs.ts'
import { design, gluedMoth } from '../shared/designs.ts'

const square = (a: number, l: number, size: number) => [
  [a, l],
  [a + size, l],
  [a + size, l + size],
  [a, l + size],
]

const moon = (more: object = {}) => ({
  id: 'moon',
  kind: 'rider',
  on: 'page/right',
  shape: square(20, 20, 30),
  glue: square(30, 30, 10),
  ...more,
})

describe('glue', () => {
  const told = (...mechanisms: object[]) => only('glue', design(mechanisms))

  test('to the very edge of its page sticks; a hair further it does not', () => {
    // Glue from 30 to 40 mm on a page 105 mm wide.
    expect(told(moon({ across: 65 }))).toMatchObject([
      { ok: true, value: 0, sentence: 'All glue sticks to one side alone.' },
    ])
    const [past] = told(moon({ across: 65 + 1e-6 }))
    expect(past).toMatchObject({ ok: false, ids: ['moon', 'page/right'] })
    expect(told(moon({ across: 68 }))[0]?.sentence).toBe(
      'The moon’s glue reaches 3.0 mm past the edge of the right page.',
    )
    // Where to look: from the glue's corner straight to the edge.
    const flat = told(moon({ across: 68 }))[0]?.flat?.map(([x]) => x)
    expect(flat?.[0]).toBeCloseTo(108, 9)
    expect(flat?.[1]).toBeCloseTo(105, 9)
  })

  test('over a hole says how deep, whose hole, and on which side', () => {
    // The layer's hole ends 30 mm from the gutter: glue from 27 on lies 3 mm in it.
    const [over] = told(layer('lamp', 'gutter', 20, 60, 30), moon({ across: -3 }))
    expect(over).toMatchObject({ ok: false, ids: ['moon', 'page/right'] })
    expect(over?.value).toBeCloseTo(3, 9)
    expect(over?.sentence).toBe(
      'The moon’s glue runs 3.0 mm over the cut and folds of the lamp on the right page.',
    )
    expect(told(layer('lamp', 'gutter', 20, 60, 30), moon())[0]?.ok).toBe(true)
    // A strip right across the glue has no corner in it: 4 mm of it, from 33 to 37 along, lie on the glue.
    const [strip] = told(layer('lamp', 'gutter', 33, 37, 60), moon())
    expect(strip?.ok).toBe(false)
    expect(strip?.sentence).toMatch(/over the cut and folds of the lamp on the right page\.$/)
  })

  test('beside its piece is told, up to its edge it is not', () => {
    expect(told(moon({ glue: square(20, 20, 30) }))[0]?.ok).toBe(true)
    const [beside] = told(moon({ glue: square(19, 30, 10) }))
    expect(beside?.value).toBeCloseTo(1, 9)
    expect(beside?.sentence).toBe('The moon’s glue shows 1.0 mm beside the piece.')
  })

  const owl = gluedMoth({ id: 'owl', apex: 100, toward: -1, base: 45, foot: 60, tab: 8 })
  const moth = gluedMoth({ apex: 40, base: 45, foot: 60, tab: 8 })

  test('of two tabs that cross leaves neither to be stuck down first', () => {
    // The joints run at 45 degrees from 40 up and from 100 down the gutter, and cross 30 mm from it.
    const [crossed, ...more] = told(moth, owl)
    expect(more).toEqual([])
    expect(crossed).toMatchObject({ ok: false, unit: 'mm', limit: 0, sense: 'at-most' })
    expect(crossed?.ids.slice(0, 2)).toEqual(['moth', 'owl'])
    expect(crossed?.sentence).toMatch(
      /^The moth’s tab and the owl’s lie over each other’s joint on the (left|right) page: neither can be stuck down first\.$/,
    )
    // Where to look: the later joint.
    const ends = crossed?.flat?.map(([x, y]) => [Math.abs(x), y])
    expect(ends?.[0]?.[0]).toBeCloseTo(0, 9)
    expect(ends?.[0]?.[1]).toBeCloseTo(100, 9)
    expect(ends?.[1]?.[0]).toBeCloseTo(60 * Math.SQRT1_2, 9)
    expect(ends?.[1]?.[1]).toBeCloseTo(100 - 60 * Math.SQRT1_2, 9)
    expect(ends).toHaveLength(2)
  })

  test('on two faces of a page, apart on one, or taped, does not', () => {
    expect(told(moth, { ...owl, side: 'outside' }).every(({ ok }) => ok)).toBe(true)
    expect(told(moth, { ...owl, apex: 135, foot: 20 }).every(({ ok }) => ok)).toBe(true)
    expect(told(moth, { ...owl, tab: 0 }).every(({ ok }) => ok)).toBe(true)
    // A piece stuck flat over the joint has no joint of its own.
    const over = { shape: square(2, 45, 30), glue: square(5, 50, 20) }
    expect(told(moth, moon(over)).every(({ ok }) => ok)).toBe(true)
  })

  test('of two tabs of one piece speaks of that piece', () => {
    const pond = {
      id: 'pond',
      kind: 'floating-layer',
      on: 'gutter',
      start: 40,
      end: 90,
      height: 20,
      left: 44,
      right: 44,
      tab: 8,
    }
    expect(told({ ...pond, walls: [-20, 34, 40] })[0]?.sentence).toBe(
      'Two tabs of the pond lie over each other’s joint on the pond’s right side: neither can be stuck down first.',
    )
    // On the page both turn outwards: from 34 to 42 and from 40 to 48. Of those only the outer joint is covered.
    expect(told({ ...pond, left: 60, right: 60, walls: [-20, 34, 40] }).every(({ ok }) => ok)).toBe(true)
  })
})

describe('thickness', () => {
  // Two pages; a layer's strip folds in between them as two more.
  test('is layers times caliper, and 2 mm are enough by default (common practice, no source)', () => {
    const lamp = [layer('lamp', 'gutter', 40, 80, 20)]
    expect(first('thickness', [], { caliper: 1 })).toMatchObject({
      ok: true,
      value: 2,
      limit: 2,
      caution: true,
    })
    expect(first('thickness', [], { caliper: 1.001 }).ok).toBe(false)
    const four = first('thickness', lamp, { caliper: 0.25 })
    expect(four).toMatchObject({ ok: true, value: 1, ids: ['lamp'], opening: 0 })
    expect(four.sentence).toBe('Shut, the card is 1.0 mm thick where 4 layers lie on one another.')
    expect(first('thickness', lamp, { caliper: 0.6 }).sentence).toBe(
      'Shut, the card is 2.4 mm thick where 4 layers lie on one another: it may not stay shut.',
    )
    expect(first('thickness', [], { caliper: 0.04 }).sentence).toMatch(/^Shut, the card is 0\.08 mm thick/)
    expect(first('thickness', [], { caliper: 0.05 }).sentence).toMatch(/^Shut, the card is 0\.1 mm thick/)
    // Where: shut, the strip lies between 0 and 20 mm from the gutter, and 40 to 80 along it.
    const [x, y = 0, z = 0] = four.space ?? []
    expect(x).toBe(0)
    expect(y).toBeGreaterThan(40)
    expect(y).toBeLessThan(80)
    expect(z).toBeGreaterThan(0)
    expect(z).toBeLessThan(40)
  })
})

describe('a narrow part', () => {
  test('is wide enough at 5 mm (common practice, no source), and points at its narrowest place', () => {
    const found = first('narrow', [layer('reed', 'gutter', 40, 45, 20)])
    expect(found).toMatchObject({ ok: true, limit: 5, sense: 'at-least' })
    expect(found.value).toBeCloseTo(5, 9)
    expect(found.sentence).toMatch(/^The narrowest part is the reed’s (left|right) side, 5\.0 mm wide\.$/)
    const thin = first('narrow', [layer('reed', 'gutter', 40, 44, 20)])
    expect(thin.sentence).toMatch(/^Only 4\.0 mm wide: the reed’s (left|right) side may tear or buckle\.$/)
    expect(thin.flat?.map(([, y]) => Math.round(y)).sort()).toEqual([40, 44])
    // Of a wide layer that is hardly deep, the depth.
    expect(first('narrow', [layer('reed', 'gutter', 40, 90, 3)]).value).toBeCloseTo(3, 9)
  })

  test('of no width at all has width nought', () => {
    const found = first('narrow', [layer('reed', 'gutter', 40, 40, 0)])
    expect(found).toMatchObject({ ok: false, value: 0 })
  })
})

describe('a guest on its fold', () => {
  test('says how much is left beyond it, by its nearer end', () => {
    const beak = fold('beak', 'gutter', 110, -40, 40)
    const eye = (apex: number, run: number) =>
      first('inside-fold', [beak, fold('eye', 'beak/ridge', apex, run, 4)])
    expect(eye(10, 20)).toMatchObject({ ok: true })
    // From 10 to 30 on a ridge of 40: both ends are 10 mm in. The beak has 38 mm and more of gutter.
    expect(eye(10, 20).value).toBeCloseTo(-10, 9)
    expect(eye(10, 27).value).toBeCloseTo(-3, 9)
    expect(eye(4, 20).value).toBeCloseTo(-4, 9)
    expect(eye(4, 20).sentence).toBe(
      'Every part keeps to its fold: the eye ends 4.0 mm short of the end of the beak’s ridge.',
    )
    const early = eye(14, -20)
    expect(early.sentence).toBe('The eye reaches 6.0 mm past the end of the beak’s ridge.')
    // Apex of the beak at 110 on the gutter, and 6 mm beyond it.
    expect(early.flat?.map(([x, y]) => [Math.round(x) + 0, Math.round(y)])).toEqual([
      [0, 110],
      [0, 116],
    ])
  })
})

describe('one check fails, and each thing that fails it is told once', () => {
  test('of those that hold the nearest to failing', () => {
    const two = [layer('lamp', 'gutter', 20, 40, 20), layer('reed', 'gutter', 60, 66, 9)]
    expect(only('narrow', design(two)).map(({ value }) => Number(value.toFixed(6)))).toEqual([6])
    const thin = [
      layer('lamp', 'gutter', 20, 24, 20),
      layer('reed', 'gutter', 60, 63, 9),
      layer('step', 'gutter', 80, 99, 9),
    ]
    expect(only('narrow', design(thin)).map(({ ids }) => ids[0])).toEqual(['lamp', 'reed'])
  })

  test('what sits on parts that cannot be cut is left out, and so is all that sits on that', () => {
    const wide = fold('beak', 'gutter', 110, -40, 120)
    const eye = layer('eye', 'beak/ridge', 10, 12, 3)
    const told = check(design([wide, eye]), { repairs: false })
    expect(told.filter(({ name, ok }) => name === 'cuts-inside' && !ok)).toHaveLength(1)
    expect(told.find(({ name }) => name === 'clear-motion')).toMatchObject({
      ok: false,
      verdict: 'undecided',
      waits: true,
      value: 0,
      sentence: 'Whether all parts pass clear of each other can be told once the beak can be cut.',
    })
    expect(told.filter(({ name, ids }) => name === 'bridge' && ids.includes('eye'))).toEqual([])
    // Two that cut into each other are both spoilt.
    const both = check(design([layer('lamp', 'gutter', 20, 50, 20), layer('reed', 'gutter', 40, 70, 20)]), {
      repairs: false,
    })
    expect(both.find(({ name }) => name === 'clear-motion')?.ids).toEqual(['lamp', 'reed'])
  })

  test('only what is asked for is told', () => {
    const made = design([layer('lamp', 'gutter', 20, 50, 20)])
    expect(check(made, { repairs: false, names: [] })).toEqual([])
    expect(check(made, { repairs: false, names: ['bridge', 'narrow'] }).map(({ name }) => name)).toEqual([
      'bridge',
      'narrow',
    ])
  })
})

describe('the openings over which parts are judged', () => {
  const subject = (mechanisms: readonly object[]) =>
    subjectOf(design(mechanisms), { bridge: 5, thickness: 2 }, null, { left: 1e6 })
  // Base 60 and facet 45 stop at arccos(-1/3), the octahedron's angle.
  const stop = (Math.acos(-1 / 3) * 180) / Math.PI
  const tight = gluedMoth({ base: 60, facet: 45 })

  test('end a hundredth of a degree before a stop, for what stands on it and for the rest of the card', () => {
    const { range, alone } = subject([tight, layer('reed', 'gutter', 110, 130, 9)])
    expect(range(0)?.[0]).toBe(0)
    expect(range(0)?.[1]).toBeCloseTo(stop - 0.01, 6)
    expect(range(1)?.[1]).toBeCloseTo(stop - 0.01, 6)
    expect(range(-1)?.[1]).toBeCloseTo(stop - 0.01, 6)
    expect(alone(1)).toEqual([0, 180])
    expect(alone(-1)).toEqual([0, 180])
    expect(alone(0)?.[1]).toBeCloseTo(stop - 0.01, 6)
  })

  test('are not narrowed by a guest for its host', () => {
    const guest = gluedMoth({ id: 'eye', on: 'lamp/ridge', apex: 5, foot: 6, ridge: 6, base: 60, facet: 45 })
    const { range } = subject([layer('lamp', 'gutter', 40, 80, 30), guest])
    expect(range(0)).toEqual([0, 180])
    expect(range(1)?.[1]).toBeCloseTo(stop - 0.01, 6)
    expect(range(0, 1)?.[1]).toBeCloseTo(stop - 0.01, 6)
  })

  test('a shared slit is shared either way round', () => {
    const { shareSlit } = subject([
      fold('beak', 'gutter', 110, -40, 38),
      fold('jaw', 'gutter', 30, 40, 38),
      fold('owl', 'gutter', 140, -5, 5),
    ])
    expect([shareSlit(0, 1), shareSlit(1, 0), shareSlit(0, 2), shareSlit(1, 2)]).toEqual([
      true,
      true,
      false,
      false,
    ])
  })

  test('a question about some of them leaves out the others', () => {
    const made = design([layer('lamp', 'gutter', 20, 50, 20), layer('reed', 'gutter', 60, 80, 20)])
    const about = (alone: boolean) =>
      subjectOf(made, { bridge: 5, thickness: 2 }, { ids: new Set(['reed']), alone }, { left: 1e6 })
    const [strict, any] = [about(true), about(false)]
    expect([strict.hasty, subject([]).hasty]).toEqual([true, false])
    expect([strict.wants([1]), strict.wants([0]), strict.wants([0, 1]), strict.wants([-1, 1])]).toEqual([
      true,
      false,
      false,
      true,
    ])
    expect([any.wants([1]), any.wants([0]), any.wants([0, 1]), any.wants([-1, 0])]).toEqual([
      true,
      false,
      true,
      false,
    ])
  })
})
