// Designs of the night garden that the sheet's tests share.
import { readdirSync, readFileSync } from 'node:fs'
import type { Design } from '../../src/paper/index.ts'
import { parseDesign } from '../../src/paper/index.ts'
import type { SheetOptions, SheetPage } from '../../src/sheet/index.ts'
import { layOut } from '../../src/sheet/index.ts'

export const dummy = (name: string): Design =>
  parseDesign(
    JSON.parse(
      readFileSync(new URL(`../../content/dummies/${name}.hingebook.json`, import.meta.url), 'utf8'),
    ),
  )

/** Every dummy of the garden, by the name of its file. */
export const dummies: readonly (readonly [string, Design])[] = readdirSync(
  new URL('../../content/dummies/', import.meta.url),
).map((name) => [name, dummy(name.replace('.hingebook.json', ''))])

const kept = new Map<string, readonly SheetPage[]>()

/** A design's pages: laid out once for all tests in a worker that ask for the same, as many do for the whole garden. */
export function laid(design: Design, options: SheetOptions): readonly SheetPage[] {
  const asked = JSON.stringify([design, options])
  const pages = kept.get(asked) ?? layOut(design, options)
  kept.set(asked, pages)
  return pages
}

/** The same without its cover. */
export const uncovered = ({ card: { cover: _, ...card }, ...design }: Design): Design => ({ ...design, card })

/** A card, open `2 * width` by `height` mm, with these mechanisms on it. */
export const card = (
  width: number,
  height: number,
  mechanisms: readonly object[] = [],
  title = 'Owl',
): Design => parseDesign({ hingebook: 1, title, card: { width, height }, mechanisms })

export const beak = (apex: number, run: number, cut: number) => ({
  id: 'beak',
  kind: 'cut-v-fold',
  on: 'gutter',
  apex,
  run,
  cut,
})

/** A part of its own card in the gutter. */
export const MOTH = {
  id: 'moth',
  kind: 'glued-v-fold',
  on: 'gutter',
  apex: 30,
  toward: 1,
  base: 45,
  facet: 50,
  foot: 60,
  ridge: 50,
  tab: 10,
} as const

/** One piece of its own card, one stuck on a face. */
export const moth = (): Design =>
  card(
    105,
    148,
    [
      MOTH,
      {
        id: 'star',
        kind: 'rider',
        on: 'moth/left',
        shape: [
          [5, 20],
          [25, 20],
          [25, 40],
          [5, 40],
        ],
        glue: [
          [8, 22],
          [20, 22],
          [20, 30],
          [8, 30],
        ],
      },
    ],
    'Moth',
  )

/** From a card that leaves room for everything to one that leaves none, and one too crowded for its page. */
export const shelf: readonly { readonly name: string; readonly design: Design }[] = [
  { name: 'heron', design: dummy('heron') },
  { name: 'heron without its cover', design: uncovered(dummy('heron')) },
  { name: 'lantern', design: dummy('lantern') },
  { name: 'a small card', design: card(50, 60, [beak(40, -20, 20)]) },
  { name: 'a bare card', design: card(105, 148) },
  { name: 'a tall card', design: card(90, 250, [beak(150, -50, 40)]) },
  { name: 'a card as large as A4', design: card(148, 210, [beak(160, -50, 50)]) },
  { name: 'a narrow card', design: card(30, 260, [beak(150, -50, 20)]) },
  { name: 'pieces of their own card', design: moth() },
  ...['pond', 'hedgehog', 'owl', 'moon', 'garden'].map((name) => ({ name, design: dummy(name) })),
  { name: 'a title of 120 letters', design: card(105, 148, [], 'Nachtigall'.repeat(12)) },
  { name: 'accents', design: card(105, 148, [], 'Żółw, kaczę & Ödön’s <moth> «été»') },
  {
    name: 'a hundred mechanisms',
    design: card(
      105,
      148,
      Array.from({ length: 100 }, (_, k) => ({
        id: `reed-${k}`,
        kind: 'cut-layer',
        on: 'gutter',
        start: 1 + 1.4 * k,
        end: 2 + 1.4 * k,
        left: 8 + (k % 5),
        right: 8 + (k % 3),
      })),
      'Reeds',
    ),
  },
]
