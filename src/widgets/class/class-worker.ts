/** Run beside the page: who has which sheet, and what the readings show. */
import type { Class } from '../../class/class.ts'
import { shoppingOf } from '../../class/pack.ts'
import { curveOf } from '../../class/pages/figures.ts'
import { shoppingSays } from '../../class/pages/teacher.ts'
import { together } from '../../class/together.ts'
import { compare, compareSeveral, comparisonSays, severalSay } from '../measure/compare.ts'
import type { Answer, Ask, Compared, Wanted } from './asked.ts'
import { madeClass, settled, sizesOf } from './order.ts'

let known: { readonly key: string; readonly made: Class } | null = null

/** The class of an order; the last one is remembered. */
function classFor(wanted: Wanted): Class {
  const { design, choice, lead, point } = wanted
  const key = JSON.stringify([design, choice.pupils, choice.groups, choice.differs, lead, point])
  if (known?.key !== key)
    known = {
      key,
      made: madeClass(wanted, (done, of) => postMessage({ to: 'told', done, of } satisfies Answer)),
    }
  return known.made
}

async function shown(wanted: Wanted): Promise<Answer> {
  const made = { ...classFor(wanted), order: settled(wanted) }
  const { design, measured, differs, notes, sheets } = made
  return {
    to: 'class',
    shown: {
      ...{ design, measured, differs, notes },
      sizes: sizesOf(wanted),
      shopping: shoppingSays(made, await shoppingOf(made)),
      sheets: sheets.map(({ design: _, ...sheet }) => sheet),
      curve: measured && differs ? curveOf(design, measured, sheets) : [],
    },
  }
}

/** What one reading shows, and which slips of the hand would explain it. */
function comparedOf(made: Class, code: string, value: number): readonly Compared[] {
  const { measured } = made
  const sheet = made.sheets.find((one) => one.code === code)
  if (!sheet || !measured || !Number.isFinite(sheet.reads)) return []
  const off = value - sheet.reads
  const { opening, id } = measured
  if (measured.what === 'gap') {
    const point = [sheet.size ?? sheet.design.card.width / 2, measured.along ?? 0] as const
    const found = compare(sheet.design, {}, point, { opening }, value)
    return [{ code, off, says: comparisonSays(found, 'mm') }]
  }
  const { says, causes } = severalSay(
    compareSeveral(sheet.design, { lead: id }, { id, opening }, { rise: value }),
    opening,
    'mm',
    id,
  )
  return [{ code, off, says: [...says.slice(1), ...causes] }]
}

async function answered(ask: Ask): Promise<Answer | null> {
  if (ask.what === 'class') return shown(ask.wanted)
  if (ask.what !== 'compare') return null
  const made = classFor(ask.wanted)
  const { measured, sheets } = made
  return {
    to: 'compare',
    compared: Object.entries(ask.readings).flatMap(([code, value]) => comparedOf(made, code, value)),
    together: measured ? together(sheets, measured, ask.readings) : null,
  }
}

addEventListener('message', ({ data }: MessageEvent<Ask>) => {
  answered(data).then(
    (answer) => answer && postMessage(answer),
    (error: unknown) =>
      postMessage({
        to: 'fault',
        sentence: error instanceof Error ? error.message : String(error),
      } satisfies Answer),
  )
})
