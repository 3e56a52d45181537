import * as says from '../../../content/words/sheet/sections.ts'
import * as sides from '../../../content/words/sheet/sides.ts'
import { artOutlines } from '../../drawing/art/outlines.ts'
import { strokes } from '../../drawing/pen/hatch.ts'
import { mainFold } from '../../making/grain.ts'
import type { Design, Tight } from '../../paper/index.ts'
import { jointsOf, pieces } from '../../paper/index.ts'
import { once } from '../../paper/plane/once.ts'
import { triangle } from '../marks/care-marks.ts'
import { faultBlocks } from '../marks/fault-blocks.ts'
import { grainArrow, SAMPLE_ARROW } from '../marks/grain-marks.ts'
import type { SheetLines, Sign, Trim } from '../marks/instructions.ts'
import { faceOf, legend, printedAs, printSays, stepsFor } from '../marks/instructions.ts'
import { jointSays, letteredJoints, placesOn } from '../marks/joint-places.ts'
import { CAPITAL, TAIL, wordWidth } from '../marks/letters.ts'
import { glueHatch, jointSigns, seen } from '../marks/piece-marks.ts'
import { RULER_WIDTH, rulers } from '../marks/rulers.ts'
import type { Block, Run, SheetMark, Type } from '../marks/setting.ts'
import { hung, paragraph, stack } from '../marks/setting.ts'
import { cardSizes, sizesOf } from '../marks/sizes.ts'

/** A part of the sheet's words. */
export interface Section {
  readonly id: 'head' | 'check' | 'legend' | 'steps' | 'care' | 'sizes' | 'joints'
  /** In a column of this width; null if it cannot be that narrow. */
  block(width: number): Block | null
  /** The same in rows that the end of a page may part. */
  rows(width: number): readonly Block[]
  /** The label where its rows go on under another section. */
  again?(width: number): Block
}

/** Type for a comfortable page, and for those that would otherwise spill on to a further one. */
export const fittings: Readonly<Record<'roomy' | 'close' | 'tight' | 'least', Fitting>> = {
  roomy: { body: { size: 3.3, leading: 4.4 }, small: { size: 2.9, leading: 3.8 }, row: 1.8, smallRow: 1.2 },
  close: { body: { size: 3.05, leading: 4 }, small: { size: 2.85, leading: 3.5 }, row: 1.4, smallRow: 0.8 },
  tight: { body: { size: 2.85, leading: 3.5 }, small: { size: 2.85, leading: 3.3 }, row: 1, smallRow: 0.6 },
  least: { body: { size: 2.8, leading: 3.5 }, small: { size: 2.6, leading: 3.2 }, row: 1, smallRow: 0.6 },
}

export interface Fitting {
  readonly body: Type
  readonly small: Type
  /** Between rows. */
  readonly row: number
  readonly smallRow: number
}

const LABEL: Type = { size: 3.6, leading: 4.6 }

const LABEL_GAP = 2.2

const label = (text: string, width: number): Block =>
  paragraph([{ text, bold: true, role: 'dimension' }], LABEL, width)

/** The largest type in which a title takes at most two lines. */
function titleBlock(title: string, width: number): Block {
  for (const size of [8, 6.5, 5.2]) {
    const block = paragraph([{ text: title, bold: true }], { size, leading: size * 1.15 }, width)
    const wordTooWide = title.split(' ').some((word) => wordWidth(word, size, true) > width)
    if (block.height <= 2.1 * size && !wordTooWide) return block
  }
  return paragraph([{ text: title, bold: true }], { size: 4.4, leading: 5.2 }, width)
}

/** A line for the maker to write on. */
function nameLine(width: number, type: Type = fittings.roomy.body): Block {
  const { size } = type
  const words = paragraph([{ text: says.madeBy }], type, width)
  const from = words.width + 2
  const run = [
    [from, CAPITAL * size + 0.5],
    [Math.min(width, from + 45), CAPITAL * size + 0.5],
  ] as const
  const line = { mark: 'path', runs: [run], closed: false, role: 'guide', of: 'maker' } as const
  return { width: Math.min(width, from + 45), height: words.height + 1, marks: [...words.marks, line] }
}

/** Title, what fails, side and maker. */
export const header = (
  design: Design,
  lines: SheetLines,
  width: number,
  type: Type = fittings.roomy.body,
  fault?: string,
): Block =>
  stack(
    [
      titleBlock(design.title, width),
      ...faultBlocks(fault, type, width),
      paragraph([{ text: sides.card[lines] }], type, width),
      nameLine(width, type),
    ],
    2.6,
  )

