/** A place of the book that can be found. */
export interface Findable {
  readonly title: string
  /** What it is, or what it stands in. */
  readonly where: string
  readonly text: string
  readonly href: string
}
