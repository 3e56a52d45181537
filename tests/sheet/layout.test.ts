import { describe, expect, test } from 'vitest'
import * as sections from '../../content/words/sheet/sections.ts'
import * as sides from '../../content/words/sheet/sides.ts'
import type { PathMark, Point, WordMark } from '../../src/drawing/pen/marks.ts'
import type { Design, Mechanism, Piece } from '../../src/paper/index.ts'
import { pieces } from '../../src/paper/index.ts'
import type { SheetLines, SheetPage } from '../../src/sheet/index.ts'
import { fitOn, paperOf } from '../../src/sheet/index.ts'
import { clipped } from '../../src/sheet/marks/clip.ts'
import { faceOf, stepsFor } from '../../src/sheet/marks/instructions.ts'
import { letteredJoints, placesOn } from '../../src/sheet/marks/joint-places.ts'
import { looks } from '../../src/sheet/marks/looks.ts'
import { extent } from '../../src/sheet/marks/setting.ts'
import { sizesOf } from '../../src/sheet/marks/sizes.ts'
import { beak, card, dummy, laid, moth, shelf, uncovered } from './designs.ts'

const ways: readonly SheetLines[] = ['front', 'ticks', 'back']

/** Every design of the shelf on every paper that takes it, printed in every way. */
const sheets = shelf.flatMap(({ name, design }) =>
  (['a4', 'letter', 'a3', 'a5'] as const)
    .filter((paper) => fitOn(design, paperOf(paper)).ok)
    .flatMap((paper) =>
      ways.map((lines) => ({
        name: `${name}, ${paper}, ${lines}`,
        // What the paper cannot hold of a cover is left out.
        design: fitOn(design, paperOf(paper)).leavesCover ? uncovered(design) : design,
        lines,
        pages: laid(design, { paper, lines }),
      })),
    ),
)

const words = (page: SheetPage): WordMark[] => page.marks.filter((mark) => mark.mark === 'word')

const paths = (page: SheetPage): PathMark[] => page.marks.filter((mark) => mark.mark === 'path')

const segments = (path: PathMark): [Point, Point][] =>
  path.runs.flatMap((run) => {
    const ends = path.closed ? [...run, run[0] as Point] : run
    return ends.slice(1).map((point, k): [Point, Point] => [ends[k] as Point, point])
  })

describe('on a face that will be seen', () => {
  const good = (name: string, paper: 'a4' | 'a5' | 'letter'): SheetPage => {
    const [first] = laid(uncovered(dummy(name)), { paper, lines: 'ticks' })
    if (!first) throw new Error('there is no page')
    return first
  }

  test('a card that fills its page carries no sentence: another page says where its reader’s end is', () => {
    const page = good('beak', 'a5')
    expect(words(page)).toEqual([])
    const said = laid(uncovered(dummy('beak')), { paper: 'a5', lines: 'ticks' })
      .flatMap((one) => words(one).map(({ text }) => text))
      .join(' ')
    expect(said).toContain('The lower edge of its page is the reader’s end')
  })

  test('where the paper is wider than the card, the sentence stands beside it', () => {
    // 270 mm of card on 297 mm of paper (ISO 216): 13.5 mm at either side.
    const notes = words(good('garden', 'a4')).filter(({ of }) => of === 'near-edge')
    expect(notes.length).toBeGreaterThan(0)
    for (const note of notes) {
      const [left, , right] = extent(note)
      expect(left > 297 / 2 + 135 || right < 297 / 2 - 135).toBe(true)
    }
  })

  test('where a joint is taped its letter stands alone, no larger than it must be to be read', () => {
    const letters = words(good('owl', 'a4')).filter(({ of }) =>
      /^(body|left-wing|right-wing)\//.test(of ?? ''),
    )
    expect(letters.map(({ text }) => text).sort()).toEqual(['A', 'B', 'C', 'F'])
    for (const { size } of letters) expect(size).toBe(3)
  })
})

