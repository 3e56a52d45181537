import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { DesignError, kinds, MOST_MECHANISMS, parseDesign, poseAt } from '../../../src/paper/index.ts'
import { A6, designs, runs, vFold } from '../shared/designs.ts'

const beak = vFold('beak', 'gutter', 110, -40, 45)

const file = (more: object = {}) => ({ hingebook: 1, title: 'Heron', card: A6, mechanisms: [beak], ...more })

const withOne = (mechanism: object) => file({ mechanisms: [mechanism] })

/** What a reader is told, and the nearest value that works where there is one. */
function refusal(json: unknown): string {
  try {
    parseDesign(json)
  } catch (error) {
    if (!(error instanceof DesignError)) throw error
    expect(error.message.startsWith(error.path)).toBe(true)
    return error.nearest === undefined ? error.message : `${error.message} Nearest: ${error.nearest}`
  }
  throw new Error('it was read without complaint')
}

describe('a file that is no design is refused in one sentence', () => {
  test('nothing at all', () => {
    expect(refusal(null)).toMatchInlineSnapshot(`"design must be an object in curly brackets, not null."`)
  })
  test('a list', () => {
    expect(refusal([beak])).toMatchInlineSnapshot(
      `"design must be an object in curly brackets, not [{"id":"beak","kind":"cut-v-fold","o …."`,
    )
  })
  test('another file altogether', () => {
    expect(refusal({ name: 'hingebook', version: '0.1.0' })).toMatchInlineSnapshot(
      `"hingebook must be 1, the version of the design file, not left out."`,
    )
  })
  test('a later version', () => {
    expect(refusal(file({ hingebook: 2 }))).toMatchInlineSnapshot(
      `"hingebook must be 1, the version of the design file, not 2."`,
    )
  })
  test('a number written as words', () => {
    expect(refusal(file({ hingebook: '1' }))).toMatchInlineSnapshot(
      `"hingebook must be 1, the version of the design file, not "1"."`,
    )
  })
  test('a key of somebody else', () => {
    expect(refusal(file({ author: 'me' }))).toMatchInlineSnapshot(
      `"author is not known here: use hingebook, title, card, mechanisms, papers, art."`,
    )
  })
  test('a key that means trouble in other programs', () => {
    expect(refusal(JSON.parse('{"hingebook":1,"__proto__":{}}'))).toMatchInlineSnapshot(
      `"__proto__ is not known here: use hingebook, title, card, mechanisms, papers, art."`,
    )
  })
  test('no title', () => {
    expect(refusal(file({ title: undefined }))).toMatchInlineSnapshot(
      `"title must be 1 to 120 characters, not left out."`,
    )
  })
  test('a title of blanks', () => {
    expect(refusal(file({ title: '   ' }))).toMatchInlineSnapshot(
      `"title must be 1 to 120 characters, not "   "."`,
    )
  })
  test('a title as long as a page', () => {
    expect(refusal(file({ title: 'moth '.repeat(30) }))).toMatchInlineSnapshot(
      `"title must be 1 to 120 characters, not "moth moth moth moth moth moth moth m …"."`,
    )
  })
})

describe('a card that cannot be', () => {
  test('left out', () => {
    expect(refusal(file({ card: undefined }))).toMatchInlineSnapshot(
      `"card must be an object in curly brackets, not left out."`,
    )
  })
  test('no width', () => {
    expect(refusal(file({ card: { height: 148 } }))).toMatchInlineSnapshot(
      `"card.width must be a number from 10 to 1000 mm, not left out."`,
    )
  })
  test('smaller than a stamp', () => {
    expect(refusal(file({ card: { width: 4, height: 148 } }))).toMatchInlineSnapshot(
      `"card.width must be from 10 to 1000 mm, not 4. Nearest: 10"`,
    )
  })
  test('larger than a table', () => {
    expect(refusal(file({ card: { width: 105, height: 2000 } }))).toMatchInlineSnapshot(
      `"card.height must be from 10 to 1000 mm, not 2000. Nearest: 1000"`,
    )
  })
  test('as thick as a plank', () => {
    expect(refusal(file({ card: { width: 105, height: 148, caliper: 20 } }))).toMatchInlineSnapshot(
      `"card.caliper must be from 0.02 to 3 mm, not 20. Nearest: 3"`,
    )
  })
  test('in inches', () => {
    expect(refusal(file({ card: { width: '4in', height: 148 } }))).toMatchInlineSnapshot(
      `"card.width must be a number from 10 to 1000 mm, not "4in"."`,
    )
  })
  test('with a colour', () => {
    expect(refusal(file({ card: { width: 105, height: 148, colour: 'blue' } }))).toMatchInlineSnapshot(
      `"card.colour is not known here: use width, height, caliper, cover."`,
    )
  })
})

