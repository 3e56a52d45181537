// What a sheet says and where it puts it: what is taped and what is glued, which side is printed, and how pieces and
// words go on to a next page.
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { orderOf } from '../../src/booklet/index.ts'
import type { PathMark, Point, WordMark } from '../../src/drawing/pen/marks.ts'
import { spineOf } from '../../src/making/spine.ts'
import type { Design } from '../../src/paper/index.ts'
import { measure, openingRange, pieces, settingOf, withTabs } from '../../src/paper/index.ts'
import type { SheetPage } from '../../src/sheet/index.ts'
import { paperOf } from '../../src/sheet/index.ts'
import { clipped } from '../../src/sheet/marks/clip.ts'
import type { SheetLines } from '../../src/sheet/marks/instructions.ts'
import { pieceName, stepsFor } from '../../src/sheet/marks/instructions.ts'
import { letteredJoints } from '../../src/sheet/marks/joint-places.ts'
import { wordWidth } from '../../src/sheet/marks/letters.ts'
import { onPage, seen } from '../../src/sheet/marks/piece-marks.ts'
import type { Block } from '../../src/sheet/marks/setting.ts'
import { extent, hung, moved, paragraph, stack } from '../../src/sheet/marks/setting.ts'
import { cardSizes, sizesOf } from '../../src/sheet/marks/sizes.ts'
import { Shelves } from '../../src/sheet/pages/bed.ts'
import { fittings, sectionsFor } from '../../src/sheet/pages/sections.ts'
import { beak, card, dummies, dummy, laid, MOTH, moth, shelf } from './designs.ts'

const wings = (tab: number, id = 'wings') => ({ ...MOTH, id, foot: 40, ridge: 40, tab })

const tent = (tab: number) => ({
  id: 'hut',
  kind: 'glued-tent',
  on: 'gutter',
  start: 90,
  end: 120,
  rightFoot: 20,
  leftFoot: 20,
  rightWall: 40,
  leftWall: 40,
  tab,
})

const layer = (id: string, start: number, left: number, right = left) => ({
  id,
  kind: 'cut-layer',
  on: 'gutter',
  start,
  end: start + 6,
  left,
  right,
})

const saidOf = (design: Design, lines: SheetLines = 'front') => stepsFor(design, lines).join(' | ')

