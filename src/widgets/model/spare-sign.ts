/** Told by a bench to the islands within it: what its first drag does without may come. */
export const SPARE = 'hingebook-spare'
