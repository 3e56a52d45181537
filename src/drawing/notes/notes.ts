import type { Flat, Surface, Vec3 } from '../../paper/index.ts'
import { swing, tipAt } from '../../paper/index.ts'
import type { Wish } from '../pen/lettering.ts'
import { lengthText } from '../pen/numbers.ts'
import type { SectionBoard } from '../section/section.ts'
import { slices } from '../section/slices.ts'
import type { InkLine } from '../view/paper.ts'
import type { NoteBoard } from '../view/view.ts'

/** A point of a panel to be shown as a dot, with words. */
export interface Spot {
  readonly panel: string
  readonly flat: Flat
  readonly text?: string
  /** A handle is blue. */
  readonly handle?: boolean
  readonly of?: string
}

export interface Notes {
  /** Ids whose tip's path through the whole motion is shown. */
  readonly swing?: readonly string[]
  readonly spots?: readonly Spot[]
  /** Words at the tip of a mechanism, at the middle of a panel or along a crease, by their names. */
  readonly labels?: Readonly<Record<string, string>>
}

const middle = (points: readonly Vec3[]): Vec3 => {
  const sum: Vec3 = [0, 0, 0]
  for (const p of points)
    for (let k = 0; k < 3; k++) sum[k] = (sum[k] as number) + (p[k] as number) / points.length
  return sum
}

/** Notes to be put on a view. What the design does not have is passed over. */
export const notes =
  (options: Notes) =>
  ({ poser, pose, text, marks, wishes, ring, toScreen }: NoteBoard): void => {
    const { model } = poser
    const { design } = model
    const idOf = (id: string): number => design.mechanisms.findIndex((m) => m.id === id)
    for (const id of options.swing ?? []) {
      const index = idOf(id)
      if (index < 0) continue
      const run = swing(design, id).map(({ at: p }) => toScreen(p))
      marks.push({ mark: 'path', runs: [run], closed: false, role: 'swing', of: id })
    }

    for (const { panel, flat, text: words, handle, of } of options.spots ?? []) {
      const index = model.panels.findIndex((one) => one.name === panel)
      if (index < 0) continue
      const at = toScreen(poser.lift(index, flat))
      const role = handle ? 'handle' : 'dimension'
      marks.push({ mark: 'dot', at, radius: handle ? 8 : 5.5, role, ...(of === undefined ? {} : { of }) })
      ring(at, 9)
      if (words)
        wishes.push({
          text: words,
          role,
          size: text,
          bold: true,
          at,
          gap: 13,
          ...(of === undefined ? {} : { of }),
        })
    }

    for (const [of, words] of Object.entries(options.labels ?? {})) {
      const index = idOf(of)
      const crease = pose.creases[of]
      const panel = pose.panels[of]
      const p =
        index >= 0
          ? tipAt(poser, index)
          : crease
            ? middle([crease.start, crease.end])
            : panel
              ? middle(panel)
              : null
      if (!p) continue
      // On a panel or crease the word stands on its middle, at a tip beside it.
      const where: Partial<Wish> = index >= 0 ? { gap: 11 } : { gap: -0.5 * text, sides: ['above'] }
      wishes.push({ text: words, role: 'note', size: text, of, at: toScreen(p), gap: 0, ...where })
    }
  }

/** The line of a section on the paper, at a station in mm along the gutter. */
export const stationInk =
  (station: number) =>
  (paper: readonly Surface[]): readonly InkLine[] =>
    slices(paper, station).map(({ sheet, from, to }) => ({
      sheet,
      role: 'guide',
      points: [from, to],
      face: 'both',
      of: 'station',
    }))

/** The distance of a section's measured point from the gutter line. */
export function standOff({
  of,
  tip: [x, z],
  text,
  unit,
  marks,
  wishes,
  lines,
  toScreen,
}: SectionBoard): void {
  const a = toScreen([x, z])
  const gutter = toScreen([0, 0])
  const heads = Math.hypot(a[0] - gutter[0], a[1] - gutter[1]) > 30 ? { arrow: 'both' as const } : {}
  marks.push({
    mark: 'path',
    runs: [[gutter, a]],
    closed: false,
    role: 'guide',
    ...heads,
    of: `${of}/stand-off`,
  })
  lines.push([gutter, a])
  wishes.push({
    text: `stands off ${lengthText(Math.hypot(x, z), unit)}`,
    role: 'guide',
    size: text,
    of: `${of}/stand-off`,
    at: [(gutter[0] + a[0]) / 2, (gutter[1] + a[1]) / 2],
    gap: 8,
    sides: ['left', 'below-left', 'below-right'],
  })
}
