import type { Design } from './model.ts'
import { modelOf, throughLay } from './model.ts'
import { compile } from './pose.ts'
import type { Flat, Piece, PieceLine } from './types.ts'

type Spot = readonly [x: number, y: number]

/** Two flat points nearer than this are one when lines are joined, mm. */
const SAME = 1e-7

const same = (a: Spot, b: Spot): boolean => Math.hypot(a[0] - b[0], a[1] - b[1]) < SAME

/** What is left of 0 to `length` when the spans are taken out. */
export function stretches(length: number, spans: readonly (readonly [number, number])[]): [number, number][] {
  const left: [number, number][] = []
  let from = 0
  for (const [a, b] of [...spans].sort((p, q) => p[0] - q[0])) {
    if (a - from > SAME) left.push([from, Math.min(a, length)])
    from = Math.max(from, b)
  }
  if (length - from > SAME) left.push([from, length])
  return left
}

/**
 * The flat pieces to print, mm: for cut mechanisms the card itself, lying open and seen from inside,
 * gutter on x = 0. Flat is the pose at 180 degrees: every line is where the sheet says, by construction.
 */
export function pieces(design: Design): readonly Piece[] {
  const model = modelOf(design)
  const poser = compile(design)
  const pose = poser(180)
  const { width, height } = design.card
  const spot = (panel: number, flat: Flat): Spot => {
    const [x, y] = poser.lift(panel, flat)
    return [x, y]
  }
  const outline: readonly Spot[] = [
    [-width, 0],
    [width, 0],
    [width, height],
    [-width, height],
  ]
  const lines: PieceLine[] = [{ kind: 'cut', points: outline, closed: true, of: 'page' }]
  model.creases.forEach((crease) => {
    const record = pose.creases[crease.name]
    if (!record || crease.length < SAME) return
    const at = (along: number): Spot => {
      const t = along / crease.length
      return [
        record.start[0] + t * (record.end[0] - record.start[0]),
        record.start[1] + t * (record.end[1] - record.start[1]),
      ]
    }
    const guests = crease.guests.map((index) => model.builds[index]?.build)
    const spans = guests.flatMap((build) => (build ? [build.span] : []))
    for (const [from, to] of stretches(crease.length, spans))
      lines.push({ kind: crease.fold, points: [at(from), at(to)], of: crease.name })
    for (const index of crease.guests) {
      const guest = model.builds[index]
      if (!guest) continue
      // Where the new ridge lies elsewhere, the old fold inside the strip is pressed flat again.
      const ridge = pose.creases[`${guest.mechanism.id}/ridge`]
      const [from, to] = guest.build.span
      const [a, b] = [at(from), at(to)]
      const off = ridge
        ? Math.abs((b[0] - a[0]) * (ridge.start[1] - a[1]) - (b[1] - a[1]) * (ridge.start[0] - a[0]))
        : 0
      if (off > SAME * (to - from)) lines.push({ kind: 'crease', points: [a, b], of: crease.name })
    }
  })
  for (const { mechanism, build, host } of model.builds) {
    const crease = model.creases[host]
    if (!crease) continue
    const side = (name: 'left' | 'right') =>
      build.cuts[name].map((line) => throughLay(crease[name].lay, line).map((flat) => spot(crease[name].panel, flat)))
    const right = side('right')
    for (const line of side('left')) {
      const twin = right.findIndex((other) => same(other[0] as Spot, line[0] as Spot))
      const joined = twin < 0 ? line : [...line.slice(1).reverse(), ...(right.splice(twin, 1)[0] as Spot[])]
      addCut(lines, joined, mechanism.id)
    }
    for (const line of right) addCut(lines, line, mechanism.id)
  }
  return [{ id: 'card', outline, lines }]
}

/** Adds a cut unless it is there already: two V-folds may share one slit. */
function addCut(lines: PieceLine[], points: readonly Spot[], of: string): void {
  const twice = lines.some(
    (line) =>
      line.kind === 'cut' &&
      line.points.length === points.length &&
      line.points.every((p, k) => same(p, points[k] as Spot)),
  )
  if (!twice) lines.push({ kind: 'cut', points, of })
}