describe('a mechanism that cannot be', () => {
  test('no list of mechanisms', () => {
    expect(refusal(file({ mechanisms: { beak } }))).toMatchInlineSnapshot(
      `"mechanisms must be a list in square brackets, not {"beak":{"id":"beak","kind":"cut-v-f …."`,
    )
  })
  test('more than a hand can cut', () => {
    const many = Array.from({ length: MOST_MECHANISMS + 1 }, (_, k) => ({ ...beak, id: `m${k}` }))
    expect(refusal(file({ mechanisms: many }))).toMatchInlineSnapshot(
      `"mechanisms must hold at most 200 mechanisms, not 201."`,
    )
  })
  test('a word instead of a mechanism', () => {
    expect(refusal(file({ mechanisms: ['beak'] }))).toMatchInlineSnapshot(
      `"mechanisms[0] must be an object in curly brackets, not "beak"."`,
    )
  })
  test('no id', () => {
    expect(refusal(withOne({ ...beak, id: undefined }))).toMatchInlineSnapshot(
      `"mechanisms[0].id must be 1 to 40 lower-case letters, digits or hyphens, not left out."`,
    )
  })
  test('an id with capitals', () => {
    expect(refusal(withOne({ ...beak, id: 'Upper Beak' }))).toMatchInlineSnapshot(
      `"mechanisms[0].id must be 1 to 40 lower-case letters, digits or hyphens, not "Upper Beak"."`,
    )
  })
  test('the name of the card itself', () => {
    expect(refusal(withOne({ ...beak, id: 'page' }))).toMatchInlineSnapshot(
      `"mechanisms[0].id must not be page: the card itself has that name."`,
    )
  })
  test('the same id twice', () => {
    expect(refusal(file({ mechanisms: [beak, beak] }))).toMatchInlineSnapshot(
      `"mechanisms[1].id is used twice: beak."`,
    )
  })
  test('a kind not known here', () => {
    const known = kinds.map(({ kind }) => kind).join(', ')
    expect(refusal(withOne({ ...beak, kind: 'spinner' }))).toBe(
      `mechanisms[0].kind must be one of ${known}, not "spinner".`,
    )
  })
  test('a key not known here', () => {
    expect(refusal(withOne({ ...beak, depth: 4 }))).toMatchInlineSnapshot(
      `"mechanisms[0].depth is not known here: use id, kind, on, apex, run, cut, lean, outline."`,
    )
  })
  test('a crease that nobody made', () => {
    expect(refusal(withOne({ ...beak, on: 'wing/ridge' }))).toMatchInlineSnapshot(
      `"mechanisms[0].on must name the gutter or a crease of an earlier mechanism (gutter), not "wing/ridge"."`,
    )
  })
  test('a crease that its mechanism does not have', () => {
    expect(
      refusal(file({ mechanisms: [beak, { ...beak, id: 'eye', on: 'beak/top' }] })),
    ).toMatchInlineSnapshot(
      `"mechanisms[1].on must name the gutter or a crease of an earlier mechanism (gutter, beak/ridge, beak/left, beak/right), not "beak/top"."`,
    )
  })
  test('a host that comes later in the file', () => {
    const eye = { ...beak, id: 'eye', on: 'beak/ridge' }
    expect(refusal(file({ mechanisms: [eye, beak] }))).toMatchInlineSnapshot(
      `"mechanisms[0].on must name the gutter or a crease of an earlier mechanism (gutter), not "beak/ridge"."`,
    )
  })
  test('a mechanism on itself', () => {
    expect(refusal(withOne({ ...beak, on: 'beak/ridge' }))).toMatchInlineSnapshot(
      `"mechanisms[0].on must name the gutter or a crease of an earlier mechanism (gutter), not "beak/ridge"."`,
    )
  })
  test('one of many creases misspelt: not all of them are listed', () => {
    const three = ['a', 'b', 'c'].map((id) => ({ ...beak, id }))
    const eye = { ...beak, id: 'eye', on: 'gutters' }
    expect(refusal(file({ mechanisms: [...three, eye] }))).toMatchInlineSnapshot(
      `"mechanisms[3].on must name the gutter or a crease of an earlier mechanism (gutter, a/ridge, a/left, a/right, b/ridge, b/left, b/right and so on), not "gutters"."`,
    )
  })
})