describe('steps', () => {
  test('what has no tab is taped along its joints, what has one is glued', () => {
    const [tape, glue] = ['Slip tape under', 'Glue goes on the hatched one of the two places']
    for (const [made, isTaped, isGlued] of [
      [card(105, 148, [wings(0)]), true, false],
      [card(105, 148, [wings(8)]), false, true],
      [card(105, 148, [wings(0), tent(8)]), true, true],
      [card(105, 148, [wings(8), tent(0)]), true, true],
      // A star stuck on a wing is glued, whatever holds the wing.
      [moth(), false, true],
      [card(105, 148, [beak(110, -40, 40)]), false, false],
    ] as const) {
      const said = saidOf(made)
      expect([said.includes(tape), said.includes(glue)]).toEqual([isTaped, isGlued])
      expect(/Fold (the \w+|each piece that has a fold)\. (Each letter|Then stick)/.test(said)).toBe(
        isTaped || isGlued,
      )
    }
  })

  test('cuts are told by their shape, uneven ones and later ones by name', () => {
    const strip = saidOf(card(105, 148, [layer('reed', 20, 15)]))
    expect(strip).toContain('Fold the strip')
    expect(saidOf(card(105, 148, [layer('reed', 20, 15), layer('rush', 40, 15)]))).toContain(
      'Fold each strip',
    )
    expect(strip).not.toContain('Deeper on one side')
    expect(saidOf(card(105, 148, [beak(110, -40, 40)]))).toContain('Push the triangle')
    expect(saidOf(card(105, 148, [beak(110, -40, 40), layer('reed', 20, 15)]))).toContain('each part')
    const uneven = saidOf(card(105, 148, [layer('reed', 20, 15, 12), layer('rush', 40, 15)]))
    // Said before anything is cut: both layers together are too far on one of them.
    expect(uneven).toContain(
      'Fold the gutter, lines outside. Deeper on one side: reed. Turn the shorter lines to you, cut both layers so far, open and cut on. Do not fold it over: pushing folds it. Cut the other solid lines from the fold, through both layers.',
    )
    const lone = saidOf(card(105, 148, [layer('reed', 20, 15, 12)]))
    expect(lone).toContain('Deeper on one side: reed.')
    expect(lone).not.toContain('solid lines from the fold')
    expect(strip).toContain(
      'Fold the gutter, lines outside. Cut the solid lines from the fold, through both layers.',
    )
    const eye = { id: 'eye', kind: 'cut-layer', on: 'beak/ridge', start: 5, end: 9, left: 3 }
    expect(saidOf(card(105, 148, [beak(110, -40, 40), eye]))).toContain(
      'Next, eye on the middle fold of beak. Pinch that fold flat, lines outside, and cut from it. Crease and push. Push to the outside: eye.',
    )
    // Until then only what begins on the gutter is cut, and the eye is named as what is not.
    expect(saidOf(card(105, 148, [beak(110, -40, 40), eye]))).toContain(
      'Cut the lines of beak from the fold, through both layers. Not yet: eye. | Fold the cut part to the front',
    )
    // A strip on the eye's own middle fold, a valley, comes out again; cut deeper on one side, it is told with its like.
    const glint = { id: 'glint', kind: 'cut-layer', on: 'eye/ridge', start: 1, end: 3, left: 1, right: 2 }
    const twice = saidOf(card(105, 148, [beak(110, -40, 40), eye, glint]))
    expect(twice).toContain('Push to the outside: eye.')
    expect(twice).toContain(
      'Next, eye on the middle fold of beak; glint on the middle fold of eye. Pinch each fold',
    )
    expect(twice).toMatch(
      /Pinch each fold flat, lines outside, and cut from it\. Deeper on one side: glint\. .+ cut on\. Crease \(only eye\) and push\./,
    )
    const both = saidOf(card(105, 148, [layer('rush', 40, 15, 12), { ...glint, on: 'rush/ridge' }]))
    expect(both).toContain('Deeper on one side, cut on as before: glint. Push.')
    expect(saidOf(card(105, 148, [beak(110, -40, 40)]))).not.toContain('Next,')
    const many = ['ash', 'elm', 'fir', 'oak', 'yew'].map((id, k) => layer(id, 10 + 10 * k, 9, 8))
    expect(saidOf(card(105, 148, many))).toContain('ash, elm, fir, oak, yew.')
    expect(saidOf(card(105, 148, many.slice(1)))).toContain('elm, fir, oak, yew.')
    expect(saidOf(card(105, 148, many.slice(3)))).toContain('oak and yew.')
  })

  // A good copy carries no names of parts; the file says where its ledge begins and ends along the gutter.
  test('where no part carries its name it is told where it lies, once in a step', () => {
    const { mechanisms } = dummy('layers')
    const ledge = mechanisms.find(({ id }) => id === 'ledge')
    if (!ledge || !('start' in ledge && 'end' in ledge)) throw new Error('no ledge')
    const said = saidOf(dummy('layers'), 'ticks')
    expect(said).toContain(`Deeper on one side: ledge (${ledge.start}–${ledge.end}). Turn`)
    expect(said.split('In brackets').length).toBe(2)
    expect(saidOf(dummy('layers'), 'front')).toContain('Deeper on one side: ledge. Turn')
    const strip = layer('reed', 20, 15, 12)
    expect(saidOf(card(105, 148, [strip]), 'ticks')).toContain('Deeper on one side: reed. Turn')
    const glint = { id: 'glint', kind: 'cut-layer', on: 'rush/ridge', start: 1, end: 3, left: 1, right: 2 }
    const twice = saidOf(card(105, 148, [layer('rush', 40, 15), glint]), 'ticks')
    expect(twice).toMatch(
      /Cut the lines of rush \(40–46\) .*Not yet: glint\. In brackets.*Deeper on one side: glint \(41–43\)\. Turn/,
    )
  })

  test('a cover with two lines is scored with all other folds, and not once more', () => {
    for (const name of ['hedgehog', 'owl', 'heron', 'moth'] as const) {
      const said = saidOf(dummy(name))
      expect(said).toContain('Score every fold with')
      expect(said.toLowerCase().split('score').length - 1, name).toBe(spineOf(dummy(name)) > 0 ? 2 : 1)
      expect(said.includes('along its two scored lines'), name).toBe(spineOf(dummy(name)) > 0)
    }
    expect(saidOf(dummy('hedgehog'))).toContain('two scored lines')
    expect(saidOf(dummy('hedgehog'), 'ticks')).toContain(
      'Score every fold with a ruler and a dry ball pen, from',
    )
  })

  // Common practice, no source: no hand gets under a platform that stands on its walls.
  test('what is pushed through a platform is told to come before it stands', () => {
    const before = 'comes before it stands on its walls: '
    expect(saidOf(withTabs(dummy('garden'), 'slit'))).toContain(`${before}body.`)
    expect(saidOf(dummy('garden'))).not.toContain(before)
    expect(saidOf(withTabs(dummy('owl-wings'), 'slit'))).not.toContain(before)
    expect(saidOf(withTabs(dummy('pond'), 'slit'))).toContain('that has a slit through its slit')
  })

  // The two layers of the shut card fold on different lines: worked out by hand, 15 mm and 12 mm from the gutter.
  test('only what folds on one line in both layers is folded to and fro, as the booklet has it', () => {
    const over = 'to the front and press'
    const lone = saidOf(card(105, 148, [layer('reed', 20, 15, 12)]))
    expect(lone).not.toContain(over)
    expect(lone).toContain('Do not fold it over: pushing folds it.')
    expect(lone).toMatch(
      /Push the strip through to the inside\. Shut it and press\. In reed press the old fold flat/,
    )
    const two = saidOf(card(105, 148, [layer('reed', 20, 15, 12), layer('rush', 40, 15, 12)]))
    expect(two).toContain('Do not fold them over')
    const mixed = saidOf(card(105, 148, [layer('reed', 20, 15, 12), layer('rush', 40, 15)]))
    expect(mixed).toContain(`Fold the other strip ${over}`)
    const even = saidOf(card(105, 148, [layer('rush', 40, 15)]))
    expect(even).toContain(`Fold the strip ${over}`)
    expect(even).not.toContain('Shut it and press')
    const glint = { id: 'glint', kind: 'cut-layer', on: 'rush/ridge', start: 1, end: 3, left: 1, right: 2 }
    const nested = saidOf(card(105, 148, [layer('rush', 40, 15), glint]))
    expect(nested).toMatch(/Pinch that fold flat, lines outside, and cut from it\. Deeper .* cut on\. Push\./)
    for (const name of ['reeds', 'pond', 'lantern', 'layers', 'owl', 'garden'] as const) {
      const design = dummy(name)
      const isCreased = orderOf(design).some(({ does }) => does === 'crease')
      expect(
        /Fold (each|the|the other) (strip|triangle|part|cut part)s? to the front and press/.test(
          saidOf(design),
        ),
        name,
      ).toBe(isCreased)
    }
  })

  test('a piece with two joints is stuck at one, then found by the card; walls come before their platform', () => {
    expect(saidOf(card(105, 148, [wings(8)]))).toContain(
      'A and B: fold the piece. Lay its A on the other A, its ridge away from the gutter. Glue A alone. Then put glue on B, shut the card on it and press. Let it dry.',
    )
    expect(saidOf(card(105, 148, [wings(0)]))).toMatch(
      /Lay its A on the other A.* Lift its upper half and tape all of A’s edge along its line, .*\. Slip tape under B’s edge, .* press\. Open it and tape both edges in front too/,
    )
    expect(saidOf(card(105, 148, [wings(8)]))).toContain('Push up from behind what stays down')
    expect(saidOf(card(105, 148, [beak(110, -40, 40)]))).not.toContain('fold the piece')
    expect(saidOf(card(105, 148, [beak(110, -40, 40)]))).not.toContain('Push up')
    const said = saidOf(dummy('pond'))
    expect(said).toContain('Of pond, glue all walls on the open card first, all tabs pointing out. Then glue')
    // Under the platform no partner shows a hatch: what is glued there is dotted on both.
    expect(said).toContain('where neither is hatched, on the other face of one')
    expect(saidOf(dummy('owl'))).not.toContain('walls')
    // The owl's tail sits on the outside of its ridge: no page shuts on that.
    expect(saidOf(dummy('owl'))).toMatch(/On the outside of a fold: tail\. Pinch that fold flat/)
    expect(saidOf(dummy('owl'))).toContain('A\u00a0B, C\u00a0D, E\u00a0F: fold the piece')
    expect(saidOf(dummy('owl'))).toContain('tape both edges on their lines')
    expect(saidOf(card(105, 148, [wings(8)]))).not.toContain('outside of a fold')
  })

  // Common practice, no source: what is pressed before one knows how it is held is spoilt.
  test('scored before it is cut out, told how before it is stuck', () => {
    for (const name of ['garden', 'pond', 'owl', 'lilies', 'house', 'scene'] as const) {
      const said = saidOf(dummy(name))
      const order = [
        'Score every fold',
        'cut all pieces out',
        'Then stick piece after piece, each letter on its twin, A first',
        'How: the next steps.',
        ': fold the piece. Lay',
      ]
      const at = order.map((words) => said.indexOf(words))
      expect(at, name).toEqual([...at].sort((a, b) => a - b))
      expect(at[0], name).toBeGreaterThanOrEqual(0)
    }
    // One piece has no order.
    expect(saidOf(card(105, 148, [wings(8)]))).not.toContain('piece after piece')
  })

  // The kernel's own shut card: the ridge of what is laid over lies beyond its line, seen from the gutter.
  test('folded, a piece lies with its ridge away from the gutter', () => {
    let looked = 0
    for (const [name, design] of dummies)
      for (const m of design.mechanisms) {
        if (m.on !== 'gutter' || (m.kind !== 'glued-v-fold' && m.kind !== 'glued-tent')) continue
        const tip = measure(design, openingRange(design)[0]).tips[m.id]
        if (!tip) continue
        const [x, y, z] = tip.at
        const off = Math.hypot(x, z)
        if (m.kind === 'glued-tent') expect(off, name).toBeGreaterThan(m.leftFoot)
        else {
          const angle = (Math.atan2(off, m.toward * (y - m.apex)) * 180) / Math.PI
          expect(angle, `${name}: ${m.id}`).toBeGreaterThan(settingOf(m, 'base'))
        }
        looked++
      }
    expect(looked).toBeGreaterThan(12)
  })

  test('of two joints the left one has the letter that comes first', () => {
    for (const [name, design] of dummies) {
      const letters = letteredJoints(design)
      for (const { of, letter } of letters) {
        if (!of.endsWith('/left') || of.startsWith('cover')) continue
        const right = letters.findIndex((one) => one.of === of.replace('/left', '/right'))
        expect(right, name).toBeGreaterThan(letters.findIndex((one) => one.letter === letter))
      }
    }
  })

  // Seen from behind, left is right.
  test('a fold that later parts are cut from is called as it is seen', () => {
    const strip = { id: 'reed', kind: 'cut-layer', on: 'rush/left', start: 1, end: 3, left: 2 }
    const made = card(105, 148, [layer('rush', 40, 15), strip])
    for (const lines of ['front', 'ticks'] as const)
      expect(saidOf(made, lines)).toContain('Next, reed on the left fold of rush.')
    expect(saidOf(made, 'back')).toContain('Next, reed on the right fold of rush.')
    const middle = card(105, 148, [layer('rush', 40, 15), { ...strip, on: 'rush/ridge' }])
    expect(saidOf(middle, 'back')).toContain('Next, reed on the middle fold of rush.')
  })

  test('a good copy tells what is not scored: corners of pieces, of tape, or of both', () => {
    const scoring = (mechanisms: readonly object[], lines: SheetLines, hasCorners: boolean) =>
      stepsFor(card(105, 148, mechanisms), lines, {}, hasCorners)[0]
    expect(scoring([wings(8)], 'ticks', false)).not.toContain('corners')
    expect(scoring([wings(8)], 'ticks', true)).toContain(
      'Small corners show where a piece goes: do not score',
    )
    expect(scoring([wings(0)], 'ticks', false)).toContain('Small crossed corners are for tape: do not score')
    expect(scoring([wings(0)], 'ticks', true)).toContain(
      'Small corners are for pieces, crossed ones for tape',
    )
    for (const lines of ['front', 'back'] as const)
      expect(scoring([wings(0)], lines, true)).not.toContain('corners')
  })

  test('a letter that is cut off is pencilled on its piece, by the side that is printed', () => {
    const step = (lines: SheetLines) => stepsFor(dummy('owl'), lines, { hasLettersBeside: true })[0]
    expect(step('front')).toContain('on the back of that piece, at the same place. Then cut')
    expect(step('back')).toContain('on that piece, on this printed side. Then cut')
  })

  test('the printed side decides which way the lines lie', () => {
    const made = card(105, 148, [beak(110, -40, 40)])
    expect(saidOf(made, 'front')).toContain('Fold the gutter the other way, lines inside.')
    expect(saidOf(made, 'back')).toContain('Keep the lines outside.')
    expect(saidOf(card(105, 148), 'back')).toContain('Fold the gutter, lines outside.')
    expect(saidOf(card(105, 148), 'front')).toContain('Fold the gutter, lines inside.')
    expect(saidOf(card(105, 148), 'ticks')).toContain('from tick to tick')
    expect(saidOf(card(105, 148))).not.toContain('from tick to tick')
    expect(saidOf(card(105, 148))).toContain('Then cut the card out.')
    expect(saidOf(card(105, 148, [wings(8)]))).toContain('Then cut all pieces out.')
    expect(saidOf(card(105, 148, [wings(8)]))).not.toContain('window')
    expect(saidOf(card(105, 148, [wings(8)]), 'back')).toContain('hold the paper to a window')
    expect(saidOf(card(105, 148, [beak(110, -40, 40)]), 'back')).not.toContain('window')
  })

  test('a hair off the paper’s edge is no trimming; more is told, for sides and ends', () => {
    const step = (trim: object) => stepsFor(card(105, 148), 'front', trim)[0]
    expect(step({ sides: 0.04 })).toBe('The left and right edges of the card’s sheet are the card’s own.')
    expect(step({ sides: 0.05 })).toBe('Trim 0.1\u00a0mm off the left and right edges of the card’s sheet.')
    expect(step({ ends: 2 })).toBe('Trim 2\u00a0mm off the upper and lower edges of the card’s sheet.')
    expect(step({})).toContain('Then cut the card out.')
    expect(stepsFor(card(105, 148), 'front', { ends: 2 }).join()).not.toContain('cut the card out')
  })

  test('sizes leave out what is nought by choice and what is said already', () => {
    const text = (m: object) => {
      const made = card(105, 148, [m])
      const [one] = made.mechanisms
      return (one ? sizesOf(made, one) : [])
        .map((run) => run.text)
        .join('')
        .replaceAll('\u00a0', ' ')
    }
    // The wedge: atan(40 / 40) = 45 degrees.
    expect(text(beak(110, -40, 40))).toMatch(/^beak Apex 110\D*, \D*40 towards you, \D*40\D*, \D*45°$/)
    expect(text(beak(60, 40, 40))).toMatch(/40 away from you/)
    expect(text({ ...beak(110, -40, 40), lean: 0.04 })).not.toMatch(/lean/i)
    expect(text({ ...beak(110, -40, 40), lean: 2.26 })).toMatch(/Lean 2\.3 away from you/i)
    expect(text({ ...beak(110, -40, 40), lean: -2.26 })).toMatch(/Lean 2\.3 towards you/i)
    const [name, rest] = cardSizes(card(105.25, 148))
    expect(name?.text).toBe('card')
    expect(rest?.text).toContain('Open 210.5 × 148, page 105.3 wide')
  })

  test('pieces are called by their mechanism, and by their part where there are several', () => {
    expect([pieceName('moth'), pieceName('moth/piece'), pieceName('pond/wall-1')]).toEqual([
      'moth',
      'moth',
      'pond wall 1',
    ])
  })
})

