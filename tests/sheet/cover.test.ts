// The cover as a piece: glued by its rim, never behind what moves. Areas by polyclip-ts, which shares no code with ours.
import { difference, intersection } from 'polyclip-ts'
import { describe, expect, test } from 'vitest'
import type { PathMark, WordMark } from '../../src/drawing/pen/marks.ts'
import { spineSays } from '../../src/making/spine.ts'
import type { Design } from '../../src/paper/index.ts'
import { check, jointsOf, modelOf, parseDesign, pieces, thickest } from '../../src/paper/index.ts'
import type { SheetPage } from '../../src/sheet/index.ts'
import { fitOn, paperOf } from '../../src/sheet/index.ts'
import { stepsFor } from '../../src/sheet/marks/instructions.ts'
import { beak, card, dummy, laid, MOTH, uncovered } from './designs.ts'

type Ring = [number, number][]

const ring = (points: readonly (readonly [number, number])[]): Ring => points.map(([x, y]) => [x, y])

const area = (shapes: [number, number][][][]): number =>
  shapes.flat().reduce(
    (sum, points) =>
      sum +
      Math.abs(
        points.reduce((twice, [x, y], k) => {
          const [u, v] = points[(k + 1) % points.length] as [number, number]
          return twice + x * v - u * y
        }, 0) / 2,
      ),
    0,
  )

const covered = (width: number, height: number, mechanisms: readonly object[] = [], more: object = {}) =>
  parseDesign({
    hingebook: 1,
    title: 'Owl',
    card: { width, height, cover: true, ...more },
    mechanisms,
  })

const rimOf = (design: Design) => jointsOf(design).filter(({ host }) => host.piece === 'cover')

const named = ['beak', 'eyes', 'garden', 'hedgehog', 'heron', 'lantern', 'moth', 'owl', 'pond', 'reeds']

describe('the cover’s piece', () => {
  test('is 3 mm larger all round, with one valley fold on the gutter, and comes last', () => {
    const all = pieces(covered(105, 148, [beak(110, -40, 40)]))
    expect(all.map(({ id }) => id)).toEqual(['card', 'cover'])
    const cover = all.at(-1)
    expect(cover?.outline).toEqual([
      [-108, -3],
      [108, -3],
      [108, 151],
      [-108, 151],
    ])
    const folds = cover?.lines.filter(({ kind }) => kind === 'valley' || kind === 'mountain')
    expect(folds).toEqual([
      {
        kind: 'valley',
        of: 'cover/gutter',
        points: [
          [0, -3],
          [0, 151],
        ],
      },
    ])
    expect(pieces(card(105, 148, [beak(110, -40, 40)])).map(({ id }) => id)).toEqual(['card'])
  })

  test('the same rim is glued on both pieces: on the card’s back, on the cover’s inside', () => {
    const design = covered(105, 148, [beak(110, -40, 40)])
    const rim = rimOf(design)
    expect(rim.length).toBe(6)
    for (const { own, host, isTaped } of rim) {
      expect([own.piece, own.face, host.piece, host.face, isTaped]).toEqual([
        'card',
        'back',
        'cover',
        'front',
        false,
      ])
      expect(own.points).toEqual(host.points)
    }
    // On either page: 8 mm all round but for 10 mm beside the gutter.
    const each = 105 * 148 - (105 - 8) * (148 - 16) - 2 * 10 * 8
    expect(rim.reduce((sum, { own }) => sum + area([[ring(own.points)]]), 0)).toBeCloseTo(2 * each, 6)
    for (const piece of pieces(design))
      expect(piece.lines.filter(({ kind }) => kind === 'glue').map(({ points }) => points)).toEqual(
        rim.map(({ own }) => own.points),
      )
  })

  test.each(named)('of %s is not glued behind what moves, nor nearer than 3 mm to it', (name) => {
    const design = dummy(name)
    const rim = rimOf(design).map(({ own }) => ring(own.points))
    expect(rim.length).toBeGreaterThanOrEqual(4)
    const { panels } = modelOf(design)
    for (const { outline, notches, onPiece } of panels.slice(0, 2))
      for (const notch of notches) {
        // Wider by 3 mm along either axis: the boxes round each corner.
        const moving = notch.outline.map(([x, y]): Ring => {
          const [a, b] = [x * onPiece.off[0], y]
          return [
            [a - 2.9, b - 2.9],
            [a + 2.9, b - 2.9],
            [a + 2.9, b + 2.9],
            [a - 2.9, b + 2.9],
          ]
        })
        const whole = ring(notch.outline.map(([x, y]) => [x * onPiece.off[0], y]))
        for (const strip of rim)
          for (const part of [whole, ...moving])
            expect(area(intersection([strip], [part]))).toBeLessThan(1e-9)
        expect(outline.length).toBe(4)
      }
  })

  test('what moves near the edge parts the rim', () => {
    // A slit up to 4 mm from the edges: nothing is left of the outer strips beside it.
    const wide = covered(60, 148, [
      { id: 'reed', kind: 'cut-layer', on: 'gutter', start: 60, end: 80, left: 56, right: 56 },
    ])
    const outer = rimOf(wide).filter(({ own }) => own.points.some(([x]) => Math.abs(x) === 60))
    const heights = outer.map(({ own }) => own.points.map(([, y]) => y).sort((a, b) => a - b))
    expect(outer.length).toBeGreaterThanOrEqual(4)
    for (const [low = 0, , , high = 0] of heights) expect(high <= 57 + 1e-9 || low >= 83 - 1e-9).toBe(true)
  })

  test('counts as two layers wherever the card is thickest, and the check says so', () => {
    const beaked = [beak(110, -40, 40)]
    const [with2, without] = [covered(105, 148, beaked), card(105, 148, beaked)]
    expect(thickest(with2).layers).toBe(thickest(without).layers + 2)
    expect(thickest(with2).thickness).toBeCloseTo(0.25 * thickest(with2).layers, 9)
    const said = (design: Design) => check(design).find(({ name }) => name === 'thickness')
    expect(said(with2)?.sentence).toContain('its cover among them')
    expect(said(without)?.sentence).not.toContain('cover')
    expect(said(with2)?.value).toBeCloseTo(thickest(with2).thickness, 9)
    // Bare: two pages and two halves of the cover.
    expect(thickest(covered(105, 148)).layers).toBe(4)
  })
})

