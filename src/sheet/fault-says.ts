import type { Design } from '../paper/index.ts'
import { check } from '../paper/index.ts'

/** How many things of a card fail, and the first of them, for whoever is about to cut; empty: none. */
export function faultSays(design: Design): string {
  const failed = check(design, { repairs: false }).filter(({ ok }) => !ok)
  const [first] = failed
  if (!first) return ''
  const count = failed.length === 1 ? '1 thing' : `${failed.length} things`
  return `${count} to mend first. ${first.sentence}`
}
