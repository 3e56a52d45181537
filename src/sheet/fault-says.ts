import * as says from '../../content/words/sheet.ts'
import type { Design } from '../paper/index.ts'
import { check } from '../paper/index.ts'

/** How many things of a card fail, and the first of them, for whoever is about to cut; empty: none. */
export function faultSays(design: Design): string {
  const failed = check(design, { repairs: false }).filter(({ ok }) => !ok)
  const [first] = failed
  return first ? says.toMend(failed.length, first.sentence) : ''
}