describe('a number out of range names the range and the nearest that works', () => {
  test('no slit', () => {
    expect(refusal(withOne({ ...beak, cut: undefined }))).toMatchInlineSnapshot(
      `"mechanisms[0].cut must be a number from 0 to 2000 mm, not left out."`,
    )
  })
  test('a slit of less than nothing', () => {
    expect(refusal(withOne({ ...beak, cut: -3 }))).toMatchInlineSnapshot(
      `"mechanisms[0].cut must be from 0 to 2000 mm, not -3. Nearest: 0"`,
    )
  })
  test('a slit as long as a street', () => {
    expect(refusal(withOne({ ...beak, cut: 1e6 }))).toMatchInlineSnapshot(
      `"mechanisms[0].cut must be from 0 to 2000 mm, not 1000000. Nearest: 2000"`,
    )
  })
  test('no number at all', () => {
    expect(refusal(withOne({ ...beak, run: Number.NaN }))).toMatchInlineSnapshot(
      `"mechanisms[0].run must be a number from -2000 to 2000 mm, not NaN."`,
    )
  })
  test('without end', () => {
    expect(refusal(withOne({ ...beak, run: Number.POSITIVE_INFINITY }))).toMatchInlineSnapshot(
      `"mechanisms[0].run must be a number from -2000 to 2000 mm, not Infinity."`,
    )
  })
  test('a wall of text is cut short', () => {
    expect(
      refusal(withOne({ ...beak, apex: 'at the very top of the card, where the moon is' })),
    ).toMatchInlineSnapshot(
      `"mechanisms[0].apex must be a number from 0 to 2000 mm, not "at the very top of the card, where t …"."`,
    )
  })
  test('a slit that leans back past its apex', () => {
    expect(refusal(withOne({ ...beak, lean: 50 }))).toMatchInlineSnapshot(
      `"mechanisms[0].lean must leave the slit’s end on the slit’s side of the apex: with a run of -40 it is at most 40. Nearest: 40"`,
    )
  })
  test('the same, for a V-fold that points away from the reader', () => {
    expect(refusal(withOne({ ...beak, apex: 20, run: 40, lean: -50 }))).toMatchInlineSnapshot(
      `"mechanisms[0].lean must leave the slit’s end on the slit’s side of the apex: with a run of 40 it is at least -40. Nearest: -40"`,
    )
  })
  test('a layer that ends before it starts', () => {
    const layer = { id: 'lantern', kind: 'cut-layer', on: 'gutter', start: 40, end: 20, left: 10 }
    expect(refusal(withOne(layer))).toMatchInlineSnapshot(
      `"mechanisms[0].end must not lie before the start, 40. Nearest: 40"`,
    )
  })
  test('a layer without depth', () => {
    const layer = { id: 'lantern', kind: 'cut-layer', on: 'gutter', start: 20, end: 40 }
    expect(refusal(withOne(layer))).toMatchInlineSnapshot(
      `"mechanisms[0].left is missing: give the depth of the cuts, left, right or both, from 0 to 2000 mm."`,
    )
  })
  test('a trapezoid that ends before it starts', () => {
    const sail = {
      id: 'sail',
      kind: 'cut-trapezoid',
      on: 'gutter',
      start: 40,
      end: 20,
      startCut: 5,
      endCut: 9,
    }
    expect(refusal(withOne(sail))).toMatchInlineSnapshot(
      `"mechanisms[0].end must not lie before the start, 40. Nearest: 40"`,
    )
  })
  test('an outline that is no list', () => {
    expect(refusal(withOne({ ...beak, outline: 'wavy' }))).toMatchInlineSnapshot(
      `"mechanisms[0].outline must be a list of points [across, along], not "wavy"."`,
    )
  })
  test('a point with three numbers', () => {
    expect(
      refusal(
        withOne({
          ...beak,
          outline: [
            [1, 2],
            [1, 2, 3],
          ],
        }),
      ),
    ).toMatchInlineSnapshot(
      `"mechanisms[0].outline[1] must be a point [across, along] in mm, each from -2000 to 2000, not [1,2,3]."`,
    )
  })
  test('an outline drawn too finely', () => {
    const fine = Array.from({ length: 201 }, (_, k) => [k / 10, 70])
    expect(refusal(withOne({ ...beak, outline: fine }))).toMatchInlineSnapshot(
      `"mechanisms[0].outline must hold at most 200 points, not 201."`,
    )
  })
})