/** Large print: 16 points. */
export const LARGE: Type = { size: 5.6, leading: 8 }

/** The head in large print, where the sheet says little else. */
export const largeHead = (design: Design, lines: SheetLines): Section =>
  wholeBlock('head', (width) => header(design, lines, width, LARGE))

/** Above pieces that are glued on, or above the cover; `hasCards`: further cards lie among them. */
export function pieceHeader(
  design: Design,
  lines: SheetLines,
  width: number,
  { isCover = false, hasCards = false }: { readonly isCover?: boolean; readonly hasCards?: boolean } = {},
): Block {
  const pieces = hasCards ? sides.cardsToo : sides.pieces
  const text = isCover ? sides.cover[lines === 'ticks' ? 'ticks' : 'front'] : pieces[lines]
  return stack(
    [
      paragraph([{ text: design.title, bold: true }], { size: 5.2, leading: 6 }, width),
      paragraph([{ text }], fittings.roomy.body, width),
      nameLine(width),
    ],
    2.2,
  )
}

/** The same answer for the same width: sheets are tried in many arrangements of few widths. */
function kept<T>(of: (width: number) => T): (width: number) => T {
  const known = new Map<number, T>()
  return (width) => {
    const before = known.get(width)
    if (before !== undefined) return before
    const made = of(width)
    known.set(width, made)
    return made
  }
}

/** How lists are called where they go on elsewhere. */
const MORE: Partial<Record<Section['id'], string>> = {
  steps: says.moreSteps,
  sizes: says.moreSizes,
  joints: says.moreJoints,
}

/** A label over rows. */
function section(
  id: Section['id'],
  name: string,
  rows: (width: number) => readonly Block[],
  gap: number,
  least = 0,
): Section {
  return {
    id,
    block: kept((width) =>
      width < least ? null : stack([label(name, width), stack(rows(width), gap)], LABEL_GAP),
    ),
    rows: (width) => [label(name, width), ...rows(width)],
    again: (width) => label(MORE[id] ?? name, width),
  }
}

const NUMBER_INDENT = 5.2

/** What the words of the steps are part of. */
export const STEPS = 'steps'

type JointSigns = ReturnType<typeof jointSigns>

const signsOf = (asked: SheetLines) =>
  once(
    (design: Design): JointSigns =>
      new Set(
        pieces(design).flatMap((piece) => {
          const lines = printedAs(piece.id, asked)
          return [...jointSigns(piece, placesOn(design, piece.id, faceOf(lines)), lines)]
        }),
      ),
  )

/** What says on the pieces of a design, printed like this, where something is stuck: the same in every type. */
const stuckSigns: Readonly<Record<SheetLines, (design: Design) => JointSigns>> = {
  front: signsOf('front'),
  ticks: signsOf('ticks'),
  back: signsOf('back'),
}

function steps(design: Design, lines: SheetLines, { body, row }: Fitting, trim: Trim): Section {
  const said = stepsFor(design, lines, trim, stuckSigns[lines](design).has('corner'))
  const rows = (width: number): Block[] =>
    said.map((text, k) => {
      const number = paragraph([{ text: String(k + 1), bold: true, role: 'dimension' }], body, NUMBER_INDENT)
      return hung(number.marks, NUMBER_INDENT, paragraph([{ text }], body, width - NUMBER_INDENT, STEPS))
    })
  return section('steps', says.makeIt, rows, row)
}

/** Said until all pages are known: most often it is the next. */
const NEXT = 2

/** What may stand on another page than the card, and how that is told there. */
const ELSEWHERE = {
  steps: { head: says.makeIt, says: says.stepsOn },
  joints: { head: says.joints, says: says.jointsOn },
} as const

/** On which page these are, as a part of other words. */
export const elsewhere = (id: keyof typeof ELSEWHERE): Run => ({
  text: ELSEWHERE[id].says(NEXT).replaceAll(' ', '\u00a0'),
  bold: true,
})

/** The same as words of their own. */
export const elsewhereBlock =
  (id: keyof typeof ELSEWHERE) =>
  (width: number): Block =>
    paragraph([{ ...elsewhere(id), role: 'dimension' }], LABEL, width, `${id}-page`)

