// Pages of packs as pictures: each is compared with the SVG that somebody looked at and kept, word for word.
// After a change that is meant: look at the `-changed` twin, then give it the old one's name.
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { expect, test, vi } from 'vitest'
import type { Choice } from '../../src/class/choice.ts'
import { classOf } from '../../src/class/class.ts'
import { packOf } from '../../src/class/pack.ts'
import { SEEN } from '../../src/class/seen.ts'
import { pageSvg } from '../../src/sheet/files/svg.ts'
import { orderFor } from './shared.ts'

vi.setConfig({ testTimeout: 60_000 })

const output = new URL('output/', import.meta.url)

/** Tape, a slit with its angle, a bare card on US paper, large print: and which of their pages are kept, the first of each sort. */
const packs = [
  [
    'moth',
    'a-v-fold-of-its-own-card',
    { pupils: 5, groups: 2, differs: 'moth.facet' },
    ['teacher', 'worksheets', 'key'],
  ],
  [
    'beak',
    'one-slit-two-v-folds',
    { pupils: 3, groups: 1, ages: '14-up', minutes: 90, certificate: true, differs: 'beak.cut' },
    ['teacher', 'recall', 'certificates', 'key'],
  ],
  [
    'card',
    'it-starts-at-the-gutter',
    { pupils: 4, groups: 2, ages: 'adults', minutes: 20, paper: 'letter', differs: 'point.across' },
    ['sheets', 'worksheets', 'key'],
  ],
  [
    'large',
    'layers',
    { pupils: 3, groups: 3, ages: '7-9', large: true, certificate: true, differs: 'body.depth' },
    ['teacher', 'sheets', 'making', 'worksheets', 'key'],
  ],
] as const satisfies readonly (readonly [string, string, Partial<Choice>, readonly string[]])[]

test.each(packs)(
  'the pack %s looks as it did when it was last looked at',
  async (name, slug, choice, kept) => {
    const { sections } = await packOf(classOf({ ...orderFor(slug, choice), seen: SEEN }))
    for (const section of kept) {
      const pages = sections.find((one) => one.name === section)?.pages ?? []
      // Of the teacher's pages all; of others the first tells.
      pages.slice(0, section === 'teacher' ? 9 : 1).forEach((page, k) => {
        const now = pageSvg(page)
        const file = `${name}-${section}-${k + 1}`
        const old = new URL(`${file}.svg`, output)
        const changed = new URL(`${file}-changed.svg`, output)
        const same = existsSync(old) && readFileSync(old, 'utf8') === now
        if (same) rmSync(changed, { force: true })
        else writeFileSync(changed, now)
        expect
          .soft(same, `output/${file}-changed.svg is new: look at it, then keep it or mend the page`)
          .toBe(true)
      })
    }
  },
)