describe('a nearest value', () => {
  test('put into the file, is accepted', () => {
    const bad = [
      [{ ...beak, cut: -3 }, 'cut'],
      [{ ...beak, cut: 1e6 }, 'cut'],
      [{ ...beak, lean: 50 }, 'lean'],
      [{ id: 'l', kind: 'cut-layer', on: 'gutter', start: 40, end: 20, left: 10 }, 'end'],
      [{ id: 't', kind: 'cut-trapezoid', on: 'gutter', start: 40, end: 20, startCut: 5, endCut: 9 }, 'end'],
    ] as const
    for (const [mechanism, field] of bad) {
      const nearest = Number(refusal(withOne(mechanism)).split('Nearest: ')[1])
      expect(parseDesign(withOne({ ...mechanism, [field]: nearest })).mechanisms).toHaveLength(1)
    }
  })
})

describe('a good file', () => {
  test('gets its optional fields filled in', () => {
    const { card, mechanisms } = parseDesign(
      file({
        card: { width: 105, height: 148 },
        mechanisms: [beak, { id: 'lantern', kind: 'cut-layer', on: 'gutter', start: 5, end: 25, right: 12 }],
      }),
    )
    expect(card.caliper).toBe(0.25)
    expect(mechanisms).toMatchObject([{ lean: 0 }, { left: 12, right: 12 }])
  })

  test('may hold nothing, or as many mechanisms as are allowed, one deep or each on the last', () => {
    expect(parseDesign(file({ mechanisms: [] })).mechanisms).toEqual([])
    const wide = Array.from({ length: MOST_MECHANISMS }, (_, k) => ({ ...beak, id: `m${k}` }))
    const deep = wide.map((m, k) => ({
      ...m,
      apex: 20,
      run: 20,
      cut: 5,
      on: k === 0 ? 'gutter' : `m${k - 1}/ridge`,
    }))
    for (const mechanisms of [wide, deep]) {
      const made = parseDesign(file({ mechanisms }))
      expect(made.mechanisms).toHaveLength(MOST_MECHANISMS)
      for (const [x, y, z] of Object.values(poseAt(made, 70).panels).flat())
        expect([x, y, z].every(Number.isFinite)).toBe(true)
    }
  })

  test.each(['a', 'beak-2', '0', '-', 'constructor', 'gutters', 'x'.repeat(40)])(
    'may call a mechanism %s',
    (id) => {
      const made = parseDesign(
        file({
          mechanisms: [
            { ...beak, id },
            { ...beak, id: 'eye', on: `${id}/ridge` },
          ],
        }),
      )
      expect(Object.keys(poseAt(made, 90).panels)).toContain(`${id}/left`)
    },
  )

  test('is left as it was, and shares nothing with the design', () => {
    const outline = [[20, 66]]
    const json = file({ mechanisms: [{ ...beak, outline }] })
    const before = structuredClone(json)
    const made = parseDesign(json)
    expect(json).toEqual(before)
    outline.push([30, 60])
    expect(made.mechanisms[0]).toMatchObject({ outline: [[20, 66]] })
  })

  test('written out and read again is the same design', () => {
    fc.assert(
      fc.property(designs(), (made) => {
        const text = JSON.stringify(made)
        expect(JSON.stringify(parseDesign(JSON.parse(text)))).toBe(text)
      }),
      runs(200),
    )
  })

  test('whatever stands in a file, the answer is a design or a sentence', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.jsonValue(), (a, b) => {
        for (const json of [
          a,
          file({ card: a }),
          file({ mechanisms: a }),
          file({ mechanisms: [a] }),
          withOne({ ...beak, cut: a, lean: b }),
          withOne({ ...beak, outline: a }),
        ]) {
          try {
            parseDesign(json)
          } catch (error) {
            expect(error).toBeInstanceOf(DesignError)
            expect((error as DesignError).message).toMatch(/^\S+ [^\n]+\.$/)
          }
        }
      }),
      runs(300),
    )
  })
})