test('no design of the garden takes a page more than its pieces need', () => {
  for (const [name, paper, most] of [
    ['pond', 'a4', 3],
    ['garden', 'a4', 4],
    ['garden', 'letter', 4],
    ['night-garden', 'letter', 3],
    ['hedgehog', 'letter', 3],
  ] as const)
    for (const lines of ways) {
      // Good copies of these have more to tell than their pages hold in type that is easy to read.
      const isLong = (name === 'pond' || name === 'night-garden') && lines === 'ticks'
      expect(laid(dummy(name), { paper, lines }).length, name).toBeLessThanOrEqual(most + (isLong ? 1 : 0))
    }
})

test('there is a design for every situation', () => {
  expect(sheets.length).toBeGreaterThan(40)
  expect(sheets.some(({ pages }) => pages.length > 1)).toBe(true)
})

describe.each(sheets)('$name', ({ design, lines, pages }) => {
  test('nothing lies nearer the edge than a printer reaches', () => {
    const beyond = pages.flatMap(({ box: [, , width, height], marks }) =>
      marks.filter((mark) => {
        const [left, top, right, bottom] = extent(mark)
        return Math.min(left, top, width - right, height - bottom) < 6.5 - 1e-9
      }),
    )
    expect(beyond).toEqual([])
  })

  test('no words touch other words, a line or the card', () => {
    const touching = pages.flatMap((page) => {
      const boxes = words(page).map((word) => ({ text: word.text, box: extent(word) }))
      const lines = paths(page).flatMap((path) => segments(path).map((ends) => ({ path, ends })))
      return boxes.flatMap(({ text, box: a }, k) => [
        ...boxes
          .slice(k + 1)
          .filter(
            ({ box: b }) =>
              Math.min(a[2], b[2]) - Math.max(a[0], b[0]) > 1e-9 &&
              Math.min(a[3], b[3]) - Math.max(a[1], b[1]) > 1e-9,
          )
          .map((other) => `${text} / ${other.text}`),
        ...lines
          .filter(({ ends: [p, q] }) => clipped(p, q, a) !== null)
          .map(({ path }) => `${text} / ${path.role} ${path.of}`),
      ])
    })
    expect(touching).toEqual([])
  })

  test('every section is said once, and all of it', () => {
    const said = pages.flatMap((page) => words(page).map((word) => word.text)).join(' ')
    const count = (label: string): number =>
      said.replaceAll(/(Make it|Joints): page \d+/g, '').split(label).length - 1
    for (const label of ['Make it', 'Take care', 'Sizes in mm']) expect(count(label), label).toBe(1)
    // The name of the check lines stands at each of them, what they are for at the first.
    expect(count('Check the size')).toBeGreaterThan(0)
    expect(said).not.toMatch(/and \d+ more/)
    // Lines break where they must: compare without spaces.
    const bare = (text: string): string => text.normalize('NFC').replaceAll(/\s/g, '')
    expect(bare(said).split(bare(sections.print)).length - 1).toBe(1)
    for (const text of [sections.print, sections.care, design.title, ...stepsFor(design, lines).slice(1)])
      expect(bare(said), text).toContain(bare(text))
    // Beside the card it is this side, elsewhere it is page 1; a card of several sheets has no page of its own.
    expect([sides.card[lines], sections.cardPage[lines]].some((one) => bare(said).includes(bare(one)))).toBe(
      true,
    )
    for (const m of design.mechanisms)
      expect(bare(said)).toContain(
        bare(
          sizesOf(design, m)
            .map((run) => run.text)
            .join(''),
        ),
      )
  })

  test('every glued place and every joint carries its letter, the same on both partners', () => {
    const joints = letteredJoints(design)
    const all = pieces(design).flatMap(({ id }) =>
      placesOn(design, id, faceOf(lines)).map((place) => ({ ...place, id })),
    )
    expect(all.length).toBe(2 * joints.length)
    // Of a good copy the card's own face stays clean: the cover alone tells of the rim behind it.
    const wanted = all
      .filter(({ id, isRim }) => !(lines === 'ticks' && isRim && id === 'card'))
      .map(({ letter, of }) => `${letter} ${of}`)
    const printed = pages.flatMap((page) =>
      words(page).flatMap(({ text, of, bold }) =>
        bold && joints.some((joint) => joint.letter === text && joint.of === of) ? [`${text} ${of}`] : [],
      ),
    )
    expect(printed.sort()).toEqual(wanted.sort())
  })

  test('nothing on a piece is solid but a cut', () => {
    const solid = pages.flatMap((page) =>
      paths(page).filter(({ role, of = '' }) => {
        const look = (looks as Readonly<Record<string, { readonly dash: readonly number[] }>>)[role]
        return look?.dash.length === 0 && role !== 'cut' && !of.startsWith('check-')
      }),
    )
    expect(solid).toEqual([])
  })

  test('the check lines lie beside every piece: on one they would be cut', () => {
    for (const page of pages) {
      const rulers = paths(page).filter(({ of = '' }) => of.startsWith('check-'))
      const edges = paths(page).filter(
        ({ role, of, closed }) =>
          role === 'cut' && (closed ? page.placed.some(({ piece }) => piece === of) : of === 'cover'),
      )
      for (const ruler of rulers)
        for (const edge of edges) {
          const [a, b] = [extent(ruler), extent(edge)]
          expect(a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3]).toBe(false)
        }
    }
  })

  test('a lone letter stands upright: turned, Z would be read as N, and C as U', () => {
    const letters = new Set(letteredJoints(design).map(({ letter }) => letter))
    for (const page of pages) {
      const all = words(page)
      for (const word of all.filter(
        ({ text, bold, turn }) => bold && turn && letters.has(text) && text.length === 1,
      )) {
        // Its partner's name stands right after it, turned the same way.
        const after = all.some(
          ({ at, turn, of, bold }) =>
            !bold &&
            turn === word.turn &&
            of === word.of &&
            Math.abs(at[0] - word.at[0]) < 0.01 &&
            at[1] < word.at[1],
        )
        expect(after, word.text).toBe(true)
      }
    }
  })

  test('no mark of glue runs along a fold or a cut', () => {
    const along = pages.flatMap((page) => {
      const folds = paths(page)
        .filter(({ role, of }) => /^(cut|valley|mountain)$/.test(role) && of !== 'legend')
        .flatMap(segments)
      return paths(page)
        .filter(({ role, of }) => /^(place|behind|glue)$/.test(role) && of !== 'legend')
        .flatMap((path) => segments(path).map((ends) => ({ path, ends })))
        .filter(({ path, ends: [p, q] }) => {
          // What is taped lies where it is taped: strokes cross the line.
          const isStroke = Math.hypot(p[0] - q[0], p[1] - q[1]) < 2
          return !isStroke && path.of !== undefined && folds.some(([a, b]) => isAlong(p, q, a, b))
        })
        .map(({ path }) => `${path.role} ${path.of}`)
    })
    expect(along).toEqual([])
  })

  test('a page with pieces carries both check lines, at their length', () => {
    const carries = (page: SheetPage): boolean => paths(page).some(({ of }) => of === 'check-100mm')
    // On a card or cover they would be taken for cuts: of one that fills its paper the next page has them.
    const fills = ({ placed, box: [, , wide, high] }: SheetPage): boolean => {
      const piece = placed.length > 1 ? undefined : pieces(design).find(({ id }) => id === placed[0]?.piece)
      const size = (k: 0 | 1): number =>
        Math.max(...(piece?.outline ?? []).map((p) => p[k])) -
        Math.min(...(piece?.outline ?? []).map((p) => p[k]))
      // Nowhere round it are 8 mm free that a printer reaches.
      return piece !== undefined && wide - size(0) < 2 * 17 && high - size(1) < 2 * 17
    }
    expect(pages.some(carries)).toBe(true)
    const wanted = pages.filter((page) => page.placed.length > 0 && (carries(page) || !fills(page)))
    for (const page of wanted) {
      for (const [of, length] of [
        ['check-100mm', 100],
        ['check-4in', 101.6],
      ] as const) {
        const lines = paths(page).filter((path) => path.of === of)
        expect(lines.length, of).toBe(1)
        const [a, b] = lines[0]?.runs[0] ?? []
        expect(Math.hypot((b?.[0] ?? 0) - (a?.[0] ?? 0), (b?.[1] ?? 0) - (a?.[1] ?? 0))).toBeCloseTo(
          length,
          9,
        )
      }
    }
  })

  test('every piece lies on one page, its points where the kernel says', () => {
    const placed = pages.flatMap((page) => page.placed.map((one) => ({ ...one, page })))
    expect(placed.map(({ piece }) => piece).sort()).toEqual(
      pieces(design)
        .map(({ id }) => id)
        .sort(),
    )
    const lost = placed.flatMap(({ piece: id, place, page }) => {
      const piece = pieces(design).find((one) => one.id === id) as Piece
      const back = ([x, y]: Point): Point => {
        const [u, v] = [(x - place.origin[0]) * (place.mirrored ? -1 : 1), place.origin[1] - y]
        const [cos, sin] = [Math.cos(place.turn ?? 0), Math.sin(place.turn ?? 0)]
        return [cos * u + sin * v, cos * v - sin * u]
      }
      const drawn = paths(page).flatMap((path) => path.runs.map((run) => ({ path, run: run.map(back) })))
      return piece.lines.filter(
        (line) =>
          // The edges and gutters of card and cover may run off what can be printed; for a good copy folds have ticks.
          !/^(page|gutter|cover|cover.gutter)$/.test(line.of) &&
          line.kind !== 'glue' &&
          (lines !== 'ticks' || line.kind === 'cut') &&
          !drawn.some(
            ({ path, run }) =>
              path.of === line.of && path.closed === (line.closed ?? false) && sameRun(run, line.points),
          ),
      )
    })
    expect(lost).toEqual([])
  })
})

