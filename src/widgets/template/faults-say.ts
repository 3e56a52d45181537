import type { Design } from '../../paper/index.ts'
import { faultSays } from '../../sheet/index.ts'
import type { TemplateChoice } from './choice.ts'
import { printedDesign } from './choice.ts'

/** What does not work of the card as it would be printed; empty: nothing. Paper that jams is paper wasted. */
export const faultsSay = (planned: Design, choice: TemplateChoice): string =>
  faultSays(printedDesign(planned, choice))
