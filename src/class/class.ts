/** Who has which sheet, and what the model reads on it: a class before its pages are drawn. */
import type { Design, Flat } from '../paper/index.ts'
import type { SheetPage } from '../sheet/index.ts'
import { paperOf, uncovered } from '../sheet/index.ts'
import type { Choice, Place } from './choice.ts'
import { placesFor } from './choice.ts'
import type { Seen } from './seen.ts'
import type { Copy, Measured, Spread, Tell } from './spread.ts'
import { alike, measuredOn, spreadOf } from './spread.ts'
import type { ChapterWords, Lesson, PackWords, Part } from './words.ts'
import { lessonFor } from './words.ts'

/** What a pack is made of. */
export interface Order {
  readonly design: Design
  readonly choice: Choice
  readonly lesson: Lesson
  readonly words: PackWords
  readonly chapter: ChapterWords
  /** The mechanism whose tip is read; the first one that is read if left out. */
  readonly lead?: string
  /** Of a bare card: the point that is read, `[across, along]`, mm. */
  readonly point?: Flat
  readonly seen?: Seen
  /** Minutes of the lesson's parts, where the teacher has moved them. */
  readonly minutes?: readonly number[]
}

/** One pupil's sheet. */
export interface Sheet extends Place, Copy {}

/** A class before its pages are drawn: who has which sheet. */
export interface Class {
  readonly order: Order
  /** As it is made by the class: without its cover, which closes nothing that is read. */
  readonly design: Design
  readonly measured: Measured | null
  /** Whether sheets differ. */
  readonly differs: boolean
  readonly sheets: readonly Sheet[]
  readonly notes: readonly string[]
  readonly parts: readonly Part[]
}

/** What differs by the name that a choice gives it, as `beak.cut`. */
export const measureNamed = (all: readonly Measured[], name: string | null): Measured | null =>
  all.find(({ id, field }) => `${id}.${field}` === name) ?? null

export const nameOfMeasure = ({ id, field }: Measured): string => `${id}.${field}`

/** The parts of the lesson with the minutes that the teacher gave them. */
export function partsOf({
  lesson,
  choice,
  minutes,
}: Pick<Order, 'lesson' | 'choice' | 'minutes'>): readonly Part[] {
  const parts = lesson.plans[`${choice.minutes}`]
  const known = minutes?.length === parts.length ? minutes : parts.map((part) => part.minutes)
  return parts.map((part, k) => ({ ...part, minutes: known[k] ?? part.minutes }))
}

/** A class: each pupil's sheet, its size and what the model reads on it. */
export function classOf(order: Order, tell: Tell = () => {}): Class {
  const { choice, lead, point } = order
  const design = uncovered(order.design)
  const all = measuredOn(design, lead ?? null, point)
  const wanted = measureNamed(all, choice.differs)
  const measured = wanted ?? all[0] ?? null
  const spread: Spread = wanted
    ? spreadOf(design, wanted, choice.pupils, tell, point)
    : alike(design, measured, choice.pupils, point)
  const sheets = placesFor(choice).map((place): Sheet => {
    const copy = spread.copies[place.nth]
    if (!copy) throw new RangeError(`there is no sheet ${place.nth} of ${spread.copies.length}`)
    return { ...place, ...copy }
  })
  const differs = sheets.some(({ size }) => size !== null)
  const told: Order = { ...order, lesson: lessonFor(order.lesson, differs) }
  return { order: told, design, measured, sheets, differs, notes: spread.notes, parts: partsOf(told) }
}

/** Pages of one sort, in the order of the file. */
export interface Section {
  readonly name: 'teacher' | 'sheets' | 'making' | 'worksheets' | 'recall' | 'key' | 'certificates'
  readonly pages: readonly SheetPage[]
}

/** Numbers of a section's pages in the file, from 1; null where it has none. */
export function pageNumbers(
  sections: readonly Section[],
  name: Section['name'],
): readonly [number, number] | null {
  let before = 0
  for (const { name: at, pages } of sections) {
    if (at === name && pages.length > 0) return [before + 1, before + pages.length]
    before += pages.length
  }
  return null
}

export const paperIn = ({ order }: Pick<Class, 'order'>) => paperOf(order.choice.paper)