/** Whether a stretch lies on another from end to end, mm. */
function isAlong(p: Point, q: Point, a: Point, b: Point): boolean {
  const long = Math.hypot(b[0] - a[0], b[1] - a[1])
  if (long < 1e-6) return false
  const way: Point = [(b[0] - a[0]) / long, (b[1] - a[1]) / long]
  return [p, q].every(([x, y]) => {
    const t = (x - a[0]) * way[0] + (y - a[1]) * way[1]
    const off = Math.abs((x - a[0]) * way[1] - (y - a[1]) * way[0])
    return off < 0.15 && t > -0.15 && t < long + 0.15
  })
}

function sameRun(a: readonly Point[], b: readonly Point[]): boolean {
  return (
    a.length === b.length &&
    a.every(([x, y], k) => Math.hypot(x - (b[k]?.[0] ?? 0), y - (b[k]?.[1] ?? 0)) < 1e-9)
  )
}

const kindsOf = (page: SheetPage | undefined): Record<string, string> =>
  Object.fromEntries(
    (page ? paths(page) : []).filter(({ of }) => of?.includes('/')).map(({ of, role }) => [of, role]),
  )

describe('the outside', () => {
  const heron = uncovered(dummy('heron'))
  const [inside] = laid(heron, { paper: 'a4' })
  const [outside] = laid(heron, { paper: 'a4', lines: 'back' })

  test('turns mountains to valleys and valleys to mountains', () => {
    const flip: Record<string, string> = { mountain: 'valley', valley: 'mountain' }
    const [a, b] = [kindsOf(inside), kindsOf(outside)]
    expect(Object.keys(a).length).toBeGreaterThan(8)
    for (const [of, role] of Object.entries(a)) expect(b[of], of).toBe(flip[role])
  })

  test('swaps left and right', () => {
    const middle = (page: SheetPage | undefined, of: string): number => {
      const gutter = page?.placed[0]?.place.origin[0] ?? Number.NaN
      const path = page ? paths(page).find((one) => one.of === of) : undefined
      return (path?.runs[0]?.[1]?.[0] ?? Number.NaN) - gutter
    }
    expect(middle(inside, 'left-eye/ridge')).toBeLessThan(0)
    expect(middle(outside, 'left-eye/ridge')).toBeCloseTo(-middle(inside, 'left-eye/ridge'), 9)
    expect(middle(outside, 'right-eye/ridge')).toBeCloseTo(-middle(inside, 'right-eye/ridge'), 9)
  })

  test('cuts stay cuts', () => {
    const cuts = (page: SheetPage | undefined) =>
      page ? paths(page).filter(({ role }) => role === 'cut').length : 0
    expect(cuts(outside)).toBe(cuts(inside))
  })
})

