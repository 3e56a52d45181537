import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Design, Mechanism } from '../../../src/paper/index.ts'
import {
  kindNamed,
  kindOf,
  kinds,
  mirroredMechanism,
  modelOf,
  otherSide,
  parseDesign,
  runOf,
  settable,
  settingOf,
  stretchOf,
} from '../../../src/paper/index.ts'
import type { Edit } from '../../../src/widgets/keeping/edits.ts'
import {
  add,
  bareCard,
  duplicate,
  idFrom,
  mirror,
  move,
  nearest,
  remove,
  rename,
  reorder,
  setCard,
  setChoice,
  setList,
  setPaper,
  setSize,
  setTitle,
  sharing,
  take,
  withChildren,
} from '../../../src/widgets/keeping/edits.ts'
import { A6, design, gluedMoth, gluedPond, ladder, vFold } from '../../paper/shared/designs.ts'
import { kept } from './designs.ts'

const beak = vFold('beak', 'gutter', 110, -40, 45)

/** A number somebody types: sensible, on the edge, or nonsense. */
const typed = fc.oneof(
  fc.double({ min: -300, max: 300, noNaN: true }),
  fc.constantFrom(0, 1, 89, 179, 2000, 2000.1, -1, 1e308, Number.NaN, Number.POSITIVE_INFINITY, -0),
)

const word = fc.oneof(
  fc.string({ maxLength: 50 }),
  fc.constantFrom(
    '__proto__',
    'constructor',
    'toString',
    'left.base',
    'gutter',
    'm0/left',
    'page/right',
    'Left Reed',
  ),
)

/** One random edit of a design: of any sort, of any part, with sense and without. */
const editing: fc.Arbitrary<(made: Design) => Edit> = fc
  .record({
    sort: fc.nat({ max: 13 }),
    k: fc.nat({ max: 9 }),
    other: fc.nat({ max: 40 }),
    value: typed,
    word,
    flag: fc.boolean(),
    flag2: fc.boolean(),
  })
  .map(({ sort, k, other, value, word, flag, flag2 }) => (made: Design): Edit => {
    const m = made.mechanisms[k % Math.max(1, made.mechanisms.length)]
    const id = m && k < 9 ? m.id : word
    const { creases, panels } = modelOf(made)
    const places = [...creases, ...panels].map(({ name }) => name)
    const place = other < 36 ? (places[other % places.length] as string) : word
    const fields = m ? settable(m).map(({ name }) => name) : []
    const field = other < 36 ? (fields[other % Math.max(1, fields.length)] ?? word) : word
    switch (sort) {
      case 0:
        return add(made, { ...(m ?? (beak as unknown as Mechanism)), id: flag ? id : 'owl', on: place })
      case 1:
      case 2:
        return setSize(made, id, field, value)
      case 3:
        return duplicate(made, id, { guests: flag, mirrored: flag2 })
      case 4:
        return mirror(made, id)
      case 5:
      case 6:
        return move(made, id, place)
      case 7:
        return rename(made, id, word)
      case 8:
        return remove(made, id)
      case 9:
        return reorder(made)
      case 10:
        return setCard(
          made,
          flag ? { cover: flag2 } : { [['width', 'height', 'caliper'][k % 3] as string]: value },
        )
      case 11:
        return setTitle(made, word)
      case 12:
        return setChoice(made, id, ['side', 'pop', 'toward', 'face'][k % 4] as string, flag ? 'up' : word)
      default:
        return setList(
          made,
          id,
          ['outline', 'shape', 'glue', 'walls'][k % 4] as string,
          flag ? [] : [value, 2],
        )
    }
  })

