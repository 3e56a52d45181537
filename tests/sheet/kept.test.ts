// Sheets as pictures: each page is compared with the SVG that somebody looked at and kept, word for word.
// After a change that is meant: look at the `-changed` twin, then give it the old one's name.
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import type { SheetOptions } from '../../src/sheet/index.ts'
import { layOut, sheetSvg } from '../../src/sheet/index.ts'
import { beak, card, dummy, moth } from './designs.ts'

const output = new URL('output/', import.meta.url)

const eye = { id: 'eye', kind: 'cut-v-fold', on: 'beak/left', apex: 14, run: 22, cut: 8, lean: -9 }

/** A card that fills its paper, one with room beside it, pieces in rows, a piece on its own page, words on a further page, sizes that ask for care. */
const sheets = [
  ['beak-a4', card(105, 148, [beak(110, -40, 38)]), { paper: 'a4' }],
  ['full-a5', card(105, 148, [beak(110, -40, 38)]), { paper: 'a5' }],
  ['moth-letter-back', moth(), { paper: 'letter', lines: 'back' }],
  ['pond-a4-ticks', dummy('pond'), { paper: 'a4', lines: 'ticks' }],
  ['class-card-a4-back', dummy('class-card'), { paper: 'a4', lines: 'back' }],
  ['eye-a5', card(105, 148, [beak(110, -40, 38), eye], 'Heron'), { paper: 'a5' }],
] as const satisfies readonly (readonly [string, ReturnType<typeof card>, SheetOptions])[]

test.each(sheets)('%s looks as it did when it was last looked at', (name, design, options) => {
  sheetSvg(design, options).forEach((now, k) => {
    const kept = new URL(`${name}-${k + 1}.svg`, output)
    const changed = new URL(`${name}-${k + 1}-changed.svg`, output)
    const same = existsSync(kept) && readFileSync(kept, 'utf8') === now
    if (same) rmSync(changed, { force: true })
    else writeFileSync(changed, now)
    expect(
      same,
      `output/${name}-${k + 1}-changed.svg is new: look at it, then keep it or mend the sheet`,
    ).toBe(true)
  })
  expect(existsSync(new URL(`${name}-${layOut(design, options).length + 1}.svg`, output))).toBe(false)
})
