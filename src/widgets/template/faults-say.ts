import type { Design } from '../../paper/index.ts'
import { check } from '../../paper/index.ts'
import type { TemplateChoice } from './choice.ts'
import { printedDesign } from './choice.ts'

/** What does not work of the card as it would be printed; empty: nothing. Paper that jams is paper wasted. */
export function faultsSay(planned: Design, choice: TemplateChoice): string {
  const failed = check(printedDesign(planned, choice), { repairs: false }).filter(({ ok }) => !ok)
  const [first] = failed
  if (!first) return ''
  const count = failed.length === 1 ? '1 thing' : `${failed.length} things`
  return `${count} to mend before you print. ${first.sentence}`
}