describe('every edit', () => {
  test('leaves a design that a file may hold, or says why not and keeps the old', () => {
    fc.assert(
      fc.property(kept, fc.array(editing, { minLength: 1, maxLength: 4 }), (made, edits) => {
        let now = made
        for (const edit of edits) {
          const before = JSON.stringify(now)
          const result = edit(now)
          expect(JSON.stringify(now)).toBe(before)
          if (result.done) {
            expect(parseDesign(JSON.parse(JSON.stringify(result.design)))).toEqual(
              JSON.parse(JSON.stringify(result.design)),
            )
            expect(result.says).toMatch(/^.+$/)
          } else {
            expect(result.design).toBe(now)
            expect(result.sentence).toMatch(/^[^a-z].*\.$/s)
            expect(result.sentence).not.toMatch(/mechanisms\[|undefined|object Object/)
          }
          now = result.design
        }
      }),
      { numRuns: 100 },
    )
  })

  test('shares all parts that it does not change', () => {
    const made = design([beak, gluedMoth({ apex: 20, foot: 20 })])
    const next = setSize(made, 'beak', 'cut', 30)
    expect(next.done && next.design.mechanisms[1]).toBe(made.mechanisms[1])
  })
})

const done = (edit: Edit) => {
  if (!edit.done) throw new Error(edit.sentence)
  return edit
}

const sentence = (edit: Edit): string => (edit.done ? '' : edit.sentence)

describe('sizes', () => {
  test('a size typed within its range is that size', () => {
    fc.assert(
      fc.property(kept, fc.nat({ max: 9 }), fc.nat({ max: 20 }), typed, (made, k, f, value) => {
        const m = made.mechanisms[k % made.mechanisms.length] as Mechanism
        const field = settable(m)[f % settable(m).length]
        if (!field || kindOf(m).derived.includes(field as never)) return
        const result = setSize(made, m.id, field.name, value)
        if (!result.done) return
        const now = result.design.mechanisms.find(({ id }) => id === m.id) as Mechanism
        // A V-fold’s end that lies level with its apex is drawn apart from it: that rule alone moves a number.
        if (!kindOf(m).limits?.({ ...m, [field.name]: value } as Mechanism))
          expect(settingOf(now, field.name)).toBe(value + 0)
      }),
    )
  })

  test('out of its range it is refused by name, with the range', () => {
    const made = design([beak, gluedPond])
    expect(sentence(setSize(made, 'beak', 'cut', 5000))).toBe(
      'Beak: the slit must be from 0 to 2000 mm, not 5000.',
    )
    expect(sentence(setSize(made, 'beak', 'cut', Number.NaN))).toBe(
      'Beak: the slit must be from 0 to 2000 mm, not what was given.',
    )
    expect(sentence(setSize(made, 'beak', 'wedge', 90))).toBe(
      'Beak: the wedge angle must be from 1 to 89 degrees, not 90.',
    )
    expect(sentence(setSize(made, 'pond', 'end', 30))).toBe(
      'Pond: the end must not lie before the start, 40. The nearest that works is 40.',
    )
    expect(sentence(setSize(made, 'owl', 'cut', 1))).toBe('There is no owl on this card.')
    expect(sentence(setList(made, 'pond', 'walls', []))).toBe(
      'Pond: the walls must name at least one place for a wall, from -2000 to 2000 mm.',
    )
    expect(
      sentence(
        setList(made, 'beak', 'outline', [
          [0, 1],
          [Number.NaN, 2],
        ]),
      ),
    ).toMatch(
      /^Beak: the outline \(number 2\) must be a point \[across, along\] in mm, each from -2000 to 2000/,
    )
  })

  test('a drag is brought to the nearest that a file may hold', () => {
    fc.assert(
      fc.property(kept, fc.nat({ max: 9 }), fc.nat({ max: 20 }), typed, (made, k, f, value) => {
        const m = made.mechanisms[k % made.mechanisms.length] as Mechanism
        const fields = kindOf(m).fields.filter(({ shorthand }) => !shorthand)
        const name = fields[f % Math.max(1, fields.length)]?.name
        if (name === undefined) return
        const next = nearest(made, m.id, { [name]: value })
        expect(() => parseDesign(JSON.parse(JSON.stringify(next)))).not.toThrow()
      }),
      { numRuns: 100 },
    )
  })

  test('an outline that may be left out can be', () => {
    const made = design([{ ...beak, outline: [[10, 80]] }])
    const bare = done(setList(made, 'beak', 'outline', []))
    expect(bare.design.mechanisms[0]).not.toHaveProperty('outline')
    expect(bare.says).toBe('beak: outline')
  })
})

describe('adding, copying, moving', () => {
  test('each kind can be added to an empty card, or says what it sits on', () => {
    const card = bareCard('Dummy', A6)
    for (const m of [beak, gluedMoth(), gluedPond] as unknown as Mechanism[]) {
      const result = done(add(card, m))
      expect(result.says).toBe(`${m.id} added`)
      expect(kindOf(m).complete(m)).toEqual(result.design.mechanisms[0])
    }
    expect(kinds.length).toBeGreaterThan(0)
    const twice = done(
      add(done(add(card, beak as unknown as Mechanism)).design, beak as unknown as Mechanism),
    )
    expect(twice.id).toBe('beak-2')
    expect(sentence(add(card, { ...beak, on: 'owl/left' } as unknown as Mechanism))).toBe(
      'Beak: the place must name the gutter or a crease of an earlier mechanism (gutter), not "owl/left".',
    )
  })

  test('a copy has all that sat on it, and lies within its host where there is room', () => {
    fc.assert(
      fc.property(kept, fc.nat({ max: 9 }), fc.boolean(), (made, k, guests) => {
        const m = made.mechanisms[k % made.mechanisms.length] as Mechanism
        const result = duplicate(made, m.id, { guests })
        if (!result.done) return
        const count = guests ? withChildren(made, m.id).length : 1
        expect(result.design.mechanisms).toHaveLength(made.mechanisms.length + count)
        expect(withChildren(result.design, result.id ?? '')).toHaveLength(count)
        expect(result.design.mechanisms.slice(0, made.mechanisms.length)).toEqual(made.mechanisms)
        const copy = result.design.mechanisms.find(({ id }) => id === result.id) as Mechanism
        const [from, to] = stretchOf(copy)
        const run = runOf(made, m.on) ?? [0, 0]
        if (result.note === undefined) {
          expect(from).toBeGreaterThanOrEqual(run[0] - 1e-6)
          expect(to).toBeLessThanOrEqual(run[1] + 1e-6)
        }
        expect(result.design.art?.length ?? 0).toBeGreaterThanOrEqual(made.art?.length ?? 0)
      }),
    )
  })

  test('a mirrored copy lies on the other side of its host, with its sides changed over', () => {
    const { design: made } = ladder[2] as { design: Design }
    const result = done(duplicate(made, 'eye', { mirrored: true }))
    expect(result.design.mechanisms[2]).toEqual({
      ...mirroredMechanism(made.mechanisms[1] as Mechanism),
      id: 'eye-2',
      on: otherSide('beak/right'),
    })
    const over = done(mirror(made, 'eye'))
    expect(over.design.mechanisms[1]).toMatchObject({ on: 'beak/left', left: 8, right: 6 })
    expect(over.says).toBe('eye mirrored')
  })

  test('moved, it keeps its sizes if they fit, and is made smaller if not', () => {
    const layer = { id: 'eye', kind: 'cut-layer', on: 'gutter', start: 10, end: 40, left: 6, right: 8 }
    const made = design([layer, beak])
    const fits = done(move(made, 'eye', 'beak/ridge'))
    expect(fits.says).toBe('eye moved to beak, ridge')
    expect(fits.note).toBeUndefined()
    // Hosts stand first, wherever they stood before.
    expect(fits.design.mechanisms.map(({ id }) => id)).toEqual(['beak', 'eye'])
    expect(fits.design.mechanisms[1]).toMatchObject({ left: 6, right: 8 })
    // The ridge is 40 mm long: of 80 mm half is left.
    const big = design([{ ...layer, end: 90 }, beak])
    const small = done(move(big, 'eye', 'beak/ridge'))
    expect(small.note).toBe('It is made smaller to fit: 50 % of its size.')
    expect((small.design.mechanisms[1] as { left: number }).left).toBeCloseTo(3, 6)
    expect(sentence(move(fits.design, 'beak', 'eye/left'))).toBe(
      'Beak cannot sit on eye, left: that sits on beak itself.',
    )
    expect(sentence(move(made, 'eye', 'page/left'))).toMatch(
      /^Eye: the place must name the gutter or a crease/,
    )
  })

  test('removed with its guests, which are said before', () => {
    const { design: made } = ladder[3] as { design: Design }
    expect(withChildren(made, 'beak')).toEqual(['beak', 'eye', 'pupil'])
    expect(withChildren(made, 'pupil')).toEqual(['pupil'])
    expect(withChildren(made, 'owl')).toEqual([])
    const result = done(remove(made, 'eye'))
    expect(result.design.mechanisms.map(({ id }) => id)).toEqual(['beak'])
    expect(result.says).toBe('eye removed, and 1 on it')
  })
})

describe('names, card and papers', () => {
  test.each([
    ['Left Reed', 'left-reed'],
    ['  Żaba!! ', 'zaba'],
    ['é_2', 'e-2'],
    ['Owl’s wing', 'owls-wing'],
    ["owl's wing", 'owls-wing'],
    ['Großer Færøyulv', 'grosser-faeroyulv'],
    ['The big moon', 'big-moon'],
    ['the', 'the'],
    ['Theatre', 'theatre'],
    ['蛾', ''],
    ['-'.repeat(60), ''],
    ['a'.repeat(60), 'a'.repeat(40)],
  ])('%j makes the id %j', (typedName, id) => expect(idFrom(typedName)).toBe(id))

  test('a name that is taken, or that no letter of can stand, is refused', () => {
    const made = design([beak, gluedPond])
    expect(sentence(rename(made, 'beak', 'Pond'))).toBe('There is a pond on this card already.')
    expect(sentence(rename(made, 'beak', '蛾'))).toBe(
      'A name needs letters from a to z or digits, 1 to 40 of them.',
    )
    expect(sentence(rename(made, 'beak', 'page'))).toBe(
      'Page: the name must not be page: the card itself has that name.',
    )
    const plain = done(rename(made, 'beak', 'Long Bill'))
    expect(plain.says).toBe('beak renamed long bill')
    expect(plain.note).toBeUndefined()
    // What cannot be kept of a name is told, also where nothing is left to change.
    expect(done(rename(made, 'beak', 'Owl’s wing')).note).toContain('“owls wing”')
    expect(done(rename(made, 'beak', 'beak!')).note).toContain('“beak”')
  })

  test('the card’s sizes are told with their range', () => {
    const made = design([beak])
    expect(sentence(setCard(made, { width: 5 }))).toBe('The page width must be from 10 to 1000 mm, not 5.')
    expect(done(setCard(made, { width: 120, caliper: 0.32 })).says).toBe(
      'card: page width 105 to 120, thickness 0.25 to 0.32',
    )
    const covered = done(setCard(made, { cover: true })).design
    const painted = done(setPaper(covered, 'cover', 'night')).design
    expect(done(setCard(painted, { cover: false })).design.papers).toEqual({})
    expect(sentence(setTitle(made, '  '))).toBe('Title must be 1 to 120 characters, not "".')
  })

  test('an offer is taken whole, and what it did not change stays the very same', () => {
    const made = design([beak])
    const offered = design([beak, gluedPond])
    const result = done(take(made, offered, 'pond'))
    expect(result.says).toBe('pond added')
    expect(result.design.mechanisms[0]).toBe(made.mechanisms[0])
    expect(sharing(made, parseDesign(JSON.parse(JSON.stringify(made)))).mechanisms).toBe(made.mechanisms)
    expect(kindNamed('floating-layer')?.kind).toBe(result.design.mechanisms[1]?.kind)
  })
})