test('the heron and the lantern keep to one page, on A4 and on letter paper', () => {
  for (const name of ['heron', 'beak', 'layers', 'card'])
    for (const paper of ['a4', 'letter'] as const)
      for (const lines of ways)
        expect(laid(uncovered(dummy(name)), { paper, lines }), `${name} ${paper} ${lines}`).toHaveLength(1)
  // On Letter a good copy of the lantern, with parts on parts, needs a page for its steps.
  for (const paper of ['a4', 'letter'] as const)
    for (const lines of ways)
      expect(laid(uncovered(dummy('lantern')), { paper, lines })).toHaveLength(
        paper === 'letter' && lines === 'ticks' ? 2 : 1,
      )
})

test('a card as large as the paper says what to trim', () => {
  const design = shelf.find(({ name }) => name === 'a card as large as A4')?.design
  const said = (design ? laid(design, { paper: 'a4' }) : [])
    .flatMap((page) => words(page).map(({ text }) => text))
    .join(' ')
  // A4 lying is 297 mm wide, two A5 pages are 296 mm: half a millimetre on either side.
  expect(said).toContain('Trim 0.5 mm off the left and right edges of the card’s sheet.')
  expect(said).toContain('The upper and lower edges of the card’s sheet are the card’s own.')
})

/** The roles of what is marked for a joint, by page. */
const marksOf = (design: Design, lines: SheetLines, of: string): string[][] =>
  laid(design, { paper: 'a4', lines }).map((page) =>
    [
      ...new Set(paths(page).flatMap((path) => (path.of?.replace('-hatch', '') === of ? [path.role] : []))),
    ].filter((role) => /^(glue|place|behind)$/.test(role)),
  )

