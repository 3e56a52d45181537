// What is printed folds up to what the screen shows: a sheet's lines, read from its SVG by a parser of XML, are folded
// by code of the test's own (fold-up.ts) and held against the kernel's paper, both ways round.
import { describe, expect, test } from 'vitest'
import type { Design } from '../../src/paper/index.ts'
import { compile, jointsOf, kinds } from '../../src/paper/index.ts'
import { surfaces } from '../../src/paper/motion/surface.ts'
import { sheetSvg } from '../../src/sheet/index.ts'
import { dummies, dummy, uncovered } from './designs.ts'
import type { Space } from './fold-up.ts'
import { areaOf, awayFrom, folder, readPrint, sheetOf } from './fold-up.ts'

/** The sheet's own numbers are exact to 0.0001 mm; a fold's end at 150 mm from its hinge moves a hundred times as far. */
const TOLERANCE = 0.01

const openings = [130, 55]

/** On the smaller of two papers on which the whole edge of the card is printed. */
const printOf = (design: Design): readonly string[] => {
  const isWhole = design.card.width < 110 && design.card.height < 160
  return sheetSvg(uncovered(design), { paper: isWhole ? 'a4' : 'a3' })
}

const foldOf = (pages: readonly string[]) => folder(sheetOf(pages.map(readPrint)))

const nearest = (p: Space, outlines: readonly (readonly Space[])[]): number =>
  Math.min(...outlines.map((outline) => awayFrom(p, outline)))

/** How far what is folded from the print is off the kernel's paper anywhere, mm. */
function off(fold: ReturnType<typeof folder>, design: Design, opening: number): number {
  const poser = compile(uncovered(design))
  poser(opening)
  const paper = surfaces(poser)
  const faces = fold(opening)
  const folded = faces.map(({ points }) => points)
  const leaves = [...new Set(paper.map(({ leaf }) => leaf))].map((leaf) =>
    paper.flatMap((one) => (one.leaf === leaf ? [one.points] : [])),
  )
  const own = faces.filter(({ isTab }) => !isTab)
  expect(own.reduce((sum, { points }) => sum + areaOf(points), 0)).toBeCloseTo(
    paper.reduce((sum, { points }) => sum + areaOf(points), 0),
    0,
  )
  return Math.max(
    // A face lies on one panel with all its corners, and all paper lies on some face.
    ...folded.map((face) =>
      Math.min(...leaves.map((leaf) => Math.max(...face.map((corner) => nearest(corner, leaf))))),
    ),
    ...paper.flatMap(({ points }) => points.map((corner) => nearest(corner, folded))),
  )
}

describe('a printed card', () => {
  const mechanisms = dummies.flatMap(([, design]) => design.mechanisms)
  const joints = dummies.flatMap(([, design]) => jointsOf(uncovered(design)))

  test('every kind and each way of gluing is among them', () => {
    expect(new Set(mechanisms.map(({ kind }) => kind))).toEqual(new Set(kinds.map(({ kind }) => kind)))
    expect(joints.filter(({ isTaped }) => isTaped).length).toBeGreaterThan(20)
    expect(joints.filter(({ isTaped, line }) => !isTaped && line !== null).length).toBeGreaterThan(20)
    expect(joints.filter(({ line }) => line === null).length).toBeGreaterThan(20)
  })

  test.each(dummies)('%s folds up again to the kernel’s pose', (_, design) => {
    const fold = foldOf(printOf(design))
    for (const opening of openings)
      expect(off(fold, design, opening), `at ${opening}`).toBeLessThan(TOLERANCE)
  })
})

describe('a printed card with pieces glued on, letter on letter', () => {
  test('letters that are exchanged, or a fold turned over, give something else', () => {
    const design = dummy('owl-wings')
    const pages = printOf(design)
    const wrong = (from: RegExp, to: string): string[] =>
      pages.map((page, k) => (k === 0 ? page : page.replaceAll(from, to)))
    const fails = (print: readonly string[]): number => {
      try {
        return off(foldOf(print), design, 130)
      } catch {
        return Number.POSITIVE_INFINITY
      }
    }
    expect(fails(pages)).toBeLessThan(TOLERANCE)
    // Both wings’ left tabs the wrong way round.
    const swapped = wrong(/>C<\/text>/g, '>#</text>').map((page, k) =>
      k === 0 ? page : page.replaceAll(/>E<\/text>/g, '>C</text>').replaceAll('>#</text>', '>E</text>'),
    )
    expect(fails(swapped)).toBeGreaterThan(1)
    const over = wrong(
      /style="[^"]*" class="m-mountain( open" data-of="owl\/ridge")/g,
      'style="stroke-dasharray:6 3" class="m-valley$1',
    )
    expect(over).not.toEqual(pages)
    expect(fails(over)).toBeGreaterThan(1)
  })
})

