/** One pupil's worksheet: guess, cut, measure, compare. */
import * as says from '../../../content/words/class/pages.ts'
import { large } from '../../../content/words/grammar.ts'
import { nameOf, plainText } from '../../paper/index.ts'
import type { SheetPage } from '../../sheet/index.ts'
import { paragraph } from '../../sheet/marks/setting.ts'
import type { Class, Sheet } from '../class.ts'
import { paperIn } from '../class.ts'
import type { Measured } from '../spread.ts'
import { POINT, sizeName, sizeSays } from '../spread.ts'
import { filled } from '../words.ts'
import type { Figure } from './card.ts'
import { classChart } from './figures.ts'
import type { Cell, Pictured } from './frame.ts'
import { bold, emptyLines, LOOKS, pagesOf, piled, said, sideBySide, toFill } from './frame.ts'
import { chartPicture } from './picture.ts'

const angle = (degrees: number): string => `${degrees}°`

/** What a lesson's texts may name. */
export function valuesOf({ measured }: Pick<Class, 'measured'>): Readonly<Record<string, string>> {
  return {
    opening: angle(measured?.opening ?? 90),
    size: measured ? sizeName(measured) : says.size,
    part: measured && measured.id !== POINT ? nameOf(measured.id) : says.card,
    error: '1',
  }
}

/** What stands at the axis of the size. */
export const axisOf = (measured: Measured): string =>
  (measured.unit === 'mm' ? says.inMm : says.inDegrees)(sizeName(measured))

/** What is to be measured, in a sentence or two. */
export function readingSays({ order, measured }: Class): string {
  return filled(order.words.reading[measured?.what ?? 'rise'], valuesOf({ measured }))
}

export function worksheetPages(of: Class, sheet: Sheet, figure: Figure): readonly SheetPage[] {
  const { order, measured, differs, sheets } = of
  const { words, lesson, choice } = order
  const look = choice.large ? LOOKS.large : LOOKS.usual
  const w = words.worksheet
  const label = words.labels
  const values = valuesOf(of)
  const other = sheets.find(({ nth }) => nth === (sheet.nth < sheets.length / 2 ? sheets.length - 1 : 0))
  const fill = (text: string | undefined, width: number, after: string, long = 30): Pictured =>
    toFill(filled(text ?? '', values), look.body, width, choice.large ? long * 1.3 : long, after)
  const mine: Cell = {
    label: label.yours ?? '',
    whole: true,
    rows: (width) => {
      const wide = Math.min(62, width * 0.4)
      const text = width - wide - 6
      const lines = [
        measured && sheet.size !== null
          ? paragraph(
              [{ text: `${large(sizeName(measured))}:` }, bold(` ${sizeSays(measured, sheet.size)}`)],
              look.body,
              text,
            )
          : said(filled(w.alike ?? '', { code: sheet.code }), look.body, text),
        said(readingSays(of), look.body, text),
      ]
      return [sideBySide(piled(lines, look.row), figure(wide), text + 6)]
    },
  }
  const guess: Cell = {
    label: words.parts.guess,
    whole: true,
    rows: (width) => [
      ...(differs && other && other.size !== null && measured && sheet.nth !== other.nth
        ? [
            said(
              filled(w.guessHelp ?? '', {
                other: sizeSays(measured, other.size),
                reads: `${Math.round(other.reads)}\u00a0mm`,
              }),
              look.body,
              width,
            ),
          ]
        : []),
      fill(w.guess, width, 'mm'),
      fill(w.because, width, '', width),
    ],
  }
  const make: Cell = {
    label: words.parts.make,
    whole: true,
    rows: (width) => [
      said(filled(w.cut ?? '', {}), look.body, width),
      ...(measured && sheet.size !== null
        ? [
            fill(
              filled(w.measured ?? '', { size: sizeName(measured) }),
              width,
              measured.unit === 'mm' ? 'mm' : '°',
            ),
          ]
        : []),
    ],
  }
  const read: Cell = {
    label: words.parts.measure,
    whole: true,
    rows: (width) => [fill(w.read, width, 'mm'), fill(w.again, width, 'mm'), fill(w.off, width, 'mm')],
  }
  const compare: Cell = {
    label: words.parts.say,
    whole: true,
    rows: (width) => {
      const chart =
        measured && differs
          ? chartPicture(
              classChart(
                { width, height: chartHeight(of, width) },
                {
                  ...{ measured, copies: sheets, unit: 'mm', text: look.small.size },
                  across: axisOf(measured),
                  up: w.axis ?? '',
                },
              ),
              width,
            )
          : null
      return [
        ...(chart ? [said(filled(w.compare ?? '', {}), look.body, width), chart] : []),
        ...lesson.worksheet.map((one) => said(filled(one, values), look.body, width)),
        ...emptyLines(choice.large ? 1 : 2, look.body, width),
      ]
    },
  }
  return pagesOf(measured ? [mine, guess, make, read, compare] : [mine, make, compare], {
    ...{ paper: paperIn(of), look },
    head: (width) => headWith(`${label.worksheet} ${sheet.code}`, of, width),
    again: (width) => paragraph([bold(`${label.worksheet} ${sheet.code}`)], look.label, width),
    foot: `${plainText(order.design.title)} · ${label.worksheet} ${sheet.code}`,
    says: `${label.worksheet} ${sheet.code}`,
  })
}

/** As high as leaves the rest of the worksheet room on its page, where that is high enough; mm. */
const chartHeight = ({ order }: Class, width: number): number =>
  order.choice.large ? 0.6 * width : Math.max(45, Math.min(0.47 * width, paperIn({ order }).height - 228))

/** A title and a line for the name. */
export function headWith(title: string, { order }: Class, width: number): Pictured {
  const look = order.choice.large ? LOOKS.large : LOOKS.usual
  return piled(
    [
      paragraph([bold(title)], look.title, width),
      toFill(order.words.labels.name ?? '', look.body, width, width * 0.6, '', 'name'),
    ],
    look.row * 1.6,
  )
}
