// One picture, all media: the screen's flat sheet, the PDF and the SVG hold the same lines.
import { describe, expect, test } from 'vitest'
import { pattern } from '../../src/drawing/pattern/pattern.ts'
import type { Point } from '../../src/drawing/pen/marks.ts'
import { fontOnDisk } from '../../src/sheet/files/font-on-disk.ts'
import { sheetPdf, sheetSvg } from '../../src/sheet/index.ts'
import { looks } from '../../src/sheet/marks/looks.ts'
import { dummy, laid } from './designs.ts'
import { readPdf } from './read-pdf.ts'

const font = await fontOnDisk()

const UNIT = 72 / 25.4

/** Lines as text: role, and points to a hundredth of a millimetre, from whichever end comes first. */
type Line = { readonly role: string; readonly points: readonly Point[] }

const near = (a: Line, b: Line, within: number): boolean => {
  if (a.role !== b.role || a.points.length !== b.points.length) return false
  return a.points.every(
    ([x, y], k) => Math.hypot(x - (b.points[k]?.[0] ?? 0), y - (b.points[k]?.[1] ?? 0)) <= within,
  )
}

const unmatched = (from: readonly Line[], to: readonly Line[], within: number): Line[] =>
  from.filter((line) => !to.some((other) => near(line, other, within)))

/** What is cut and folded. How glue is marked depends on the medium: a sheet has a face that is printed. */
const ROLES = new Set(['cut', 'valley', 'mountain', 'crease'])

/** On paper the dots of an old fold stop at each cut that crosses it: its parts are one line again. */
const whole = (lines: readonly Line[]): Line[] =>
  lines.reduce<Line[]>((all, line) => {
    const isNext = ({ role, points }: Line): boolean => {
      const [p, q, a, b] = [points[0], points.at(-1), line.points[0], line.points.at(-1)] as Point[]
      if (role !== 'crease' || line.role !== 'crease' || !p || !q || !a || !b) return false
      const off = (q[0] - p[0]) * (b[1] - p[1]) - (q[1] - p[1]) * (b[0] - p[0])
      return Math.hypot(q[0] - a[0], q[1] - a[1]) < 1e-6 && Math.abs(off) < 1e-6
    }
    const before = all.findIndex(isNext)
    if (before < 0) return all.concat(line)
    const joined = { role: line.role, points: [all[before]?.points[0], line.points.at(-1)] as Point[] }
    return all.map((one, k) => (k === before ? joined : one))
  }, [])

type SheetFace = 'inside' | 'outside'

const optionsOf = (face: SheetFace) => ({ paper: 'a4', lines: face === 'inside' ? 'front' : 'back' }) as const

/** The lines of the card on the first page, in mm from the gutter's reader's end. */
function sheetLines(name: string, face: SheetFace): Line[] {
  const [page] = laid(dummy(name), optionsOf(face))
  const [ox = 0, oy = 0] = page?.placed[0]?.place.origin ?? []
  return (page?.marks ?? []).flatMap((mark) =>
    mark.mark === 'path' && ROLES.has(mark.role) && mark.of !== 'legend'
      ? mark.runs.map((run) => ({ role: mark.role, points: run.map(([x, y]): Point => [x - ox, oy - y]) }))
      : [],
  )
}

function screenLines(name: string, face: SheetFace): Line[] {
  const design = dummy(name)
  const drawing = pattern(design, { width: 900, height: 700 }, { face, legend: false })
  const hand = face === 'inside' ? 1 : -1
  return drawing.marks.flatMap((mark) => {
    if (mark.mark !== 'path') return []
    const role = mark.role === 'edge' ? 'cut' : mark.role
    return ROLES.has(role)
      ? mark.runs.map((run) => ({
          role,
          points: run.map((p): Point => {
            const [x, y] = drawing.toSheet(p)
            return [hand * x, y]
          }),
        }))
      : []
  })
}

/** The paths of the SVG as another XML reader would find them, in its user units. */
function svgLines(name: string, face: SheetFace): Line[] {
  const [text = ''] = sheetSvg(dummy(name), optionsOf(face))
  const [page] = laid(dummy(name), optionsOf(face))
  const [ox = 0, oy = 0] = page?.placed[0]?.place.origin ?? []
  return [
    ...text.matchAll(/<path (?:style="[^"]*" )?class="m-([a-z]+)[^"]*" data-of="([^"]*)" d="([^"]*)"/g),
  ].flatMap(([, role = '', of = '', d = '']) =>
    ROLES.has(role) && of !== 'legend'
      ? d
          .split('M')
          .slice(1)
          .map((run) => ({
            role,
            points: run
              .replace('Z', '')
              .split('L')
              .map((pair): Point => {
                const [x = Number.NaN, y = Number.NaN] = pair.split(' ').map(Number)
                return [x - ox, oy - y]
              }),
          }))
      : [],
  )
}

/** The lines of the PDF, their role told by their dash pattern alone. */
async function pdfLines(name: string, face: SheetFace): Promise<Line[]> {
  const design = dummy(name)
  const read = await readPdf(await sheetPdf(design, optionsOf(face), font))
  const [page] = laid(design, optionsOf(face))
  const [ox = 0, oy = 0] = page?.placed[0]?.place.origin ?? []
  const height = page?.box[3] ?? 0
  return (read.pages[0]?.lines ?? []).flatMap(({ runs, dash, width }) => {
    // The dashes of a fold give way to its dots and gaps where it is short: how many parts they have tells it. The dots
    // of an old one are always of their own size.
    const role = Object.entries(looks).find(
      ([name, look]) =>
        Math.abs(look.width * UNIT - width) < 0.001 &&
        look.dash.length === dash.length &&
        (ROLES.has(name)
          ? name !== 'crease' || Math.abs((look.dash[0] ?? 0) * UNIT - (dash[0] ?? 0)) < 0.001
          : look.dash.every(
              (mm, k) => Math.abs(mm / (look.dash[0] ?? 1) - (dash[k] ?? 0) / (dash[0] ?? 1)) < 0.001,
            )),
    )?.[0]
    return role === undefined
      ? []
      : runs.map((run) => ({
          role,
          points: run.map(([x, y]): Point => [x / UNIT - ox, oy - (height - y / UNIT)]),
        }))
  })
}

/** A PDF is written and read: slow on a busy machine. */
const SLOW = 30_000

describe.each(['heron', 'lantern', 'reeds'])('the %s', { timeout: SLOW }, (name) => {
  test.each(['inside', 'outside'] as const)('%s: screen, SVG and PDF agree to 0.01 mm', async (face) => {
    const sheet = sheetLines(name, face)
    expect(sheet.length).toBeGreaterThan(8)
    const screen = screenLines(name, face)
    expect(unmatched(whole(sheet), screen, 0.01)).toEqual([])
    expect(unmatched(screen, whole(sheet), 0.01)).toEqual([])
    const svg = svgLines(name, face)
    expect(svg.length).toBe(sheet.length)
    expect(unmatched(sheet, svg, 0.01)).toEqual([])
    expect(unmatched(sheet, await pdfLines(name, face), 0.01)).toEqual([])
  })
})