describe('which side is seen', () => {
  test('from behind, folds turn over and left is right; cuts and glue stay', () => {
    expect(
      (['mountain', 'valley', 'cut', 'glue', 'crease'] as const).map((kind) => seen(kind, 'outside')),
    ).toEqual(['valley', 'mountain', 'cut', 'glue', 'crease'])
    expect((['mountain', 'valley', 'cut'] as const).map((kind) => seen(kind, 'inside'))).toEqual([
      'mountain',
      'valley',
      'cut',
    ])
    expect(onPage({ origin: [50, 90], mirrored: false }, [10, 20])).toEqual([60, 70])
    expect(onPage({ origin: [50, 90], mirrored: true }, [10, 20])).toEqual([40, 70])
  })

  const number = fc.integer({ min: -4, max: 14 })
  test('a line is clipped to what of it lies in the rectangle, by plain search', () => {
    fc.assert(
      fc.property(number, number, number, number, (ax, ay, bx, by) => {
        const [a, b]: [Point, Point] = [
          [ax, ay],
          [bx, by],
        ]
        const found = clipped(a, b, [0, 2, 10, 8])
        const steps = Array.from({ length: 1001 }, (_, k) => k / 1000).filter((t) => {
          const [x, y] = [ax + t * (bx - ax), ay + t * (by - ay)]
          return x >= -1e-9 && x <= 10 + 1e-9 && y >= 2 - 1e-9 && y <= 8 + 1e-9
        })
        const [first, last] = [steps[0], steps.at(-1)]
        if (first === undefined || last === undefined || last - first < 2e-3) {
          if (found)
            expect(Math.hypot(found[0][0] - found[1][0], found[0][1] - found[1][1])).toBeLessThan(0.06)
          return
        }
        if (a[0] === b[0] && a[1] === b[1]) return
        expect(found).not.toBeNull()
        for (const [point, t] of [
          [found?.[0], first],
          [found?.[1], last],
        ] as const) {
          expect(Math.abs((point?.[0] ?? 99) - ax - t * (bx - ax))).toBeLessThan(0.05)
          expect(Math.abs((point?.[1] ?? 99) - ay - t * (by - ay))).toBeLessThan(0.05)
        }
      }),
      { numRuns: 500 },
    )
  })
})

