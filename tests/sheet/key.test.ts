// What the key explains is on the sheet, and what is on the sheet is explained: by the marks alone.
import { expect, test } from 'vitest'
import type { Role } from '../../src/drawing/pen/marks.ts'
import { jointsOf, withTabs } from '../../src/paper/index.ts'
import type { SheetLines } from '../../src/sheet/index.ts'
import { fitOn, layOut, paperOf } from '../../src/sheet/index.ts'
import { dummies } from './designs.ts'

/** All that asks a maker for something. */
const ROLES: readonly Role[] = ['cut', 'valley', 'mountain', 'crease', 'glue', 'behind']

const ways = (['front', 'ticks', 'back'] as const).flatMap((lines) =>
  (['flat', 'slit'] as const).map((tabs): readonly [SheetLines, 'flat' | 'slit'] => [lines, tabs]),
)

test.each(ways)('printed as %s, tabs %s: the key names what is drawn, and no more', (lines, tabs) => {
  for (const [name, plain] of dummies) {
    const design = withTabs(plain, tabs)
    const paper = fitOn(design, paperOf('a4')).ok ? 'a4' : 'a3'
    const marks = layOut(design, { paper, lines, care: [] }).flatMap((page) => page.marks)
    const paths = marks.filter((mark) => mark.mark === 'path')
    const roles = (isKey: boolean): readonly Role[] =>
      ROLES.filter((role) =>
        paths.some((mark) => mark.role === role && (mark.of ?? '').startsWith('legend') === isKey),
      )
    expect(roles(true), name).toEqual(roles(false))
    // The step that glues speaks of dots where some place, not of the cover, has them.
    const glued = jointsOf(design).filter(({ isTaped, host }) => !isTaped && host.piece !== 'cover')
    const isDotted = paths.some(({ role, of }) => role === 'behind' && glued.some((one) => one.of === of))
    const said = marks.flatMap((mark) => (mark.mark === 'word' ? [mark.text] : [])).join(' ')
    expect(said.includes('where there are dots, on the other face'), name).toBe(isDotted)
    // Of tape the key speaks where the steps do.
    expect(said.replaceAll(' (tape too)', '').length < said.length, name).toBe(
      roles(true).includes('behind') && said.includes('tape it along its whole length'),
    )
  }
})
