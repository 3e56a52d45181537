/** How a template is printed, as a reader chooses and types it; how many sheets that takes. */
import type { Design } from '../../paper/index.ts'
import { withTabs } from '../../paper/index.ts'
import type { PaperName, SheetArt, SheetLines, SheetOptions } from '../../sheet/index.ts'
import {
  checkCopies,
  faultSays,
  layOut,
  ownPaper,
  paperUse,
  printedOn,
  TooLargeError,
  UnprintableError,
  useSays,
} from '../../sheet/index.ts'
import { typed } from '../state/format.ts'

export type PaperChoice = PaperName | 'own'

export type Lines = SheetLines

export type Art = SheetArt

export type Form = 'pdf' | 'svg'

export interface TemplateChoice {
  readonly paper: PaperChoice
  /** Of paper of one's own, as typed. */
  readonly width: string
  readonly height: string
  /** How long the 100 mm check line came out, as typed. */
  readonly measured: string
  /** As typed. */
  readonly copies: string
  /** Tabs as the card has them, or all of them pushed through slits. */
  readonly tabs: 'own' | 'slit'
  /** What is larger than the paper goes on several sheets. */
  readonly tiled: boolean
  readonly lines: Lines
  /** What is drawn on the card: in colour, as lines to colour in, or not at all. */
  readonly art: Art
  readonly form: Form
}

/** A number as a hand types it, mm where it has a unit; what is none is told as out of range. */
const numberIn = (text: string): number => typed(text, 'mm', 'mm') ?? Number.NaN

export function optionsOf(choice: TemplateChoice): SheetOptions {
  const { paper, width, height, lines, art, tiled } = choice
  return {
    paper: paper === 'own' ? ownPaper(numberIn(width), numberIn(height)) : paper,
    lines,
    art,
    tiled,
    measured: numberIn(choice.measured),
    copies: Number(choice.copies),
  }
}

/** What is typed of a choice. */
export type TypedName = 'width' | 'height' | 'measured' | 'copies'

/** A side of paper that can be printed on, mm. */
const ANY_SIDE = 200

/** Why no print has a number as it is typed, with the range; empty where one has it. */
export function refusalOf(name: TypedName, text: string): string {
  const number = numberIn(text)
  try {
    if (name === 'copies') checkCopies(Number(text))
    else if (name === 'measured') printedOn({ paper: 'a4', measured: number })
    else if (name === 'width') ownPaper(number, ANY_SIDE)
    else ownPaper(ANY_SIDE, number)
    return ''
  } catch (error) {
    if (error instanceof UnprintableError) return error.message
    throw error
  }
}

/** The design as it is printed. */
export const printedDesign = (planned: Design, { tabs }: TemplateChoice): Design =>
  tabs === 'slit' ? withTabs(planned, 'slit') : planned

/** What is said beside a choice. */
export interface Said {
  /** How many sheets it takes and how full they are; empty where it cannot be printed, and why is told on saving. */
  readonly count: string
  /** What does not work of the card as it would be printed; empty: nothing. Paper that jams is paper wasted. */
  readonly faults: string
}

export function saidOf(planned: Design, choice: TemplateChoice): Said {
  const design = printedDesign(planned, choice)
  const faults = faultSays(design)
  try {
    // The sheet says what fails too, and that takes room.
    const options = { ...optionsOf(choice), fault: faults }
    return { count: useSays(paperUse(design, layOut(design, options), options)), faults }
  } catch (error) {
    if (error instanceof TooLargeError || error instanceof UnprintableError) return { count: '', faults }
    throw error
  }
}