describe('a printed card with tents, taped joints and pieces stuck flat, letter on letter', () => {
  /** What a print that was changed on its later pages is off by; without end if it does not fold up at all. */
  const wrong = (name: string, change: (page: string) => string): number => {
    const design = dummy(name)
    const pages = printOf(design)
    const changed = pages.map((page, k) => (k === 0 ? page : change(page)))
    expect(changed).not.toEqual(pages)
    try {
      return off(foldOf(changed), design, 130)
    } catch {
      return Number.POSITIVE_INFINITY
    }
  }

  /** Letters of both ends of a joint may stand on one page: the first of each is exchanged alone. */
  const swapped = (one: string, other: string) => (page: string) =>
    page
      .replace(`>${one}</text>`, '>#</text>')
      .replace(`>${other}</text>`, `>${one}</text>`)
      .replace('>#</text>', `>${other}</text>`)

  const turned = (of: string) => (page: string) =>
    page.replace(
      new RegExp(`<path style="[^"]*" class="m-(valley|mountain)( open" data-of="${of}")`),
      (_, kind: string, rest: string) =>
        kind === 'valley'
          ? `<path style="stroke-dasharray:8 3 1 3" class="m-mountain${rest}`
          : `<path style="stroke-dasharray:6 3" class="m-valley${rest}`,
    )

  test.each([
    ['lilies', 'A', 'B'],
    ['lilies', 'A', 'C'],
    ['house', 'A', 'B'],
    ['scene', 'C', 'D'],
    // Two walls whose tabs go behind one platform, on either half of it.
    ['pond', 'B', 'F'],
  ])('%s with the letters %s and %s exchanged gives something else', (name, one, other) => {
    expect(wrong(name, swapped(one, other))).toBeGreaterThan(1)
  })

  test.each([
    ['moth', 'moth/ridge'],
    ['house', 'house/ridge'],
    ['house', 'house/left'],
    ['lilies', 'near-lily/ridge'],
    ['pond', 'pond/ridge'],
  ])('%s with the fold %s turned over gives something else', (name, fold) => {
    expect(wrong(name, turned(fold))).toBeGreaterThan(1)
  })

  test('a piece stuck flat with its reader’s end turned round lies another way', () => {
    // The glue of the moth on the lily is square: only the words at the piece say how it is turned.
    const over = (page: string) =>
      page.replace(/(data-of="name"[^>]*>)below</, (_, before: string) => `${before}above<`)
    expect(wrong('lilies', over)).toBeGreaterThan(1)
  })
})

describe('a print with a wrong line does not', () => {
  const design = dummy('heron-beak')
  const [svg = ''] = printOf(design)

  /** What it is off by; without end if it does not fold up at all. */
  const fails = (print: string): number => {
    try {
      return off(foldOf([print]), design, 90)
    } catch {
      return Number.POSITIVE_INFINITY
    }
  }

  const folds = [
    ...svg.matchAll(/<path style="[^"]*" class="m-(valley|mountain) open" data-of="(beak\/\w+)"[^>]*>/g),
  ]

  test('each fold turned from valley to mountain, or back', () => {
    expect(folds).toHaveLength(3)
    for (const [path, kind, name] of folds) {
      const [dashes, other] = kind === 'valley' ? ['8 3 1 3', 'mountain'] : ['6 3', 'valley']
      const turned = path
        .replace(/stroke-dasharray:[^"]*/, `stroke-dasharray:${dashes}`)
        .replace(`m-${kind}`, `m-${other}`)
      expect(fails(svg.replace(path, turned)), name).toBeGreaterThan(1)
    }
  })

  test('a fold that ends elsewhere, or is cut', () => {
    const [path = ''] = folds.find(([, , name]) => name === 'beak/left') ?? []
    const [, end = ''] = /L([\d.]+) /.exec(path) ?? []
    expect(fails(svg.replace(path, path.replace(`L${end} `, `L${Number(end) + 4} `)))).toBeGreaterThan(0.5)
    const cut = path.replace(/ ?style="[^"]*"/, '').replace('m-valley', 'm-cut')
    expect(fails(svg.replace(path, cut))).toBeGreaterThan(0.5)
  })

  test('dashes that say something else than the layer are named', () => {
    const [path = ''] = folds[0] ?? []
    expect(() => readPrint(svg.replace(path, path.replace('m-mountain', 'm-valley')))).toThrow(/dashes/)
  })
})
