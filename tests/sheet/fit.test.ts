import { describe, expect, test } from 'vitest'
import { pieces } from '../../src/paper/index.ts'
import { fitOn, layOut, paperOf, papers, TooLargeError } from '../../src/sheet/index.ts'
import { beak, card } from './designs.ts'

const says = (width: number, height: number, paper: Parameters<typeof paperOf>[0]): string =>
  fitOn(card(width, height), paperOf(paper)).sentence

describe('a design too large for the paper', () => {
  test('says by how much and what would do', () => {
    // 309 mm open against 297 mm of A4.
    expect(says(154.5, 200, 'a4')).toBe(
      'The card is 12.0 mm too wide for A4. It fits on A3, US Legal or US Tabloid.',
    )
    // Standing: 200 mm by 300 mm against 210 mm by 297 mm.
    expect(says(100, 300, 'a4')).toBe(
      'The card is 3.0 mm too high for A4. It fits on A3, US Legal or US Tabloid.',
    )
    expect(says(160, 230, 'a4')).toBe(
      'The card is 23.0 mm too wide and 20.0 mm too high for A4. It fits on A3 or US Tabloid.',
    )
    // Lying, 400 mm by 300 mm against 297 mm by 210 mm; A3 lying is 420 mm by 297 mm.
    expect(says(200, 297, 'a4')).toBe(
      'The card is 103.0 mm too wide and 87.0 mm too high for A4. It fits on A3.',
    )
    expect(says(400, 500, 'a3')).toMatch(/No paper offered here is large enough: part it over several sheets/)
  })

  test('rounds up: a card smaller by what was said fits', () => {
    expect(says(148.54, 200, 'a4')).toMatch(/^The card is 0\.1 mm too wide/)
    for (const width of [148.54, 149.037, 155.5555]) {
      const said = Number(/([\d.]+) mm too wide/.exec(says(width, 200, 'a4'))?.[1] ?? 0)
      expect(fitOn(card(width - said / 2, 200), paperOf('a4')).ok, String(width)).toBe(true)
    }
  })

  test('is refused, never scaled', () => {
    const design = card(154.5, 200)
    expect(() => layOut(design, { paper: 'a4' })).toThrow(TooLargeError)
    try {
      layOut(design, { paper: 'a4' })
    } catch (error) {
      expect(error).toMatchObject({ fit: { ok: false, excess: { wide: 12, high: 0, piece: 'card' } } })
    }
  })

  test('names a piece of its own card', () => {
    const tent = {
      id: 'pond',
      kind: 'glued-tent',
      on: 'gutter',
      start: 10,
      end: 138,
      leftFoot: 60,
      rightFoot: 60,
      leftWall: 160,
      rightWall: 160,
      tab: 10,
    }
    expect(fitOn(card(105, 148, [tent]), paperOf('a4')).sentence).toMatch(
      /^The piece for pond is [\d.]+ mm too wide for A4\./,
    )
  })

  test('tells lines that no printer reaches from a card that is too large', () => {
    const near = fitOn(card(148, 210, [beak(203, -60, 60)]), paperOf('a4'))
    expect(near.ok).toBe(true)
    const over = fitOn(card(148, 210, [beak(207.5, -60, 60)]), paperOf('a4'))
    expect(over.sentence).toMatch(
      /^The card fills A4: the lines of beak run 4\.0 mm into the border that a printer cannot reach\. It fits on /,
    )
  })
})

test('every paper that is named would do, every other would not', () => {
  for (const [width, height] of [
    [105, 148],
    [148, 210],
    [150, 200],
    [100, 300],
    [210, 290],
    [300, 500],
  ] as const) {
    const design = card(width, height)
    for (const paper of papers) {
      const fit = fitOn(design, paper)
      const open = [2 * width, height].sort((a, b) => a - b)
      const fits = (open[0] ?? 0) <= paper.width + 0.05 && (open[1] ?? 0) <= paper.height + 0.05
      expect(fit.ok, `${width} x ${height} on ${paper.name}`).toBe(fits)
      if (!fit.ok) expect(fit.others.every((other) => fitOn(design, other).ok)).toBe(true)
    }
  }
})

test('a bare card and its lines are what the kernel says', () => {
  expect(pieces(card(105, 148))).toHaveLength(1)
})
