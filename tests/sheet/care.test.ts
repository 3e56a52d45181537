// Which sizes carry the mark that asks for care, and where it stands. That they are the tightest is tried here one
// slip after another with the checks alone, a tenth at a time.
import { describe, expect, test } from 'vitest'
import type { CheckName, Design } from '../../src/paper/index.ts'
import { change, check, kindOf, parseDesign, settingOf, tightest } from '../../src/paper/index.ts'
import type { SheetLines, SheetPage } from '../../src/sheet/index.ts'
import { sheetSvg } from '../../src/sheet/index.ts'
import { careOf } from '../../src/sheet/marks/care-marks.ts'
import { extent } from '../../src/sheet/marks/setting.ts'
import { card, dummy, laid, moth } from './designs.ts'

/** A star stuck on near the edge of its facet. */
const starred = (along: number): Design => {
  const design = moth()
  return { ...design, mechanisms: design.mechanisms.map((m) => (m.kind === 'rider' ? { ...m, along } : m)) }
}

const THUMB: readonly CheckName[] = ['bridge', 'narrow', 'thickness']

const fails = (design: Design): readonly CheckName[] =>
  check(design, { repairs: false }).flatMap(({ ok, name }) => (ok || THUMB.includes(name) ? [] : [name]))

/** By size: how far off it first fails a check, in tenths; without those that must match another. */
function slipsOf(design: Design): ReadonlyMap<string, number> {
  const found = new Map<string, number>()
  for (const m of design.mechanisms)
    for (const { name, idle, shorthand } of kindOf(m).fields) {
      if (idle || shorthand) continue
      const off = (by: number): readonly CheckName[] =>
        fails(change(design, m.id, { [name]: settingOf(m, name) + by }))
      if (off(0.1).includes('shuts-flat')) continue
      let tenths = 1
      while (tenths <= 20 && off(tenths / 10).length === 0 && off(-tenths / 10).length === 0) tenths++
      found.set(`${m.id}.${name}`, tenths)
    }
  return found
}

describe.each([
  ['moon that just fits', change(dummy('class-card'), 'moon', { apex: 84.3 })],
  ['star near an edge', starred(1)],
])('%s', (_, design) => {
  const care = tightest(design)

  test('what is marked is what may be off least, and by how much it may not', () => {
    expect(fails(design)).toEqual([])
    const slips = slipsOf(design)
    const names = care.map(({ id, field }) => `${id}.${field}`)
    expect(names.length).toBeGreaterThan(0)
    expect(names.length).toBeLessThanOrEqual(3)
    const rest = [...slips].filter(([name]) => !names.includes(name)).map(([, tenths]) => tenths)
    for (const { id, field, spoilt } of care) {
      const tenths = slips.get(`${id}.${field}`) ?? Number.NaN
      expect(Math.abs(10 * spoilt - tenths), `${id}.${field}`).toBeLessThanOrEqual(1 + 1e-9)
      expect(tenths).toBeLessThanOrEqual(10)
      // The last that holds is a tenth less.
      expect(2 * (tenths - 1)).toBeLessThan(Math.min(...rest))
    }
  })

  describe.each(['front', 'ticks', 'back'] satisfies SheetLines[])('%s', (lines) => {
    const pages = laid(design, { paper: 'a4', lines })
    const isMark = (mark: SheetPage['marks'][number]): boolean =>
      mark.mark === 'path' && mark.role === 'care' && mark.of !== 'legend'

    test('each place has one mark, and the key has its number', () => {
      const marks = pages.flatMap((page) => page.marks.filter(isMark))
      expect(marks.map(({ of }) => of).sort()).toEqual([...new Set(care.map(careOf))].sort())
      const said = pages
        .flatMap(({ marks }) => marks.flatMap((mark) => (mark.mark === 'word' ? mark.text : [])))
        .join(' ')
      const least = Math.min(...care.map(({ spoilt }) => spoilt)).toFixed(1)
      expect(said).toContain(`cut or glue this one with care: ${least} mm off is too much`)
    })

    test('it stands a few mm from a line of its own, and on nothing else', () => {
      for (const { marks } of pages)
        for (const mark of marks.filter(isMark)) {
          const box = extent(mark)
          const [x, y] = [(box[0] + box[2]) / 2, (box[1] + box[3]) / 2]
          const id = mark.of?.split('/')[0] ?? ''
          let own = Number.POSITIVE_INFINITY
          for (const other of marks) {
            if (other === mark) continue
            if (other.mark === 'word') {
              const [l, t, r, b] = extent(other)
              expect(l < box[2] && box[0] < r && t < box[3] && box[1] < b, other.text).toBe(false)
              continue
            }
            for (const run of other.runs)
              for (const [k, a] of run.entries()) {
                const b = run[k + 1] ?? (other.closed ? run[0] : undefined)
                if (!b) continue
                // Along the line in steps of a tenth: no point of it lies in the box.
                const count = Math.ceil(10 * Math.hypot(b[0] - a[0], b[1] - a[1]))
                for (let i = 0; i <= count; i++) {
                  const at = [
                    a[0] + (i / (count || 1)) * (b[0] - a[0]),
                    a[1] + (i / (count || 1)) * (b[1] - a[1]),
                  ]
                  const [u = 0, v = 0] = at
                  if (u > box[0] && u < box[2] && v > box[1] && v < box[3])
                    expect.fail(`${mark.of} stands on ${other.role} ${other.of}`)
                  if (other.of === id || other.of?.startsWith(`${id}/`))
                    own = Math.min(own, Math.hypot(u - x, v - y))
                }
              }
          }
          expect(own).toBeLessThan(6.5)
        }
    })
  })

  test('the same marks are in a file of a page', () => {
    const drawn =
      sheetSvg(design, { paper: 'a4' })
        .join('')
        .match(/class="[^"]*\bm-care\b/g) ?? []
    // And the one in the key.
    expect(drawn.length).toBe(new Set(care.map(careOf)).size + 1)
  })
})

test('a card that forgives has no mark and no line in the key', () => {
  for (const design of [dummy('heron-beak'), dummy('layers'), card(105, 148)]) {
    expect(tightest(design)).toEqual([])
    const marks = laid(design, { paper: 'a4' }).flatMap((page) => page.marks)
    expect(marks.filter(({ role }) => role === 'care')).toEqual([])
  }
})

test('where one size is like the other, none stands out; nor where the card fails already', () => {
  const reeds = (count: number): Design =>
    card(
      105,
      148,
      Array.from({ length: count }, (_, k) => ({
        id: `reed-${k}`,
        kind: 'cut-layer',
        on: 'gutter',
        start: 2 + (140 / count) * k,
        end: 2 + (140 / count) * (k + 0.7),
        left: 8,
        right: 8,
      })),
    )
  expect(tightest(reeds(25))).toEqual([])
  expect(tightest(reeds(200))).toEqual([])
  const { mechanisms, ...rest } = dummy('class-card')
  const broken = parseDesign({
    ...rest,
    mechanisms: mechanisms.map((m) => (m.id === 'moon' ? { ...m, ridge: 140 } : m)),
  })
  expect(fails(broken)).not.toEqual([])
  expect(tightest(broken)).toEqual([])
})
