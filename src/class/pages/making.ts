/** What a sheet in large print leaves out: what its lines ask for, how it is made, and which letter goes where. */
import { letters as lettersLead } from '../../../content/words/booklet/pages.ts'
import { kindsOfLine } from '../../../content/words/booklet/steps.ts'
import * as says from '../../../content/words/class/pages.ts'
import * as sections from '../../../content/words/sheet/sections.ts'
import { pencilFirst } from '../../../content/words/sheet/steps.ts'
import { orderOf, wordsOf } from '../../booklet/index.ts'
import type { Design } from '../../paper/index.ts'
import { pieces, plainText } from '../../paper/index.ts'
import type { SheetPage } from '../../sheet/index.ts'
import { careOf } from '../../sheet/marks/care-marks.ts'
import type { Trim } from '../../sheet/marks/instructions.ts'
import { trimStep } from '../../sheet/marks/instructions.ts'
import { jointSays, letteredJoints } from '../../sheet/marks/joint-places.ts'
import { onPage } from '../../sheet/marks/piece-marks.ts'
import type { Block } from '../../sheet/marks/setting.ts'
import { hung, paragraph, toldAs } from '../../sheet/marks/setting.ts'
import { printableOf } from '../../sheet/pages/bed.ts'
import { trimOf } from '../../sheet/pages/bed-page.ts'
import { boxOf } from '../../sheet/pages/fit.ts'
import { hasLettersBeside } from '../../sheet/pages/letters-beside.ts'
import { sectionsFor } from '../../sheet/pages/sections.ts'
import type { Class } from '../class.ts'
import { paperIn } from '../class.ts'
import { filled } from '../words.ts'
import type { Cell } from './frame.ts'
import { bold, LOOKS, pagesOf, piled, said } from './frame.ts'
import { careIn } from './sheets.ts'

/** Nothing is drawn on it that would have to be coloured. */
const bare = ({ art: _, ...design }: Design): Design => design

const look = LOOKS.large

/** What is to be trimmed off the sheet of a card that fills its paper. */
export function trimOn(design: Design, drawn: readonly SheetPage[]): Trim {
  for (const { placed, box } of drawn) {
    const place = placed.find(({ piece }) => piece === 'card')?.place
    const outline = pieces(design).find(({ id }) => id === 'card')?.outline
    if (!place || !outline) continue
    const { left, top, right, bottom } = boxOf(outline.map((point) => onPage(place, point)))
    const turn = { width: box[2], height: box[3] }
    return trimOf({ card: [left, top, right, bottom], printable: printableOf(turn), turn })
  }
  return {}
}

/** The key of the lines and signs that stand on these sheets. */
function keyCell(design: Design, of: Class, drawn: readonly SheetPage[]): Cell {
  const marked = new Set(drawn.flatMap(({ marks }) => marks.map((mark) => mark.of)))
  const care = careIn(of.design).filter((one) => marked.has(careOf(one)))
  const fitting = { body: look.body, small: look.small, row: look.row, smallRow: look.row }
  const legend = sectionsFor(design, 'front', fitting, {}, care).find(({ id }) => id === 'legend')
  // The grain is not marked on sheets of few words. The first row is the label.
  const isMarked = ({ marks }: Block): boolean => !marks.some(({ role }) => role === 'grain')
  return {
    label: sections.lines,
    whole: true,
    rows: (width) => (legend?.rows(width).slice(1) ?? []).filter(isMarked),
  }
}

/** Which piece goes where, by the letters. */
function jointsCell(design: Design): Cell {
  const byWords = new Map<string, Set<string>>()
  for (const joint of letteredJoints(design)) {
    const letters = byWords.get(jointSays(joint)) ?? new Set()
    byWords.set(jointSays(joint), letters.add(joint.letter))
  }
  return {
    label: sections.joints,
    rows: (width) =>
      [...byWords].map(([text, letters]) =>
        paragraph([bold([...letters].join(' ')), { text: ` ${text}` }], look.body, width),
      ),
  }
}

interface Step {
  readonly title: string
  readonly text: readonly string[]
  readonly letters?: string
  /** What no step before has said. */
  readonly caution?: string
}

function stepsOf(design: Design, drawn: readonly SheetPage[]): readonly Step[] {
  const trimming = trimStep(trimOn(design, drawn))
  const isBeside = hasLettersBeside(design, drawn)
  let cautions = ''
  return orderOf(design).map((work, k) => {
    const { title, text, letters, caution } = wordsOf(design, work)
    const isNew = caution !== undefined && !cautions.includes(caution)
    if (isNew) cautions += `${caution} `
    return {
      title,
      text: [
        ...(work.does === 'pieces' && isBeside ? [pencilFirst.inside] : []),
        // The key says it, with a picture of each. What is trimmed comes after the first sentence: how to print.
        ...text
          .filter((one) => one !== kindsOfLine)
          .flatMap((one, n) => (k === 0 && n === 0 && trimming !== null ? [one, trimming] : [one])),
      ],
      ...(letters === undefined ? {} : { letters }),
      ...(isNew ? { caution } : {}),
    }
  })
}

const stepCell = ({ title, text, letters, caution }: Step, k: number): Cell => ({
  label: '',
  whole: true,
  rows: (width) => [
    hung(
      paragraph([{ text: `${k + 1}`, bold: true, role: 'dimension' }], look.body, 10).marks,
      11,
      piled(
        [
          toldAs(paragraph([bold(title)], look.body, width - 11), 'H2'),
          ...text.map((one) => said(one, look.body, width - 11)),
          ...(letters === undefined
            ? []
            : [paragraph([bold(lettersLead), { text: ` ${letters}` }], look.body, width - 11)]),
          ...(caution === undefined ? [] : [said(caution, look.body, width - 11)]),
        ],
        look.row * 0.6,
      ),
    ),
  ],
})

/**
 * How it is made, in large print, step by step.
 * @param drawn the sheets of the class
 */
export function makingPages(of: Class, drawn: readonly SheetPage[]): readonly SheetPage[] {
  const { order } = of
  const design = order.choice.picture ? of.design : bare(of.design)
  return pagesOf([keyCell(design, of, drawn), ...stepsOf(design, drawn).map(stepCell), jointsCell(design)], {
    ...{ paper: paperIn(of), look },
    head: (width) => paragraph([bold(plainText(order.design.title))], look.title, width),
    foot: `${plainText(order.design.title)}: ${filled(order.words.labels.steps ?? '', {})}`,
    says: says.making,
  })
}
