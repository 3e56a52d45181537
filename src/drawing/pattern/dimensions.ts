import type { Design, SheetHandle } from '../../paper/index.ts'
import { settingOf } from '../../paper/index.ts'
import type { Point } from '../pen/marks.ts'
import type { Board, Dimensions } from './pattern.ts'
import { honest, hostOf, labelOf, say, wanted } from './pattern.ts'

/** Lengths square to the host crease, as lines with heads beside what they measure. */
function measured(of: Dimensions['of'], design: Design, handles: readonly SheetHandle[], board: Board): void {
  const { creases, fromSheet, px, text, unit, marks, wishes } = board
  const done = new Set<string>()
  for (const handle of handles) {
    const { id, name, across, at, acrossWay, piece } = handle
    const m = design.mechanisms.find((one) => one.id === id)
    const field = m && across !== undefined ? labelOf(m, across) : undefined
    if (!m || !field || field.unit !== 'mm' || !wanted(of, id)) continue
    const value = settingOf(m, field.name)
    if (!(value > 0) || !honest(value, handle, hostOf(creases, m, piece))) continue
    const [a, b] = [
      fromSheet([at[0] - value * acrossWay[0], at[1] - value * acrossWay[1]], piece),
      fromSheet(at, piece),
    ]
    const place = `${a.map(Math.round)} ${b.map(Math.round)}`
    const same = `${id} ${field.name}`
    if (done.has(place) || done.has(same)) continue
    done.add(place).add(same)
    const reach = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1
    const [nx, ny] = [-(b[1] - a[1]) / reach, (b[0] - a[0]) / reach]
    const off = px(11) * (ny > 0 ? 1 : -1)
    const shift = (p: Point): Point => [p[0] + nx * off, p[1] + ny * off]
    const [from, to] = [shift(a), shift(b)]
    // A line too short for its heads goes without.
    const arrow = reach > px(26) ? { arrow: 'both' as const } : {}
    marks.push({
      mark: 'path',
      runs: [[from, to]],
      closed: false,
      role: 'dimension',
      ...arrow,
      of: `${id}/${name}`,
    })
    wishes.push({
      text: say(field, value, unit),
      role: 'dimension',
      size: text,
      bold: true,
      of: `${id}/${name}`,
      at: [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2],
      gap: px(4),
      sides: Math.abs(nx) > Math.abs(ny) ? ['right', 'left'] : ['below', 'above'],
    })
  }
}

/** Sizes on the flat sheet, for the ids given or for all. */
export const dimensions = (of: Dimensions['of'] = true): Dimensions => ({
  of,
  draw: (design, handles, board) => measured(of, design, handles, board),
})
