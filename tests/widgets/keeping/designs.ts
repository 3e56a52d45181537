// Random designs of all kinds with papers and art, for whatever keeps them.
import fc from 'fast-check'
import type { Design } from '../../../src/paper/index.ts'
import { modelOf, PAPER_COLOURS, parseDesign } from '../../../src/paper/index.ts'
import { gluedDesigns } from '../../paper/shared/glued-designs.ts'

const point = fc.tuple(
  fc.double({ min: -50, max: 200, noNaN: true }).map((x) => Math.round(x * 10) / 10 + 0),
  fc.double({ min: -200, max: 200, noNaN: true }).map((x) => x + 0),
)

const stroke = fc.record({
  on: fc.nat({ max: 30 }),
  also: fc.array(fc.nat({ max: 30 }), { maxLength: 2 }),
  face: fc.constantFrom('front', 'back'),
  shape: fc.array(point, { minLength: 3, maxLength: 6 }),
  closed: fc.boolean(),
  curve: fc.boolean(),
  fill: fc.option(fc.constantFrom(...PAPER_COLOURS)),
  line: fc.boolean(),
  lineColour: fc.constantFrom(...PAPER_COLOURS),
  lineWidth: fc.constantFrom(0.1, 0.6, 3.25),
  glows: fc.boolean(),
})

const title = fc
  .oneof(
    fc.string({ minLength: 1, maxLength: 40 }),
    fc.constantFrom('Żółw & Ödön', '蛾 🦉', '<script>alert(1)</script>'),
  )
  .map((text) => text.replace(/[^\p{L}\p{N} &<>/()🦉]/gu, '').trim() || 'Owl')

/** Designs as a maker would have them: every kind on every seat, papers, art, a cover. */
export const kept: fc.Arbitrary<Design> = fc
  .record({
    made: gluedDesigns({ most: 6 }),
    title,
    cover: fc.boolean(),
    strokes: fc.array(stroke, { maxLength: 4 }),
    paper: fc.constantFrom(...PAPER_COLOURS),
  })
  .map(({ made, title, cover, strokes, paper }) => {
    const panels = modelOf(made).panels.map(({ name }) => name)
    const panel = (k: number): string => panels[k % panels.length] as string
    return parseDesign({
      ...made,
      title,
      card: { ...made.card, cover },
      papers: { page: paper, ...(made.mechanisms[0] ? { [made.mechanisms[0].id]: 'rust' } : {}) },
      art: strokes.map((one) => ({
        ...one,
        on: panel(one.on),
        also: one.also.map(panel),
        line: one.line || one.fill === null,
      })),
    })
  })
