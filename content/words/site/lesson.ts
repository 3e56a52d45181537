/** How a chapter's text begins what a lesson takes from it. A chapter writes these heads in bold, with a full stop. */

export const misconceptions = 'Misconceptions'

export const standards = 'Standards'

export const safety = 'Safety'

/** Before the reason why a guess is right. */
export const yes = 'Yes.'
