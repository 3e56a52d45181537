/** The plans: the page of all of them, and what stands round the text of each. */

export const title = 'Plans'

export const description = 'Worked plans for pop-up cards of your own, each from a wish to a printed sheet.'

/** What a clicker goes to next. */
export const stop = 'plan'

export const stepStop = 'step'

export const lead =
  'From a wish to a print. You make each on your own dummy, step by step, and end with a card that works.'

const placesToGlue = (count: number): string => (count > 0 ? `, ${count} places to glue` : '')

/** `level` is how hard its card is. */
export const asksFor = (
  level: string,
  { parts, cuts, folds, glued }: Readonly<Record<'parts' | 'cuts' | 'folds' | 'glued', number>>,
): string => `${level}: ${parts} parts, ${cuts} cuts, ${folds} folds${placesToGlue(glued)}.`

/* Where one goes on from all plans. */

export const fromHere = 'From here'

export const back = 'Back'

export const garden = 'The garden'

export const withoutPlan = 'Without a plan'

export const emptyCard = 'An empty card'

/* One plan. */

/** Read aloud before its number. */
export const plan = 'Plan'

export const cardOfPlan = (card: string): string => `The card of this plan: ${card}`

export const openStart = 'Open the start'

export const openEnd = 'Open the end'

export const itsFile = 'Its file'

export const otherPlans = 'Other plans'

export const allPlans = 'All plans'

export const next = (number: number): string => `Next: plan ${number}`