const paths = (page: SheetPage): PathMark[] => page.marks.filter((mark) => mark.mark === 'path')

const words = (page: SheetPage): WordMark[] => page.marks.filter((mark) => mark.mark === 'word')

const on = (design: Design, lines: 'front' | 'ticks' | 'back') =>
  laid(design, { paper: 'a4', lines }).map((page) => ({
    page,
    ids: page.placed.map(({ piece }) => piece),
  }))

describe('the cover on the sheet', () => {
  test('has the last page with pieces to itself', () => {
    for (const name of named) {
      const sheets = on(dummy(name), 'front').filter(({ ids }) => ids.length > 0)
      expect(sheets.at(-1)?.ids, name).toEqual(['cover'])
    }
  })

  test('the rim is hatched on the cover alone: the card has dots on its front, and its place on its back', () => {
    for (const [lines, onCard, onCover] of [
      ['front', ['behind'], ['glue', 'place']],
      // Its outside is seen: the cover's inside is printed whatever of the card is.
      ['back', ['place'], ['glue', 'place']],
    ] as const) {
      const sheets = on(dummy('heron'), lines)
      const roles = (id: string) => {
        const page = sheets.find(({ ids }) => ids[0] === id)?.page as SheetPage
        return new Set(
          paths(page).flatMap(({ role, of = '' }) =>
            of.startsWith('cover/') && /^(glue|behind|place)$/.test(role) ? [role] : [],
          ),
        )
      }
      expect([...roles('card')].sort()).toEqual(onCard)
      expect([...roles('cover')].sort()).toEqual(onCover)
    }
  })

  test('of a good copy nothing of the rim is on the card’s own face', () => {
    const [sheet] = on(dummy('heron'), 'ticks')
    expect(sheet?.ids).toEqual(['card'])
    const rim = sheet?.page.marks.filter(({ of = '' }) => of.startsWith('cover/'))
    expect(rim).toEqual([])
  })

  test('is laid letter on letter where the card has its letters, and else by its gutter and its ends', () => {
    for (const lines of ['front', 'ticks', 'back'] as const) {
      const [sheet] = on(dummy('heron'), lines)
      const isLettered = sheet?.page.marks.some(
        ({ mark, of = '' }) => mark === 'word' && of.startsWith('cover/'),
      )
      const last = stepsFor(dummy('heron'), lines).at(-1) ?? ''
      expect(last.includes('letter on letter'), lines).toBe(isLettered)
      expect(last.includes('reader’s ends together'), lines).toBe(!isLettered)
    }
  })

  test('the two halves have a letter each, told once in the list of joints', () => {
    const pages = laid(dummy('beak'), { paper: 'a4' })
    const said = pages.flatMap((page) => words(page).map(({ text }) => text))
    expect(said).toContain('card glued to cover')
    expect(said).toContain('A B')
    expect(said.filter((text) => text === 'A').length).toBe(6)
  })

  test('it is glued last, by its rim only', () => {
    for (const lines of ['front', 'ticks', 'back'] as const) {
      const steps = stepsFor(dummy('hedgehog'), lines)
      expect(steps.at(-1)).toMatch(
        /^Fold the cover along its two scored lines\. Put glue on the hatched rim only/,
      )
      expect(steps.filter((step) => step.includes('Fold the cover')).length).toBe(1)
      // The rim is hatched too: who glues it with the other places can push nothing through any more.
      expect(steps.find((step) => step.includes('Then stick piece after piece'))).toContain('The rim waits')
    }
    expect(stepsFor(covered(60, 100), 'front').at(-1)).toMatch(/^Fold the cover\. Put glue/)
    expect(stepsFor(dummy('heron'), 'front')[0]).toContain('Then cut the card and its cover out.')
    expect(stepsFor(uncovered(dummy('heron')), 'front').join()).not.toContain('cover')
    // Nothing else is glued: no word of other pieces.
    expect(stepsFor(dummy('heron'), 'front').join()).not.toContain('Fold the other pieces')
  })

  test('round a thick card it has two lines, as far apart as the booklet says, where they are scored', () => {
    for (const lines of ['front', 'ticks', 'back'] as const) {
      const design = dummy('hedgehog')
      const apart = Number(/Score the cover twice, ([\d.]+)/.exec(spineSays(design))?.[1])
      const sheet = on(design, lines).find(({ ids }) => ids[0] === 'cover')
      const gutter = sheet?.page.placed[0]?.place.origin[0] ?? 0
      const at = paths(sheet?.page as SheetPage)
        .filter(({ of }) => of === 'cover/gutter')
        .flatMap(({ runs }) => runs)
        .map(([p]) => Number(((p?.[0] ?? 0) - gutter).toFixed(6)))
      expect(new Set(at)).toEqual(new Set([-apart / 2, apart / 2]))
      // Two lines, or two ticks at each of two ends.
      expect(at).toHaveLength(lines === 'front' ? 2 : 4)
    }
    const thin = on(covered(60, 100), 'front').find(({ ids }) => ids[0] === 'cover')
    expect(paths(thin?.page as SheetPage).filter(({ of }) => of === 'cover/gutter')).toHaveLength(1)
  })

  test('where it is larger than the paper, it is left out, and the sentence and the steps say so', () => {
    // A4 by ISO 216 is 297 mm long: two pages of 148 mm fit it, a cover of 302 mm does not.
    const { ok, sentence, others } = fitOn(covered(148, 200), paperOf('a4'))
    expect(ok).toBe(true)
    expect(sentence).toMatch(/^The cover is 5\.0 mm too wide for A4\. It fits on A3/)
    expect(sentence).toMatch(/The sheet on A4 leaves it out and says how to cut it from other card\.$/)
    const pages = laid(covered(148, 200), { paper: 'a4' })
    expect(pages.flatMap(({ placed }) => placed.map(({ piece }) => piece))).toEqual(['card'])
    const said = pages
      .flatMap((page) => words(page).map(({ text }) => text))
      .join(' ')
      .replaceAll('\u00a0', ' ')
    // Two pages of 148 mm and 200 mm high, 3 mm larger all round.
    expect(said).toContain('cut 302 × 206 mm from other card')
    expect(said).not.toContain('hatched rim')
    expect(said).toContain('Fold it in the middle.')
    // Paper of 0.5 mm: whoever cuts the cover scores it twice, and is told to fold it so.
    const thick = laid(covered(148, 200, [MOTH], { caliper: 0.5 }), { paper: 'a4' })
      .flatMap((page) => words(page).map(({ text }) => text))
      .join(' ')
    expect(thick).toContain('Score the cover twice')
    expect(thick).toContain('Fold it along these two lines.')
    expect(thick).not.toContain('in the middle.')
    // A card that is too large itself is refused as one.
    expect(fitOn(covered(160, 200), paperOf('a4'))).toMatchObject({
      ok: false,
      leavesCover: false,
      sentence: expect.stringMatching(/^The card is 23\.0 mm too wide for A4/),
    })
    expect(others.map(({ name }) => name)).toContain('a3')
    expect(fitOn(card(148, 200), paperOf('a4')).ok).toBe(true)
    // Letter by ANSI/ASME Y14.1 is 11 in, 279.4 mm: 276 mm go on it, 280 mm do not.
    expect(fitOn(covered(135, 200), paperOf('letter')).ok).toBe(true)
    expect(fitOn(covered(137, 200), paperOf('letter')).sentence).toMatch(/^The cover is 0\.6 mm too wide/)
  })

  test('a cover that fills its paper says what to trim', () => {
    // 206 mm on paper of 210 mm: 2 mm at either end.
    const page = on(dummy('garden'), 'front').find(({ ids }) => ids[0] === 'cover')?.page as SheetPage
    expect(
      words(page)
        .map(({ text }) => text)
        .join(' '),
    ).toContain('Trim 2 mm off the two long edges of this sheet.')
  })
})

test('the area of the rim is what is left of the card’s back beside the middle', () => {
  const rim = rimOf(dummy('beak')).map(({ own }) => [ring(own.points)] as Ring[])
  const outer: Ring = ring([
    [-105, 0],
    [105, 0],
    [105, 148],
    [-105, 148],
  ])
  const left = difference([outer], ...rim)
  // Two strips of 8 mm down the sides, and four of 87 by 8 mm.
  expect(area([left.flat() as Ring[]])).toBeCloseTo(210 * 148 - 2 * 8 * 148 - 4 * 87 * 8, 3)
})