describe('glue is marked on the face that is glued', () => {
  // By hand: the moth's tabs bend towards their fronts and are glued by their backs; the star is stuck on by its
  // back. What they are stuck to is glued on its front. Printed on the back it is the other way round.
  test.each([
    ['front', 'moth/left', ['place', 'glue'], ['behind']],
    ['back', 'moth/left', ['behind'], ['glue']],
  ] as const)('%s: %s', (lines, of, card, piece) => {
    expect(marksOf(moth(), lines, of)).toEqual([card, piece])
  })

  test('of a piece stuck flat on a face', () => {
    const [, front] = laid(moth(), { paper: 'a4', lines: 'front' })
    const star = paths(front as SheetPage).filter(({ of }) => of === 'star' || of === 'star-hatch')
    // Hatched on the moth, dotted on the star.
    expect(star.filter(({ role }) => role === 'glue')).toHaveLength(1)
    expect(star.filter(({ role }) => role === 'behind')).toHaveLength(1)
  })

  test('walls under a platform and a sticker on it are marked apart', () => {
    const [, page] = laid(dummy('pond'), { paper: 'a4', lines: 'front' })
    const on = (role: string, of: string): number =>
      paths(page as SheetPage).filter((path) => path.role === role && path.of === of).length
    expect(on('behind', 'pond/top-3')).toBeGreaterThan(0)
    expect(on('glue', 'pond/top-3-hatch')).toBe(0)
    expect(on('glue', 'pad-hatch')).toBe(1)
  })

  test('the list of lines names what is there, and nothing else', () => {
    const said = (lines: SheetLines, design: Design): string[] =>
      laid(design, { paper: 'a4', lines }).flatMap((page) => words(page).map(({ text }) => text))
    expect(said('front', moth())).toContain('Glue behind')
    expect(said('front', uncovered(dummy('heron')))).not.toContain('Glue behind')
    expect(said('front', uncovered(dummy('heron')))).not.toContain('Glue')
    expect(said('front', dummy('moth'))).toContain('Tape')
  })
})

test('glue larger than its sticker stays on the sticker, and on the page', () => {
  const wide = card(105, 148, [
    {
      id: 'star',
      kind: 'rider',
      on: 'page/left',
      shape: [
        [20, 20],
        [40, 20],
        [40, 40],
        [20, 40],
      ],
      glue: [
        [10, 10],
        [90, 10],
        [90, 140],
        [10, 140],
      ],
    },
  ])
  for (const lines of ways) {
    const [, page] = laid(wide, { paper: 'a4', lines })
    const [cut] = paths(page as SheetPage).filter(({ of, role }) => role === 'cut' && of === 'star/piece')
    const [l, t, r, b] = extent(cut as PathMark)
    for (const mark of paths(page as SheetPage).filter(({ of }) => of === 'star' || of === 'star-hatch')) {
      const [x, y, u, v] = extent(mark)
      expect(Math.min(x - l, y - t, r - u, b - v)).toBeGreaterThanOrEqual(-1e-9)
    }
  }
})

