import type { CollectionEntry } from 'astro:content'
import { getCollection } from 'astro:content'
import type { Card, Design } from '../paper/index.ts'
import { change, parseDesign } from '../paper/index.ts'
import { dummyNamed } from './chapters.ts'

/** A plan from a wish to a print, with the designs that it begins and ends with. */
export interface Plan {
  readonly slug: string
  readonly entry: CollectionEntry<'plans'>
  readonly data: CollectionEntry<'plans'>['data']
  readonly start: Design
  readonly design: Design
}

export const planPath = (slug: string): string => `/plans/${slug}/`

/** All plans, in their order. */
export async function allPlans(): Promise<readonly Plan[]> {
  const entries = (await getCollection('plans')).sort((a, b) => a.data.number - b.data.number)
  return Promise.all(
    entries.map(async (entry) => ({
      slug: entry.id,
      entry,
      data: entry.data,
      start: await dummyNamed(entry.data.start.id),
      design: await dummyNamed(entry.data.dummy.id),
    })),
  )
}

/** Sizes of a design that are other than in its file: by mechanism's id, or `card`. */
export type Sizes = Readonly<Record<string, Readonly<Record<string, number>>>>

/** A design with other sizes, sound or not. Throws a DesignError that names what cannot be. */
export function resized(design: Design, sizes: Sizes = {}): Design {
  const { card, ...others } = sizes
  const onCard = parseDesign({ ...design, card: { ...design.card, ...(card as Partial<Card> | undefined) } })
  return Object.entries(others).reduce((now, [id, of]) => change(now, id, of), onCard)
}