describe('setting words', () => {
  const type = { size: 3, leading: 4 }
  const lines = (text: string, width: number) => {
    const rows = new Map<number, string[]>()
    for (const mark of paragraph([{ text }], type, width).marks)
      if (mark.mark === 'word') rows.set(mark.at[1], [...(rows.get(mark.at[1]) ?? []), mark.text])
    return [...rows.values()].map((row) => row.join(''))
  }

  test('a line holds as many words as fit, and not one less', () => {
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom('owl', 'heron', 'a', 'moonlight', 'reeds', 'of'), {
          minLength: 1,
          maxLength: 20,
        }),
        fc.integer({ min: 25, max: 90 }),
        (words, width) => {
          const rows = lines(words.join(' '), width)
          expect(rows.join(' ')).toBe(words.join(' '))
          rows.forEach((row, k) => {
            expect(wordWidth(row, 3)).toBeLessThanOrEqual(width + 1e-6)
            const next = rows[k + 1]?.split(' ')[0]
            if (next) expect(wordWidth(`${row} ${next}`, 3)).toBeGreaterThan(width - 1e-6)
          })
        },
      ),
    )
  })

  test('a word wider than its line is parted, letter by letter, and none is lost', () => {
    const rows = lines('Nachtigallenlied', 12)
    expect(rows.join('')).toBe('Nachtigallenlied')
    expect(rows.length).toBeGreaterThan(1)
    for (const row of rows) expect(wordWidth(row, 3)).toBeLessThanOrEqual(12)
  })

  test('what is held together stays on one line where one is wide enough, else it is parted between words', () => {
    const held = 'Apex to slit 34 towards the end'
    const text = `owl ${held.replaceAll(' ', '\u00a0')}`
    expect(lines(text, wordWidth(held, 3) + 0.1)).toEqual(['owl', held])
    const rows = lines(text, 20)
    expect(rows.join(' ')).toBe(`owl ${held}`)
    for (const row of rows) expect(wordWidth(row, 3)).toBeLessThanOrEqual(20)
  })

  test('blocks stand one below another, a gap between; words hung to the right of their number', () => {
    const one = paragraph([{ text: 'owl' }], type, 50)
    const two = paragraph([{ text: 'owl and heron and moth' }], type, 20)
    const both = stack([one, two], 2)
    expect(both.height).toBeCloseTo(one.height + 2 + two.height, 9)
    expect(both.width).toBe(Math.max(one.width, two.width))
    const firsts = both.marks.map((mark) => (mark.mark === 'word' ? mark.at[1] : 0))
    expect((firsts[1] ?? 0) - (firsts[0] ?? 0)).toBeCloseTo(one.height + 2, 9)
    expect(two.height - one.height).toBeCloseTo(4 * (two.marks.length - 1), 9)
    expect(stack([], 5)).toEqual({ width: 0, height: 0, marks: [] })
    const with5 = hung([], 5, one)
    expect(with5.width).toBe(one.width + 5)
    const mark = with5.marks[0]
    expect(mark?.mark === 'word' && mark.at[0]).toBe(5)
    expect(paragraph([], type, 50).height).toBe(0)
  })

  test('looks that differ stand side by side; a space parts what the text parts', () => {
    const { marks } = paragraph(
      [{ text: 'Cut', bold: true }, { text: ' through' }, { text: 'out' }],
      type,
      90,
    )
    const words = marks.filter((mark): mark is WordMark => mark.mark === 'word')
    expect(words.map(({ text }) => text)).toEqual(['Cut', 'throughout'])
    expect(words[1]?.at[0]).toBeCloseTo(wordWidth('Cut', 3, true) + wordWidth(' ', 3), 9)
  })

  test('the room that a word takes turns with it', () => {
    const word = (turn: number, anchor: 'start' | 'middle' | 'end'): WordMark => ({
      mark: 'word',
      at: [50, 50],
      text: 'heron',
      role: 'note',
      size: 4,
      anchor,
      turn,
    })
    const width = wordWidth('heron', 4)
    const level = extent(word(0, 'start'))
    expect(level[0]).toBe(50)
    expect(level[2] - level[0]).toBeCloseTo(width, 9)
    expect(level[1]).toBeLessThan(48)
    expect(level[3]).toBeGreaterThan(50)
    expect(extent(word(0, 'end'))[2]).toBeCloseTo(50, 9)
    expect(extent(word(0, 'middle'))[0]).toBeCloseTo(50 - width / 2, 9)
    // A quarter turn to the left: it runs up the page, its capitals to the left.
    const up = extent(word(-90, 'start'))
    expect(up[3]).toBeCloseTo(50, 9)
    expect(up[1]).toBeCloseTo(50 - width, 9)
    expect(up[0]).toBeCloseTo(50 - (50 - level[1]), 9)
    const line: PathMark = {
      mark: 'path',
      role: 'cut',
      closed: false,
      runs: [
        [
          [3, 9],
          [5, 2],
        ],
      ],
    }
    expect(extent(moved(line, 10, 20))).toEqual([13, 22, 15, 29])
  })
})