describe('a file from a careless or unkind hand', () => {
  /** Lists in lists, or objects in objects, `deep` deep. */
  const nested = (deep: number, as: 'list' | 'object'): unknown => {
    let value: unknown = 1
    for (let k = 0; k < deep; k++) value = as === 'list' ? [value] : { a: value }
    return value
  }

  test.each(['list', 'object'] as const)('5,000 deep is told in one short sentence: %s', (as) => {
    const deep = nested(5000, as)
    for (const json of [
      file({ title: deep }),
      file({ mechanisms: [deep] }),
      file({ card: { ...A6, width: deep } }),
      withOne({ ...beak, cut: deep }),
      withOne({ ...beak, outline: [deep] }),
    ])
      expect(refusal(json).length).toBeLessThan(200)
  })

  test('a list with holes is no list of mechanisms, points or numbers', () => {
    const holes = (list: unknown[]): unknown[] => {
      const sparse = [...list]
      delete sparse[1]
      return sparse
    }
    expect(refusal(file({ mechanisms: holes([beak, beak]) }))).toBe(
      'mechanisms[1] must be an object in curly brackets, not left out.',
    )
    const outline = holes([
      [10, 80],
      [10, 80],
      [10, 80],
    ])
    expect(refusal(withOne({ ...beak, outline }))).toContain('mechanisms[0].outline[1] must be a point')
    const pond = {
      id: 'pond',
      kind: 'floating-layer',
      on: 'gutter',
      start: 4,
      end: 9,
      height: 5,
      left: 9,
      right: 9,
    }
    expect(refusal(withOne({ ...pond, walls: holes([-3, 0, 3]) }))).toContain(
      'mechanisms[0].walls[1] must be a number',
    )
  })

  test.each(['card', 'point', 'page', 'gutter'])('%s is no name for a mechanism', (id) => {
    expect(refusal(withOne({ ...beak, id }))).toBe(
      `mechanisms[0].id must not be ${id}: the card itself has that name.`,
    )
  })

  // Unicode: C0 and C1 controls, a lone surrogate, an override of the way of writing, a non-character.
  test.each([
    ['He\u0007ron', 3, 'U+0007'],
    ['\u001b[31mHeron', 1, 'U+001B'],
    ['Heron\n', 6, 'U+000A'],
    ['Her\u009bon', 4, 'U+009B'],
    ['\u{1f989}\ud800 Heron', 2, 'U+D800'],
    ['Heron\udc00', 6, 'U+DC00'],
    ['Heron \u202enoreh', 7, 'U+202E'],
    ['Heron\uffff', 6, 'U+FFFF'],
  ])('title %j has a character that cannot be shown', (title, place, name) => {
    expect(refusal(file({ title }))).toBe(
      `title must hold only characters that can be printed: the one at place ${place}, ${name}, cannot be shown.`,
    )
  })

  test('a title may hold any letter that can be shown', () => {
    for (const title of ['Żółw & Ödön’s «été»', '蛾 🦉', 'क्षि', 'שָׁלוֹם'])
      expect(parseDesign(file({ title })).title).toBe(title)
  })

  test('what it holds is told without characters that a terminal obeys', () => {
    const told = refusal(withOne({ ...beak, on: '\u001b]0;owl\u0007', kind: 'cut-v-fold' }))
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must not be there
    expect(told).not.toMatch(/[\u0000-\u001f\u007f-\u009f]/)
    // biome-ignore lint/suspicious/noControlCharactersInRegex: as above
    expect(refusal(file({ 'a\u009bb': 1 }))).not.toMatch(/[\u0000-\u001f\u007f-\u009f]/)
  })
})