/** The pages of a sheet, once it is known on which of them is what the card's page has no room for. */
export function withPagesTold<P extends { readonly marks: readonly SheetMark[] }>(
  pages: readonly P[],
): readonly P[] {
  const told = Object.values(ELSEWHERE).flatMap(({ head, says }) => {
    const found = pages.findIndex(({ marks }) =>
      marks.some((mark) => mark.mark === 'word' && mark.text === head),
    )
    return found < 0 ? [] : [[says(NEXT), says(found + 1)] as const]
  })
  const right = (mark: SheetMark): SheetMark =>
    mark.mark === 'word' && mark.bold
      ? { ...mark, text: told.reduce((text, [next, there]) => text.replace(next, there), mark.text) }
      : mark
  return pages.map((page) => ({ ...page, marks: page.marks.map(right) }))
}

const SAMPLE = 15

const SAMPLES_APART = 1.1

/** A stretch of a line as it stands on the sheet. */
function sample(sign: Sign, lines: SheetLines, { body: { size }, row }: Fitting): SheetMark[] {
  const y = (CAPITAL * size) / 2
  const line = [
    [0, y],
    [SAMPLE, y],
  ] as const
  if (sign === 'tape')
    return [
      { mark: 'path', runs: [line], closed: false, role: 'place', of: 'legend' },
      { ...glueHatch([], 'legend'), runs: strokes(line) },
    ]
  // A good copy has no arrows.
  if (sign === 'grain')
    return lines === 'ticks' ? [] : [grainArrow([SAMPLE / 2, y], 0, SAMPLE_ARROW, 'legend')]
  if (sign === 'care') return [triangle([SAMPLE / 2, y], [1, 0], 'legend')]
  if (sign !== 'glue' && sign !== 'behind')
    return [
      {
        mark: 'path',
        runs: [line],
        closed: false,
        role: sign,
        of: 'legend',
      },
    ]
  // Two of them in rows of one line each stay apart.
  const half = Math.min(1.3, ((CAPITAL + TAIL) * size + row - SAMPLES_APART) / 2)
  const area = [
    [0, y - half],
    [SAMPLE, y - half],
    [SAMPLE, y + half],
    [0, y + half],
  ] as const
  return [
    { mark: 'path', runs: [area], closed: true, role: sign === 'glue' ? 'place' : sign, of: 'legend' },
    ...(sign === 'glue' ? [glueHatch([area], 'legend')] : []),
  ]
}

/** What is marked on the pieces of a design, printed like this. */
function signsOn(design: Design, lines: SheetLines, care: readonly Tight[]): ReadonlySet<Sign> {
  const flat = pieces(design)
  const signs = new Set<Sign>(
    flat.flatMap((piece) =>
      piece.lines
        .map(({ kind }) => seen(kind, faceOf(printedAs(piece.id, lines))))
        .filter((kind) => kind !== 'glue'),
    ),
  )
  if (lines === 'ticks') signs.delete('crease')
  if (care.length > 0) signs.add('care')
  if (flat.some((piece) => mainFold(piece) !== null)) signs.add('grain')
  if (
    flat.some(
      ({ id }) =>
        artOutlines(design, id, faceOf(printedAs(id, lines)) === 'inside' ? 'front' : 'back').length > 0,
    )
  )
    signs.add('picture')
  for (const sign of stuckSigns[lines](design)) if (sign !== 'corner') signs.add(sign)
  return signs
}

function signs(
  design: Design,
  lines: SheetLines,
  fitting: Fitting,
  trim: Trim,
  care: readonly Tight[],
): Section {
  const { body, row } = fitting
  const used = signsOn(design, lines, care)
  const hasTape = jointsOf(design).some(({ isTaped }) => isTaped)
  const rows = (width: number): Block[] =>
    legend({ lines, trim, care, hasTape })
      .filter(({ sign }) => used.has(sign))
      .map(({ sign, name, does }): Block => {
        const runs: Run[] = [{ text: name, bold: true }, { text: ` ${does}` }]
        return hung(sample(sign, lines, fitting), SAMPLE + 3, paragraph(runs, body, width - SAMPLE - 3))
      })
  return section('legend', says.lines, rows, row, 40)
}

const LETTER_INDENT = 9