const words = (page: SheetPage): WordMark[] => page.marks.filter((mark) => mark.mark === 'word')

describe('on to a next page', () => {
  const design = shelf.find(({ name }) => name === 'a hundred mechanisms')?.design as Design
  const pages = laid(design, { paper: 'a4' })

  test('words go down one column, then the next, then over the page, in the order of the design', () => {
    const places = pages.flatMap((page, number) =>
      words(page)
        .filter(({ text, bold }) => bold === true && /^reed \d+$/.test(text))
        .map(({ text, at: [x, y] }) => ({ k: Number(text.slice(5)), x, y, number })),
    )
    expect(places.map(({ k }) => k)).toEqual(Array.from({ length: 100 }, (_, k) => k))
    places.slice(1).forEach((now, k) => {
      const before = places[k] as (typeof places)[number]
      const down = now.number === before.number && now.x === before.x && now.y > before.y
      const across = now.number === before.number && now.x > before.x + 20 && now.y < before.y
      expect(down || across || now.number === before.number + 1).toBe(true)
    })
    expect(pages.length).toBeGreaterThan(1)
    expect(pages.length).toBeLessThan(6)
    // No column ends while a row would still go into it: 8 mm of margin and a row are left at most.
    for (const [k, { y, x, number }] of places.entries()) {
      const next = places[k + 1]
      if (!next || number === 0 || (next.number === number && next.x === x)) continue
      expect((pages[number]?.box[3] ?? 0) - 8 - y).toBeLessThan(12)
    }
  })

  test('each page says which it is, what is on it and from which side', () => {
    pages.forEach(({ says }, k) => {
      expect(says).toContain(`page ${k + 1} of ${pages.length}`)
    })
    expect(pages.at(-1)?.says).toMatch(/: words\.$/)
    expect(laid(moth(), { paper: 'a4' })[1]?.says).toContain('seen from the front')
    expect(laid(moth(), { paper: 'a4', lines: 'back' })[1]?.says).toContain('seen from the back')
    expect(laid(moth(), { paper: 'a4', lines: 'back' })[0]?.says).toContain('seen from outside')
  })

  const wide = card(
    105,
    148,
    Array.from({ length: 3 }, (_, k) => ({
      ...wings(10, `wings-${k}`),
      apex: 10 + k,
      foot: 30 + 3 * (k % 5),
      ridge: 40 + 5 * (k % 4),
    })),
  )

  test.each(['inside', 'outside'] as const)(
    'few pieces stand apart in rows, the high ones first, named below, printed for the %s',
    (face) => {
      const sheets = laid(wide, { paper: 'a4', lines: face === 'outside' ? 'back' : 'front' }).filter(
        ({ placed }) => placed.some(({ piece }) => piece !== 'card'),
      )
      const flat = new Map(pieces(wide).map((piece) => [piece.id, piece]))
      const seenOnes = sheets.flatMap((page, number) =>
        page.placed.map(({ piece, place }) => {
          const points = (flat.get(piece)?.outline ?? []).map((p) => onPage(place, [p[0], p[1]]))
          const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)]
          expect(place.mirrored).toBe(face === 'outside')
          return {
            piece,
            number,
            left: Math.min(...xs),
            top: Math.min(...ys),
            right: Math.max(...xs),
            bottom: Math.max(...ys),
          }
        }),
      )
      expect(seenOnes).toHaveLength(3)
      seenOnes.forEach((a, k) => {
        const [, , width, height] = sheets[a.number]?.box ?? [0, 0, 0, 0]
        expect(Math.min(a.left, a.top, width - a.right, height - a.bottom)).toBeGreaterThan(7.99)
        for (const b of seenOnes.slice(k + 1)) {
          if (a.number !== b.number) continue
          const apart = Math.max(a.left - b.right, b.left - a.right, a.top - b.bottom, b.top - a.bottom)
          expect(apart).toBeGreaterThan(4.99)
        }
        const next = seenOnes[k + 1]
        if (next) expect(a.bottom - a.top).toBeGreaterThan(next.bottom - next.top - 1e-9)
        // A row is filled before the next one is begun.
        if (next && next.number === a.number && next.top > a.top + 1)
          expect(a.right + 5 + (next.right - next.left)).toBeGreaterThan(width - 8)
        const name = words(sheets[a.number] as SheetPage).find(({ text }) => text === pieceName(a.piece))
        expect(name?.at[0]).toBeCloseTo(a.left, 6)
        expect((name?.at[1] ?? 0) - a.bottom).toBeGreaterThan(1.5)
        expect((name?.at[1] ?? 99) - a.bottom).toBeLessThan(6)
      })
    },
  )

  test('more pieces than a page holds take a second, and none is begun too early', () => {
    const many = card(
      140,
      200,
      Array.from({ length: 9 }, (_, k) => ({
        ...wings(10, `wings-${k}`),
        apex: 10 + k,
        foot: 60,
        ridge: 60,
      })),
    )
    const full = laid(many, { paper: 'a4' }).filter(({ placed }) =>
      placed.some(({ piece }) => piece !== 'card'),
    )
    expect(full.length).toBeGreaterThan(1)
    const counts = full.map(({ placed }) => placed.length)
    expect(counts.reduce((a, b) => a + b, 0)).toBe(9)
    // All are alike: every page but the last holds as many as the first.
    for (const count of counts.slice(0, -1)) expect(count).toBe(counts[0])
    expect(counts.at(-1)).toBeLessThanOrEqual(counts[0] ?? 0)
    expect(paperOf('a3').width).toBe(297)
  })
})