describe('for a good copy', () => {
  const [page] = laid(dummy('heron'), { paper: 'a4', lines: 'ticks' })
  const [whole] = laid(dummy('heron'), { paper: 'a4' })
  const folds = (of: SheetPage | undefined): PathMark[] =>
    (of ? paths(of) : []).filter(({ role, of }) => /^(valley|mountain)$/.test(role) && of !== 'legend')

  test('folds have a tick at either end, and only that', () => {
    expect(folds(page)).toHaveLength(2 * folds(whole).length)
    const lengthOf = ({ runs: [run] }: PathMark): number =>
      Math.hypot(...[0, 1].map((k) => (run?.[1]?.[k] ?? 0) - (run?.[0]?.[k] ?? 0)))
    for (const tick of folds(page)) expect(lengthOf(tick)).toBeLessThanOrEqual(4 + 1e-9)
  })

  test('cuts are drawn whole: they are cut away', () => {
    const cuts = (of: SheetPage | undefined) =>
      (of ? paths(of) : [])
        .filter(({ role, of }) => role === 'cut' && of !== 'legend')
        .map(({ runs }) => runs)
    expect(cuts(page)).toEqual(cuts(whole))
  })
})

describe('sizes are told as a maker would', () => {
  const said = (m: object): string =>
    sizesOf(card(105, 148, [m]), card(105, 148, [m]).mechanisms[0] as Mechanism)
      .map(({ text }) => text)
      .join('')
      .replaceAll('\u00a0', ' ')

  test.each([
    [beak(110, -40, 38), 'beak Apex 110, Apex to slit 40 towards you, Slit 38, Wedge angle 43.5°'],
    [beak(30, 40, 40), 'beak Apex 30, Apex to slit 40 away from you, Slit 40, Wedge angle 45°'],
    [
      { ...beak(110, -40, 38), lean: -5 },
      'beak Apex 110, Apex to slit 40 towards you, Slit 38, Lean 5 towards you, Wedge angle 40.2°',
    ],
    [
      { id: 'roof', kind: 'cut-trapezoid', on: 'gutter', start: 20, end: 50, startCut: 40, endCut: 10 },
      'roof Start 20, End 50, First cut 40, Second cut 10, Wedge angle 45° narrower away from you',
    ],
    [
      {
        id: 'pond',
        kind: 'floating-layer',
        on: 'gutter',
        start: 1,
        end: 9,
        height: 5,
        left: 9,
        right: 9,
        walls: [-8, 0, 8],
      },
      'pond Start 1, End 9, Height 5, Left reach 9, Right reach 9, Walls at 8 left and 0 and 8 right',
    ],
  ])('%o', (m, sentence) => {
    expect(said(m)).toBe(sentence)
  })

  test('no size of any design has a sign', () => {
    for (const { design } of shelf)
      for (const m of design.mechanisms)
        expect(
          sizesOf(design, m)
            .slice(1)
            .map(({ text }) => text)
            .join(''),
        ).not.toMatch(/[-−]\d/)
  })
})

describe('on every piece', () => {
  const texts = (lines: SheetLines): string[] =>
    laid(moth(), { paper: 'a4', lines }).flatMap((page) => words(page).map(({ text }) => text))

  test('its face and its reader’s end are named', () => {
    expect(texts('front')).toContain('front, reader’s end below')
    expect(texts('back')).toContain('back, reader’s end below')
    expect(texts('front').some((text) => text.startsWith('Inside of the card. Reader’s end'))).toBe(true)
    expect(texts('back').some((text) => text.startsWith('Outside of the card. Reader’s end'))).toBe(true)
  })

  test('there is a line for the maker’s name', () => {
    for (const page of laid(moth(), { paper: 'a4' })) {
      expect(words(page).map(({ text }) => text)).toContain('Made by')
      expect(paths(page).filter(({ of }) => of === 'maker')).toHaveLength(1)
    }
  })
})
