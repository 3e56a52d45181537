/** The answer key: what the model reads on every sheet, the curve, and the questions from memory. */

import { large } from '../../../content/words/grammar.ts'
import { kindOf, plainText, settingOf } from '../../paper/index.ts'
import type { SheetPage } from '../../sheet/index.ts'
import type { SheetMark } from '../../sheet/marks/setting.ts'
import { moved, paragraph } from '../../sheet/marks/setting.ts'
import type { Class, Sheet } from '../class.ts'
import { paperIn } from '../class.ts'
import { POINT, sizeSays } from '../spread.ts'
import { filled } from '../words.ts'
import { classChart, curveOf } from './figures.ts'
import type { Cell, Pictured } from './frame.ts'
import { bold, LOOKS, pagesOf, piled, said } from './frame.ts'
import { chartPicture } from './picture.ts'
import { axisOf, valuesOf } from './worksheet.ts'

/** The wedge angle that follows from a slit, degrees; null where the card has none. */
export function wedgeOf({ measured }: Class, { design }: Sheet): number | null {
  const m = design.mechanisms.find(({ id }) => id === measured?.id)
  if (!m || measured?.field === 'wedge') return null
  return kindOf(m).derived.some(({ name }) => name === 'wedge') ? settingOf(m, 'wedge') : null
}

const reading = ({ reads }: Sheet): string => (Number.isFinite(reads) ? `${reads.toFixed(1)} mm` : '')

/** A table in as many columns as fit, each row of one sheet. */
function table(of: Class, width: number, least: number): Pictured {
  const { measured, sheets, order } = of
  const look = order.choice.large ? LOOKS.large : LOOKS.usual
  const words = order.words.answers
  const wedges = measured !== null && sheets.some((sheet) => wedgeOf(of, sheet) !== null)
  const head = [
    words.sheet ?? '',
    measured ? large(words.own ?? '') : '',
    ...(wedges ? [words.wedge ?? ''] : []),
    words.reads ?? '',
  ]
  const rows = sheets.map((sheet) => [
    sheet.code,
    measured && sheet.size !== null ? sizeSays(measured, sheet.size) : '',
    ...(wedges ? [`${wedgeOf(of, sheet)?.toFixed(1)}°`] : []),
    reading(sheet),
  ])
  const columns = Math.max(1, Math.floor(width / least))
  const each = Math.ceil(rows.length / columns)
  const wide = width / columns
  const share = wide / head.length
  const marks: SheetMark[] = []
  const step = look.small.leading * 1.12
  for (let c = 0; c < columns; c++) {
    const part = rows.slice(c * each, (c + 1) * each)
    if (part.length === 0) continue
    for (const [k, text] of head.entries())
      marks.push(
        ...paragraph([bold(text)], look.small, share * 1.4).marks.map((mark) =>
          moved(mark, c * wide + k * share, 0),
        ),
      )
    for (const [r, row] of part.entries())
      for (const [k, text] of row.entries())
        marks.push(
          ...paragraph([k === 0 ? bold(text) : { text }], look.small, share * 1.4).marks.map((mark) =>
            moved(mark, c * wide + k * share, (r + 1) * step),
          ),
        )
  }
  return { width, height: (Math.min(each, rows.length) + 1) * step, marks }
}

export function keyPages(of: Class): readonly SheetPage[] {
  const { measured, order, sheets, differs, design } = of
  const { words, chapter, choice } = order
  const look = choice.large ? LOOKS.large : LOOKS.usual
  const values = valuesOf(of)
  const cells: Cell[] = []
  if (measured)
    cells.push({
      label: words.labels.sizes ?? '',
      rows: (width) => [
        said(filled(words.answers.lead ?? '', values), look.body, width),
        differs
          ? table(of, width, choice.large ? 92 : 66)
          : said(filled(words.answers.alike ?? '', { reads: reading(sheets[0] as Sheet) }), look.body, width),
      ],
    })
  if (measured && differs)
    cells.push({
      label: words.labels.curve ?? '',
      whole: true,
      rows: (width) => [
        chartPicture(
          classChart(
            { width, height: Math.min(width * 0.5, 80) },
            {
              ...{ measured, copies: sheets, unit: 'mm', text: look.small.size },
              curve: curveOf(design, measured, sheets),
              readings: sheets.flatMap(({ size, reads, code }) =>
                size === null ? [] : [{ size, value: reads, code }],
              ),
              across: axisOf(measured),
              up: words.worksheet.axis ?? '',
            },
          ),
          width,
        ),
      ],
    })
  const kind =
    measured?.id === POINT
      ? 'gap'
      : design.mechanisms.find(({ id, on }) => id === measured?.id && on === 'gutter')?.kind
  const formula = kind === undefined ? undefined : words.formulas[kind]
  if (formula !== undefined)
    cells.push({ label: words.labels.formula ?? '', rows: (width) => [said(formula, look.body, width)] })
  cells.push({
    label: words.labels.recall ?? '',
    rows: (width) =>
      chapter.recall.map(({ asks, answer }, k) =>
        piled(
          [paragraph([bold(`${k + 1}. ${asks}`)], look.body, width), said(answer, look.body, width)],
          look.row * 0.5,
        ),
      ),
  })
  return pagesOf(cells, {
    ...{ paper: paperIn(of), look },
    head: (width) => paragraph([bold(words.labels.key ?? '')], look.title, width),
    foot: `${plainText(order.design.title)} · ${words.labels.key}`,
    says: words.labels.key ?? '',
  })
}
