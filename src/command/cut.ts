import { extname } from 'node:path'
import * as says from '../../content/words/command/cut.ts'
import { notFile, notOneOf } from '../../content/words/command/options.ts'
import type { CutOptions, SheetToCut, Stock } from '../cutter/index.ts'
import { cutSvg, sheetDxf, sheetsToCut, TooLargeToCutError, USUAL, USUAL_MARGIN } from '../cutter/index.ts'
import { nameOf, visibleText } from '../paper/index.ts'
import { paperNamed, papers } from '../sheet/index.ts'
import type { Command, Options } from './command.ts'
import { Refusal } from './refusal.ts'
import { sizeIn } from './size-in.ts'
import { withAskedTabs } from './tabs.ts'
import { writeOut } from './write-out.ts'

/** The pieces side by side, for a cutting machine. */
export const cut: Command = {
  name: 'cut',
  usage: says.usage,
  help: says.help(papers.map(({ name }) => name)),
  options: {
    paper: { type: 'string' },
    out: { type: 'string' },
    copies: { type: 'string' },
    gap: { type: 'string' },
    margin: { type: 'string' },
    grain: { type: 'string' },
    bridges: { type: 'string' },
    perforate: { type: 'string' },
    glue: { type: 'boolean' },
    tabs: { type: 'string' },
  },
  run(read, options, place) {
    const design = withAskedTabs(read, options)
    const out = outOf(options.out)
    const chosen: CutOptions = {
      stock: stockOf(options),
      copies: numberOf(options, 'copies', USUAL.copies, 1, 500, true),
      gap: numberOf(options, 'gap', USUAL.gap, 0, 20),
      keepsGrain: grainOf(options.grain),
      bridge: numberOf(options, 'bridges', USUAL.bridge, 0, 5),
      perforate: perforationOf(options.perforate),
      glue: options.glue === true,
    }
    const sheets = found(() => sheetsToCut(design, chosen))
    sheets.forEach((sheet, k) => {
      const ending = extname(out)
      const file = k === 0 ? out : `${out.slice(0, -ending.length)}-${k + 1}${ending}`
      const text = ending.toLowerCase() === '.dxf' ? sheetDxf(sheet) : cutSvg(sheet)
      writeOut(file, place(file), text)
      console.log(saidOf(visibleText(file), sheet))
    })
    return 0
  },
}

function found(make: () => readonly SheetToCut[]): readonly SheetToCut[] {
  try {
    return make()
  } catch (error) {
    if (error instanceof TooLargeToCutError) throw new Refusal(error.message)
    if (error instanceof RangeError) throw new Refusal(`--copies: ${error.message}`)
    throw error
  }
}

function saidOf(file: string, { paper, count, full, width, height, acrossGrain }: SheetToCut): string {
  const across = acrossGrain.map((id) => (id === 'card' ? says.card : nameOf(id.split('/')[0] ?? id)))
  const size = [width.toFixed(0), height.toFixed(0)] as const
  return says.sheet(file, count, paper, ...size, Math.round(100 * full), across)
}

const ENDINGS: readonly string[] = ['.dxf', '.svg']

function outOf(text: string | boolean | undefined): string {
  if (typeof text === 'string' && ENDINGS.includes(extname(text).toLowerCase())) return text
  throw new Refusal(notFile('out', ENDINGS, text))
}

function numberOf(
  options: Options,
  name: string,
  usual: number,
  min: number,
  max: number,
  whole = false,
): number {
  const text = options[name]
  if (text === undefined) return usual
  const value = typeof text === 'string' && /^\d+(\.\d+)?$/.test(text) ? Number(text) : Number.NaN
  if (value >= min && value <= max && (!whole || Number.isInteger(value))) return value
  throw new Refusal((whole ? says.notWholeIn : says.notLengthIn)(name, min, max, text))
}

/** The least and the most that is cut from, mm. */
const STOCK = { least: 50, most: 3000 } as const

function stockOf(options: Options): Stock {
  const margin = numberOf(options, 'margin', USUAL_MARGIN, 0, 50)
  const { paper } = options
  const text = typeof paper === 'string' ? paper.toLowerCase() : ''
  const known = paperNamed(text)
  if (known) return { width: known.width, height: known.height, margin }
  const [, rolled] = /^roll:(\d+(?:\.\d+)?)$/.exec(text) ?? []
  const [wide, high] = sizeIn(text) ?? [Number.NaN, Number.NaN]
  const width = rolled === undefined ? wide : Number(rolled)
  const height = rolled === undefined ? high : Number.POSITIVE_INFINITY
  const isIn = (n: number): boolean => n >= STOCK.least && n <= STOCK.most
  if (isIn(width) && (rolled !== undefined || isIn(height))) return { width, height, margin }
  const names = papers.map(({ name }) => name)
  throw new Refusal(says.notPaper(names, STOCK.least, STOCK.most, paper))
}

function grainOf(text: string | boolean | undefined): boolean {
  if (text === undefined || text === 'kept') return true
  if (text === 'free') return false
  throw new Refusal(notOneOf('grain', ['kept', 'free'], text))
}

/** Of a perforation, the least and the most that is cut or left in one go, mm. */
const DASH = { least: 0.5, most: 20 } as const

function perforationOf(text: string | boolean | undefined): CutOptions['perforate'] {
  if (text === undefined) return null
  const [, cut, gap] = (typeof text === 'string' && /^(\d+(?:\.\d+)?),(\d+(?:\.\d+)?)$/.exec(text)) || []
  const isIn = (n: number): boolean => n >= DASH.least && n <= DASH.most
  if (isIn(Number(cut)) && isIn(Number(gap))) return { cut: Number(cut), gap: Number(gap) }
  throw new Refusal(says.notPerforation(DASH.least, DASH.most, text))
}
