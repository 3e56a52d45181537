import { readFileSync } from 'node:fs'
import type { Design } from '../../src/paper/index.ts'
import { parseDesign } from '../../src/paper/index.ts'
import type { BenchConfig } from '../../src/widgets/state/config.ts'

/** A design of the night garden, by its file's name. */
export const dummy = (name: string): Design =>
  parseDesign(
    JSON.parse(
      readFileSync(new URL(`../../content/dummies/${name}.hingebook.json`, import.meta.url), 'utf8'),
    ),
  )

const card = { width: 105, height: 148 }

/** Two V-folds that share one slit: the smallest beak. Invented. */
export const beak = parseDesign({
  hingebook: 1,
  title: 'Beak',
  card,
  mechanisms: [
    { id: 'beak', kind: 'cut-v-fold', on: 'gutter', apex: 110, run: -40, cut: 38 },
    { id: 'jaw', kind: 'cut-v-fold', on: 'gutter', apex: 36, run: 34, cut: 38 },
  ],
})

/** One layer. Invented. */
export const layer = parseDesign({
  hingebook: 1,
  title: 'Layer',
  card,
  mechanisms: [{ id: 'body', kind: 'cut-layer', on: 'gutter', start: 50, end: 90, left: 34 }],
})

/** A bare card with a point on its page. Invented. */
export const bare = parseDesign({ hingebook: 1, title: 'Card', card, mechanisms: [] })

export const bareConfig: BenchConfig = { point: [60, 80], opening: 60 }