test('a list of places may be parted, so that what stands before it is not alone on its line', () => {
  const sheet = dummy('pond')
  const pond = sheet.mechanisms.find(({ id }) => id === 'pond')
  if (!pond) throw new Error('no pond')
  const { marks } = paragraph(sizesOf(sheet, pond), { size: 2.85, leading: 3.5 }, 46)
  const lines = marks.flatMap((mark) => (mark.mark === 'word' ? [mark.text] : []))
  expect(lines.join(' ')).toMatch(/Glue tab 8, Walls at \d/)
  expect(lines.filter((line) => /^Glue tab \d+,?$/.test(line))).toEqual([])
})

test('a list that goes on in another place says there what it is', () => {
  const cells = [0, 80].map((x) => ({ x, y: 0, width: 60, bottom: 30 }))
  const [, second] = cells as [(typeof cells)[number], (typeof cells)[number]]
  const sizes = sectionsFor(dummy('garden'), 'front', fittings.close, {}, []).find(({ id }) => id === 'sizes')
  const again = sizes?.again?.(60) ?? null
  const row: Block = { ...paragraph([{ text: 'moon' }], { size: 3, leading: 8 }, 60), height: 8 }
  // Three rows fill the first column; in the second one something stands already, or nothing.
  for (const isTaken of [true, false]) {
    const shelves = new Shelves()
    if (isTaken) shelves.put(() => row, [second])
    const marks = shelves.flow([row, row, row, row], cells, 1, again) ?? []
    const said = marks.flatMap((mark) => (mark.mark === 'word' ? [mark] : []))
    const [label] = said.filter(({ text }) => text !== 'moon')
    expect(said).toHaveLength(5)
    expect(label?.text).toBe('More sizes')
    expect(label?.at[0]).toBeCloseTo(80, 9)
    expect((label?.at[1] ?? 0) > 8).toBe(isTaken)
  }
})

test('so does each further column and page of words alone', () => {
  const pages = laid(shelf.find(({ name }) => name === 'a hundred mechanisms')?.design as Design, {
    paper: 'a4',
  })
  const heads = pages.flatMap((page, k) =>
    words(page).flatMap(({ text, at, bold }) => (bold ? [{ text, k, x: at[0], y: at[1] }] : [])),
  )
  const columns = new Set(
    heads.flatMap(({ text, k, x }) => (/^reed \d/.test(text) ? [`${k} ${x.toFixed(3)}`] : [])),
  )
  expect(columns.size).toBeGreaterThan(1)
  const labelled = heads.flatMap(({ text, k, x }) =>
    text === 'More sizes' || text === 'Sizes in mm' ? [`${k} ${x.toFixed(3)}`] : [],
  )
  expect(labelled.sort()).toEqual([...columns].sort())
})
