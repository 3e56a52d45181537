/** What a maker sees on a card that does not work, in a few words; and what to do first. */
export interface Fault {
  readonly id: string
  readonly see: string
  /** Other words for it. */
  readonly also: readonly string[]
  readonly now: string
  readonly next: string
  /** The address of its picture. */
  readonly picture?: string
}

/** One thing that goes wrong, as a chapter tells it. */
export interface Trouble {
  readonly sign: string
  /** The id of its fault. */
  readonly fault: string
  readonly cure: string
  /** The design of its chapter, by name. */
  readonly card: string
  readonly chapter: { readonly number: number; readonly title: string }
  /** Where it stands in its chapter. */
  readonly href: string
  /** The address of its picture, where it has one. */
  readonly picture?: string
}
