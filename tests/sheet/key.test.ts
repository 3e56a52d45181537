// What the key explains is on the sheet, and what is on the sheet is explained: by the marks alone.
import { expect, test } from 'vitest'
import type { Role } from '../../src/drawing/pen/marks.ts'
import type { Design } from '../../src/paper/index.ts'
import { jointsOf, pieces, withTabs } from '../../src/paper/index.ts'
import type { SheetLines } from '../../src/sheet/index.ts'
import { fitOn, paperOf } from '../../src/sheet/index.ts'
import { EVERYWHERE } from '../../src/sheet/marks/clip.ts'
import { faceOf, printedAs } from '../../src/sheet/marks/instructions.ts'
import { placesOn } from '../../src/sheet/marks/joint-places.ts'
import { pieceMarks } from '../../src/sheet/marks/piece-marks.ts'
import { extent } from '../../src/sheet/marks/setting.ts'
import { dummies, dummy, laid } from './designs.ts'

/** All that asks a maker for something. */
const ROLES: readonly Role[] = ['cut', 'valley', 'mountain', 'crease', 'glue', 'behind']

const ways = (['front', 'ticks', 'back'] as const).flatMap((lines) =>
  (['flat', 'slit'] as const).map((tabs): readonly [SheetLines, 'flat' | 'slit'] => [lines, tabs]),
)

/** Whether something is dashed where another piece goes: around what is glued on its own face no piece does. */
const hasPlaces = (design: Design, asked: SheetLines): boolean =>
  pieces(design).some((piece) => {
    const lines = printedAs(piece.id, asked)
    const places = placesOn(design, piece.id, faceOf(lines)).filter(({ isOwn }) => !isOwn)
    const place = { origin: [0, 0], mirrored: faceOf(lines) === 'outside' } as const
    return pieceMarks(piece, places, place, lines, EVERYWHERE).lines.some(({ role }) => role === 'place')
  })

test.each(ways)('printed as %s, tabs %s: the key names what is drawn, and no more', (lines, tabs) => {
  for (const [name, plain] of dummies) {
    const design = withTabs(plain, tabs)
    const paper = fitOn(design, paperOf('a4')).ok ? 'a4' : 'a3'
    const marks = laid(design, { paper, lines, care: [] }).flatMap((page) => page.marks)
    const paths = marks.filter((mark) => mark.mark === 'path')
    const roles = (isKey: boolean): readonly Role[] =>
      ROLES.filter((role) =>
        paths.some((mark) => mark.role === role && (mark.of ?? '').startsWith('legend') === isKey),
      )
    expect(roles(true), name).toEqual(roles(false))
    // Where both places of a joint, not of the cover, lie on the face that is not printed, none has a hatch.
    const hidden = lines === 'back' ? 'front' : 'back'
    const isHidden = jointsOf(design).some(
      ({ isTaped, own, host }) =>
        !isTaped && host.piece !== 'cover' && own.face === hidden && host.face === hidden,
    )
    const said = marks.flatMap((mark) => (mark.mark === 'word' ? [mark.text] : [])).join(' ')
    expect(said.includes('where neither is hatched, on the other face of one'), name).toBe(isHidden)
    const words = marks.flatMap((mark) => (mark.mark === 'word' && mark.bold ? [mark.text] : []))
    expect(words.includes('Place'), name).toBe(hasPlaces(design, lines))
    // Nothing is dotted that no key names: dots mean glue behind.
    expect(paths.filter(({ role }) => role === 'dimension')).toEqual([])
    // Corners alone are taken for ticks, and only where there are ticks.
    const hasCorners = paths.some(({ of }) => of?.endsWith('-corner'))
    expect(/Small corners .*do not score them/.test(said), name).toBe(lines === 'ticks' && hasCorners)
    // Of tape the key speaks where the steps do.
    expect(said.replaceAll(' (tape too)', '').length < said.length, name).toBe(
      roles(true).includes('behind') && said.includes('Slip tape under'),
    )
  }
})

test('samples of glue in rows one below the other keep a millimetre apart, in close type too', () => {
  for (const name of ['class-card', 'pond', 'house'])
    for (const { marks } of laid(dummy(name), { paper: 'a4', care: [] })) {
      const boxes = marks.flatMap((mark) =>
        mark.mark === 'path' && mark.of === 'legend' && mark.closed ? [extent(mark)] : [],
      )
      boxes.sort((a, b) => a[1] - b[1])
      for (const [k, box] of boxes.entries())
        if (k > 0) expect(box[1] - (boxes[k - 1]?.[3] ?? 0), name).toBeGreaterThan(1)
    }
})
