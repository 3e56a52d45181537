/** What the standing card shows; `rises`: clauses without their end. */
export const card = (title: string, opening: string, rises: readonly string[]): string =>
  `The card “${title}”, open ${opening}.${rises.length > 0 ? ` ${rises.join(', ')}.` : ''}`

/** At a place that fails at another opening than the one shown. */
export const failsAt = (opening: string): string => `at ${opening}`
