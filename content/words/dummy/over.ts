/** What lies over the standing card: rings on its folds, and the tip of the part that is taken up. */
export const buildOn = (place: string): string => `Build on ${place}`

export const tipOf = (name: string): string => `Tip of the ${name}`

/** Where the tip is, spoken. */
export const tipHigh = (rise: string, along: string): string => `rise ${rise}, ${along} from your end`

export const tipBehind = (depth: string, along: string): string =>
  `${depth} behind the page, ${along} from your end`
