import { extname } from 'node:path'
import type { CutOptions, SheetToCut, Stock } from '../cutter/index.ts'
import { cutSvg, sheetDxf, sheetsToCut, TooLargeToCutError, USUAL, USUAL_MARGIN } from '../cutter/index.ts'
import { nameOf, visibleText } from '../paper/index.ts'
import { paperNamed, papers } from '../sheet/index.ts'
import type { Command, Options } from './command.ts'
import { Refusal } from './refusal.ts'
import { sizeIn } from './size-in.ts'
import { TABS_HELP, withAskedTabs } from './tabs.ts'
import { given, writeOut } from './write-out.ts'

/** The pieces side by side, for a cutting machine. */
export const cut: Command = {
  name: 'cut',
  usage:
    '--paper PAPER --out FILE.dxf|FILE.svg [--copies N] [--gap MM] [--margin MM] [--grain kept|free] [--bridges MM] [--perforate CUT,GAP] [--glue] [--tabs flat|slit]',
  help: `Write the flat pieces for a cutting machine, side by side by their outlines, each line type a layer: creases first, then cuts within a piece, outlines last. PAPER: ${papers.map(({ name }) => name).join(', ')}, WIDTHxHEIGHT in mm, or roll:WIDTH. Main folds lie along the grain, which runs along the height, unless it is left free. Bridges are uncut stretches that hold a piece in its sheet. A second sheet is named with a 2. ${TABS_HELP}`,
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
      console.log(`${visibleText(file)}: ${saidOf(sheet)}`)
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

function saidOf({ paper, count, full, width, height, acrossGrain }: SheetToCut): string {
  const pieces = count === 1 ? '1 piece' : `${count} pieces`
  const across = acrossGrain.map((id) => (id === 'card' ? id : nameOf(id.split('/')[0] ?? id)))
  return `${pieces} on ${paper === null ? '' : `${paper}, `}${width.toFixed(0)} by ${height.toFixed(0)} mm, ${Math.round(100 * full)} % full.${across.length > 0 ? ` Across the grain: ${across.join(', ')}.` : ''}`
}

function outOf(text: string | boolean | undefined): string {
  if (typeof text === 'string' && ['.dxf', '.svg'].includes(extname(text).toLowerCase())) return text
  throw new Refusal(`--out must name a file that ends in .dxf or .svg${given(text)}.`)
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
  throw new Refusal(
    `--${name} must be a ${whole ? 'whole ' : ''}number from ${min} to ${max}${whole ? '' : ' mm'}, not ${text}.`,
  )
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
  throw new Refusal(
    `--paper must be one of ${papers.map(({ name }) => name).join(', ')}, WIDTHxHEIGHT or roll:WIDTH from ${STOCK.least} to ${STOCK.most} mm${given(paper)}.`,
  )
}

function grainOf(text: string | boolean | undefined): boolean {
  if (text === undefined || text === 'kept') return true
  if (text === 'free') return false
  throw new Refusal(`--grain must be one of kept, free, not ${text}.`)
}

function perforationOf(text: string | boolean | undefined): CutOptions['perforate'] {
  if (text === undefined) return null
  const [, cut, gap] = (typeof text === 'string' && /^(\d+(?:\.\d+)?),(\d+(?:\.\d+)?)$/.exec(text)) || []
  const isIn = (n: number): boolean => n >= 0.5 && n <= 20
  if (isIn(Number(cut)) && isIn(Number(gap))) return { cut: Number(cut), gap: Number(gap) }
  throw new Refusal(`--perforate must be CUT,GAP, each from 0.5 to 20 mm, not ${text}.`)
}
