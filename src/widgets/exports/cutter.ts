/** Loaded when pieces are asked for as a file for a cutting machine. */
import * as says from '../../../content/words/exports/cutter.ts'
import type { CutOptions } from '../../cutter/index.ts'
import { cutSvg, sheetDxf, sheetsToCut, USUAL, USUAL_MARGIN } from '../../cutter/index.ts'
import type { Design } from '../../paper/index.ts'
import { paperOf } from '../../sheet/pages/paper-sizes.ts'
import { save } from '../template/save.ts'

export interface CutterChoice {
  readonly paper: 'a4' | 'a3' | 'letter' | 'tabloid' | 'roll'
  readonly copies: number
  readonly keepsGrain: boolean
  readonly bridges: boolean
  readonly perforated: boolean
}

export type CutterFormat = 'dxf' | 'svg'

/** Of a roll, mm: what small machines take (common practice, no source). */
const ROLL = 300

/** Of a bridge, and of the cuts and gaps of a fold, mm (common practice, no source). */
const BRIDGE = 0.8

const PERFORATION = { cut: 3, gap: 1.5 } as const

const TYPES: Readonly<Record<CutterFormat, string>> = { dxf: 'image/vnd.dxf', svg: 'image/svg+xml' }

function optionsOf({ paper, copies, keepsGrain, bridges, perforated }: CutterChoice): CutOptions {
  const size = paper === 'roll' ? { width: ROLL, height: Number.POSITIVE_INFINITY } : paperOf(paper)
  return {
    ...USUAL,
    stock: { width: size.width, height: size.height, margin: USUAL_MARGIN },
    copies,
    keepsGrain,
    bridge: bridges ? BRIDGE : 0,
    perforate: perforated ? PERFORATION : null,
  }
}

/** Saves the sheets: one as it is, several in one ZIP file. Gives the sentence that tells what was saved. */
export async function saveCut(
  design: Design,
  stem: string,
  choice: CutterChoice,
  format: CutterFormat,
): Promise<string> {
  const sheets = sheetsToCut(design, optionsOf(choice))
  const files = sheets.map((sheet, k) => ({
    name: `${stem}-cut${k === 0 ? '' : `-${k + 1}`}.${format}`,
    text: format === 'dxf' ? sheetDxf(sheet) : cutSvg(sheet),
  }))
  const [first] = files
  if (!first) throw new RangeError(says.nothingToCut)
  const shares = sheets.map(({ full }) => Math.round(100 * full))
  if (files.length === 1) {
    save([first.text], TYPES[format], first.name)
    return says.saved(first.name, shares)
  }
  const { strToU8, zipSync } = await import('fflate')
  const zip = zipSync(Object.fromEntries(files.map(({ name, text }) => [name, strToU8(text)])))
  const name = `${stem}-cut.zip`
  save([new Uint8Array(zip)], 'application/zip', name)
  return says.savedSheets(name, files.length, shares)
}
