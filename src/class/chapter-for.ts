import type { Design } from '../paper/index.ts'
import { isRead } from '../paper/index.ts'

/** A chapter by what its own card shows. */
export interface Taught {
  readonly slug: string
  /** The kind of what is read on its card; none on a bare one. */
  readonly kind: string | undefined
}

/** What is read first on a design: the mechanism of that id, else the first that is read. */
export function leadIn(design: Design, id?: string): Design['mechanisms'][number] | undefined {
  return design.mechanisms.find((m) => m.id === id) ?? design.mechanisms.find((_, k) => isRead(design, k))
}

/** The chapter whose words go with a design: the first that leads with the same kind; the first of all if none does. */
export const chapterFor = <T extends Taught>(chapters: readonly T[], design: Design): T | undefined =>
  chapters.find(({ kind }) => kind === leadIn(design)?.kind) ?? chapters[0]
