import type { Role } from '../drawing/marks.ts'
import type { Design, LineKind } from '../paper/index.ts'
import { pieces } from '../paper/index.ts'
import { wordWidth } from './letters.ts'
import { seen } from './piece-marks.ts'
import { RULER_WIDTH, rulers } from './rulers.ts'
import type { Block, Run, SheetMark, Type } from './setting.ts'
import { hung, paragraph, stack } from './setting.ts'
import { CARE, cardSizes, faceSentence, legend, PRINT, type SheetFace, sizesOf, stepsFor } from './words.ts'

/** A part of the sheet's words. */
export interface Section {
  readonly id: 'head' | 'check' | 'legend' | 'steps' | 'care' | 'sizes'
  /** Where it would like to stand. */
  readonly home: 'head' | 'column' | 'strip'
  /** The section in a column of this width, or null if it cannot be that narrow. */
  block(width: number): Block | null
  /** The same in rows that may be parted by the end of a page. */
  rows(width: number): readonly Block[]
}

const BODY: Type = { size: 3.3, leading: 4.4 }
const SMALL: Type = { size: 2.9, leading: 3.8 }
const LABEL: Type = { size: 3.6, leading: 4.6 }
const ROW_GAP = 1.9
const LABEL_GAP = 2.4

const label = (text: string, width: number): Block =>
  paragraph([{ text, bold: true, role: 'dimension' }], LABEL, width)

/** The largest type in which a title takes at most two lines. */
function titleBlock(title: string, width: number): Block {
  for (const size of [8, 6.5, 5.2]) {
    const block = paragraph([{ text: title, bold: true }], { size, leading: size * 1.15 }, width)
    const lines = block.height / (size * 1.15)
    const wordTooWide = title.split(' ').some((word) => wordWidth(word, size, true) > width)
    if (lines <= 2 && !wordTooWide) return block
  }
  return paragraph([{ text: title, bold: true }], { size: 4.4, leading: 5.2 }, width)
}

/** Title and side. */
export const header = (design: Design, face: SheetFace, width: number): Block =>
  stack([titleBlock(design.title, width), paragraph([{ text: faceSentence[face] }], BODY, width)], 2.6)

function section(
  id: Section['id'],
  home: Section['home'],
  name: string,
  body: (width: number) => readonly Block[],
  least = 0,
): Section {
  const rows = (width: number): readonly Block[] => body(width)
  return {
    id,
    home,
    block: (width) =>
      width < least ? null : stack([label(name, width), stack(rows(width), ROW_GAP)], LABEL_GAP),
    rows: (width) => [label(name, width), ...rows(width)],
  }
}

const NUMBER_INDENT = 5.5

function steps(design: Design, face: SheetFace): Section {
  return section('steps', 'column', 'Make it', (width) =>
    stepsFor(design, face).map((text, k) => {
      const number = paragraph([{ text: String(k + 1), bold: true, role: 'dimension' }], BODY, NUMBER_INDENT)
      return hung(number.marks, NUMBER_INDENT, paragraph([{ text }], BODY, width - NUMBER_INDENT))
    }),
  )
}

const SAMPLE = 15

function sample(role: Role): SheetMark[] {
  const y = (BODY.size * 0.668) / 2
  return [
    {
      mark: 'path',
      runs: [
        [
          [0, y],
          [SAMPLE, y],
        ],
      ],
      closed: false,
      role,
      of: 'legend',
    },
  ]
}

function lines(design: Design, face: SheetFace): Section {
  const used = new Set<LineKind>(
    pieces(design).flatMap((piece) => piece.lines.map((line) => seen(line.kind, face))),
  )
  return section(
    'legend',
    'strip',
    'Lines',
    (width) =>
      legend
        .filter(({ kind }) => used.has(kind))
        .map(({ kind, name, does }) => {
          const runs: Run[] = [{ text: name, bold: true }, { text: ` ${does}` }]
          return hung(sample(kind), SAMPLE + 3, paragraph(runs, BODY, width - SAMPLE - 3))
        }),
    40,
  )
}

const check: Section = section(
  'check',
  'strip',
  'Check the size',
  (width) => [paragraph([{ text: PRINT }], BODY, width), rulers()],
  RULER_WIDTH,
)

const care: Section = section('care', 'column', 'Take care', (width) => [
  paragraph([{ text: CARE }], BODY, width),
])

const sizes = (design: Design): Section =>
  section('sizes', 'column', 'Sizes in mm', (width) =>
    [cardSizes(design), ...design.mechanisms.map(sizesOf)].map((runs) => paragraph(runs, SMALL, width)),
  )

/** The sections of a sheet, the more needed ones first. */
export const sectionsFor = (design: Design, face: SheetFace): readonly Section[] => [
  {
    id: 'head',
    home: 'head',
    block: (width) => header(design, face, width),
    rows: (width) => [header(design, face, width)],
  },
  check,
  lines(design, face),
  steps(design, face),
  care,
  sizes(design),
]
