/** Loaded when a template is asked for: the sheet's drawings, its font and its writers. */

import regular from '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-400-normal.woff?url'
import bold from '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-700-normal.woff?url'
import regularExtended from '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-ext-400-normal.woff?url'
import boldExtended from '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-ext-700-normal.woff?url'
import * as says from '../../../content/words/template/dialog.ts'
import type { Design } from '../../paper/index.ts'
import type { SheetFont, SheetOptions } from '../../sheet/index.ts'
import {
  artWays,
  faultSays,
  fitOn,
  loadFont,
  paperForLocale,
  papers,
  printedOn,
  sheetPdf,
  sheetSvg,
  TooLargeError,
  UnprintableError,
  usualArt,
} from '../../sheet/index.ts'
import { fetched } from '../model/loading.ts'
import type { TemplateChoice } from './choice.ts'
import { optionsOf, printedDesign } from './choice.ts'
import { save } from './save.ts'

export { artWays, papers, usualArt }

/** What was done, or why it could not be. */
export interface Saved {
  readonly isSaved: boolean
  readonly says: string
}

/** The file's name says what it holds, where that is not the usual. */
function fileName(
  design: Design,
  slug: string,
  { paper, lines, art }: SheetOptions,
  tabs: TemplateChoice['tabs'],
): string {
  const picture = art === usualArt(design) ? '' : art === 'none' ? '-plain' : `-${art}`
  const on = typeof paper === 'string' ? paper : `${paper.width}x${paper.height}`
  return `${slug}-${on}${lines === 'front' ? '' : `-${lines}`}${tabs === 'slit' ? '-slits' : ''}${picture}`
}

/** The paper a reader of this locale is likely to have. */
export const guessPaper = (locale: string): 'a4' | 'letter' => paperForLocale(locale)

const fontAddresses = [regular, regularExtended, bold, boldExtended]

/** The font, from this site alone. */
export function sheetFont(): Promise<SheetFont> {
  return loadFont(async (file) => {
    const name = file.replace(/\.woff$/, '')
    const address = fontAddresses.find((one) => one.includes(name))
    if (!address) throw new RangeError(`there is no font file ${file}`)
    return new Uint8Array(await (await fetched(address)).arrayBuffer())
  })
}

/**
 * Saves the template of a design as a file and says what was done, or why it could not be: a card too
 * large for the paper is never scaled.
 */
export async function saveTemplate(planned: Design, slug: string, choice: TemplateChoice): Promise<Saved> {
  const design = printedDesign(planned, choice)
  try {
    const options = { ...optionsOf(choice), fault: faultSays(design) }
    const name = fileName(design, slug, options, choice.tabs)
    const { sentence } = fitOn(design, printedOn(options))
    const done = (said: string): Saved => ({
      isSaved: true,
      says: sentence === '' || choice.tiled ? said : `${said} ${sentence}`,
    })
    if (choice.form === 'pdf') {
      const bytes = await sheetPdf(design, options, await sheetFont())
      save([bytes as BlobPart], 'application/pdf', `${name}.pdf`)
      return done(says.savedToPrint(`${name}.pdf`))
    }
    const pages = sheetSvg(design, options, await sheetFont())
    pages.forEach((page, k) => {
      save([page], 'image/svg+xml', pages.length > 1 ? `${name}-${k + 1}.svg` : `${name}.svg`)
    })
    return done(pages.length > 1 ? says.pagesSaved(pages.length, `${name}-1.svg`) : says.saved(`${name}.svg`))
  } catch (error) {
    if (error instanceof TooLargeError)
      return {
        isSaved: false,
        says: says.tooLarge(error.message),
      }
    if (error instanceof UnprintableError) return { isSaved: false, says: error.message }
    throw error
  }
}
