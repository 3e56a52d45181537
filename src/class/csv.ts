import * as says from '../../content/words/class/readings.ts'

/**
 * Tables as text: RFC 4180, read as spreadsheets write it too: with semicolons or tabs between, and a byte order mark
 * in front. What cannot be read is named by line and column, both from 1.
 */
export interface TableCell {
  readonly text: string
  /** Where it begins. */
  readonly line: number
  readonly column: number
}

export type Table =
  | { readonly ok: true; readonly rows: readonly (readonly TableCell[])[]; readonly separator: Separator }
  | { readonly ok: false; readonly sentence: string }

export const SEPARATORS = [';', '\t', ','] as const

export type Separator = (typeof SEPARATORS)[number]

/** The separator that the first line has most of outside quotes; of two as many the first of the list. */
function separatorOf(text: string): Separator {
  const counts = new Map<string, number>()
  let quoted = false
  for (const letter of text) {
    if (letter === '"') quoted = !quoted
    if (!quoted && (letter === '\n' || letter === '\r')) {
      if (counts.size > 0) break
      continue
    }
    if (!quoted) counts.set(letter, (counts.get(letter) ?? 0) + 1)
  }
  return SEPARATORS.reduce(
    (best, one) => ((counts.get(one) ?? 0) > (counts.get(best) ?? 0) ? one : best),
    SEPARATORS[0],
  )
}

const ordinary = (text: string): boolean => text === '\n' || text === '\r'

/** A text as rows of cells. Empty lines are left out. */
export function readTable(source: string): Table {
  const text = source.replace(/^\u{feff}/u, '')
  const separator = separatorOf(text)
  const rows: TableCell[][] = []
  let row: TableCell[] = []
  let [at, line] = [0, 1]
  const end = (): void => {
    if (row.length > 1 || row[0]?.text.trim()) rows.push(row)
    row = []
  }
  while (at < text.length) {
    const [from, column] = [line, row.length + 1]
    let cell = ''
    if (text[at] === '"') {
      at += 1
      for (;;) {
        if (at >= text.length) return { ok: false, sentence: says.at(from, column, says.openQuote) }
        if (text[at] === '"' && text[at + 1] === '"') {
          cell += '"'
          at += 2
        } else if (text[at] === '"') {
          at += 1
          break
        } else {
          if (text[at] === '\n') line += 1
          cell += text[at]
          at += 1
        }
      }
      const next = text[at]
      if (next !== undefined && next !== separator && !ordinary(next))
        return { ok: false, sentence: says.at(line, column, says.afterQuote(next)) }
    } else
      while (at < text.length && text[at] !== separator && !ordinary(text[at] ?? '')) {
        cell += text[at]
        at += 1
      }
    row.push({ text: cell, line: from, column })
    if (at >= text.length) break
    if (text[at] === separator) {
      at += 1
      if (at === text.length) row.push({ text: '', line, column: row.length + 1 })
      continue
    }
    at += text[at] === '\r' && text[at + 1] === '\n' ? 2 : 1
    line += 1
    end()
  }
  end()
  return { ok: true, rows, separator }
}

const quoted = (text: string): string => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text)

/** Rows as text, each line ended by CR LF. */
export const tableText = (rows: readonly (readonly string[])[]): string =>
  rows.map((row) => `${row.map(quoted).join(',')}\r\n`).join('')