/** Which piece goes where: every joint by its letter. Null if nothing is stuck. */
function joints(design: Design, lines: SheetLines, { small, smallRow }: Fitting): Section | null {
  const byWords = new Map<string, string[]>()
  // The card's own face of a good copy has no letters of its rim: the cover's have no twins.
  const twins = letteredJoints(design).filter(({ host }) => lines !== 'ticks' || host.piece !== 'cover')
  for (const joint of twins) {
    const letters = byWords.get(jointSays(joint)) ?? []
    byWords.set(jointSays(joint), [...new Set([...letters, joint.letter])])
  }
  if (byWords.size === 0) return null
  const named = [...byWords].map(([text, letters]) => ({
    text,
    letters: paragraph([{ text: letters.join(' '), bold: true }], small, Number.POSITIVE_INFINITY),
  }))
  const indent = Math.max(LETTER_INDENT, ...named.map(({ letters }) => letters.width + 1))
  const rows = (width: number): Block[] =>
    named.map(({ text, letters }) =>
      hung(letters.marks, indent, paragraph([{ text }], small, width - indent)),
    )
  return section('joints', says.joints, rows, smallRow)
}

const check = ({ body }: Fitting, { stretch }: Trim): Section =>
  section(
    'check',
    says.checkSize,
    (width) => [paragraph([{ text: printSays(stretch) }], body, width), rulers()],
    2.6,
    RULER_WIDTH,
  )

const safety = ({ body, row }: Fitting): Section =>
  section('care', says.takeCare, (width) => [paragraph([{ text: says.care }], body, width)], row)

function sizes(design: Design, lines: SheetLines, { small, smallRow }: Fitting): Section {
  const rows = (width: number): Block[] =>
    [cardSizes(design), ...design.mechanisms.map((m) => sizesOf(design, m))]
      .filter((runs) => runs.length > 0)
      .map((runs) => paragraph(runs, small, width))
  return section('sizes', lines === 'back' ? says.sizesFromInside : says.sizes, rows, smallRow)
}

const wholeBlock = (id: Section['id'], block: (width: number) => Block): Section => ({
  id,
  block,
  rows: (width) => [block(width)],
})

/** The design's name over a page of words. */
export const nameSection = (design: Design): Section =>
  wholeBlock('head', (width) =>
    paragraph([{ text: design.title, bold: true }], { size: 5.2, leading: 6 }, width),
  )

/** The head of a page with pieces. */
export const pieceHead = (block: (width: number) => Block): Section => wholeBlock('head', block)

/** The check lines under their name alone, where another page says what they are for. */
export const rulersAlone: Section = section('check', says.checkSize, () => [rulers()], 0, RULER_WIDTH)

/** Their name alone, beside them. */
export const checkName = (width: number): Block => label(says.checkSize, width)

/** What the check lines are for, where they stand already. */
export const checkWords = ({ body }: Fitting, stretch?: number): Section =>
  section('check', says.checkSize, (width) => [paragraph([{ text: printSays(stretch) }], body, width)], 2.6)

/** The sections of a sheet, those that must find room first first; `care`: the sizes that are marked on it. */
export const sectionsFor = (
  design: Design,
  lines: SheetLines,
  fitting: Fitting,
  trim: Trim,
  care: readonly Tight[],
): readonly Section[] =>
  [
    wholeBlock('head', (width) => header(design, lines, width, fittings.roomy.body, trim.fault)),
    check(fitting, trim),
    signs(design, lines, fitting, trim, care),
    steps(design, lines, fitting, trim),
    safety(fitting),
    joints(design, lines, fitting),
    sizes(design, lines, fitting),
  ].filter((one) => one !== null)

/**
 * The sections that found no room beside the card, for another page: of its head what is not said there.
 * @param isWhole whether the card has a page of its own, the first
 */
export const sectionsLeft = (
  ids: ReadonlySet<Section['id']>,
  design: Design,
  lines: SheetLines,
  fitting: Fitting,
  trim: Trim,
  care: readonly Tight[],
  isWhole: boolean,
): readonly Section[] =>
  sectionsFor(design, lines, fitting, trim, care)
    .filter(({ id }) => ids.has(id))
    .map((one) =>
      one.id === 'head'
        ? section(
            'head',
            says.card,
            (width) => [
              ...faultBlocks(trim.fault, fitting.body, width),
              paragraph(
                [{ text: `${(isWhole ? says.cardPage : sides.card)[lines]} ${sides.lowerEdge}` }],
                fitting.body,
                width,
              ),
            ],
            1.2,
          )
        : one,
    )
