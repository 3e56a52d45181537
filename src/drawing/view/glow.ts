/** By night a flame that is drawn on the paper lights the paper round it. */
import type { Design, Flat, Poser, Vec3 } from '../../paper/index.ts'
import { dot, subtract } from '../../paper/plane/vector.ts'
import type { PathMark, Point } from '../pen/marks.ts'
import { GLOW_REACH } from '../pen/svg-values.ts'
import type { Lens } from './camera.ts'
import type { Receiver } from './shadows.ts'

/** The middle of a flame on a panel (index into the model's). */
interface Flame {
  readonly panel: number
  readonly at: Flat
}

const known = new WeakMap<Design, readonly Flame[]>()

const middleOf = (points: readonly Flat[]): Flat => [
  points.reduce((sum, [x]) => sum + x, 0) / points.length,
  points.reduce((sum, [, y]) => sum + y, 0) / points.length,
]

function flamesOf({ model }: Poser): readonly Flame[] {
  const { design, panels } = model
  let found = known.get(design)
  if (!found) {
    found = (design.art ?? []).flatMap(({ on, also, shape, fill, glows }) =>
      glows && fill === 'flame'
        ? [on, ...also].map((name) => ({
            panel: panels.findIndex((panel) => panel.name === name),
            at: middleOf(shape),
          }))
        : [],
    )
    known.set(design, found)
  }
  return found
}

/**
 * Where a design's light is at the pose last taken, in the table's frame: amid its flames; null where none burns.
 * Where a part alone is `lit`, so are its flames.
 */
export function flameAt(poser: Poser, place: (p: Vec3) => Vec3, lit?: ReadonlySet<string>): Vec3 | null {
  const burning = flamesOf(poser).filter(
    ({ panel }) => !lit || lit.has(poser.model.panels[panel]?.name.split('/')[0] ?? ''),
  )
  const points = burning.map(({ panel, at }) => place(poser.lift(panel, at)))
  return points.length === 0
    ? null
    : ([0, 1, 2].map(
        (n) => points.reduce((sum, p) => sum + (p[n] as number), 0) / points.length,
      ) as unknown as Vec3)
}

/** The light at a surface this far off is half of the paper's own colour, mm. */
const HALF = 42

/** What lies nearer is lit no brighter, mm. */
const NEAREST = 9

/** Less is not seen. */
const FAINTEST = 0.035

const BRIGHTEST = 0.96

/** How far a flame is seen to shine in the air round it, mm, and how strongly. */
const HAZE = { radius: 95, strength: 0.34 } as const

/** The haze of light round a flame, over all that is drawn. */
export function hazeOf(flame: Vec3, { toScreen, right }: Lens): PathMark {
  const [x, y] = toScreen(flame)
  const beside = toScreen([flame[0] + right[0], flame[1] + right[1], flame[2] + right[2]])
  const r = HAZE.radius * Math.hypot(beside[0] - x, beside[1] - y)
  return {
    mark: 'path',
    runs: [
      [
        [x - r, y - r],
        [x + r, y - r],
        [x + r, y + r],
        [x - r, y + r],
      ],
    ],
    closed: true,
    role: 'haze',
    strength: HAZE.strength,
    fade: { kind: 'glow', matrix: [r, 0, 0, r, x, y] },
  }
}

/** The flame's light on the seen side of a surface; null where the flame is behind it, or too far off. */
export function glowOn(flame: Vec3, on: Receiver, toScreen: Lens['toScreen']): PathMark | null {
  const height = dot(subtract(flame, on.origin), on.normal)
  if (height < 1) return null
  const h = Math.max(NEAREST, height)
  // How much of the light is left where it falls straight, and on the nearest place that the surface really has.
  const foot = flame.map((x, n) => x - height * (on.normal[n] as number)) as unknown as Vec3
  const [fu, fv] = [dot(subtract(foot, on.origin), on.u), dot(subtract(foot, on.origin), on.v)]
  const [u0, v0, u1, v1] = on.box
  const aside = Math.hypot(Math.max(0, u0 - fu, fu - u1), Math.max(0, v0 - fv, fv - v1))
  const strength = Math.min(BRIGHTEST, 0.5 * (HALF / h) ** 2)
  if (aside > GLOW_REACH * h || strength * (1 + (aside / h) ** 2) ** -1.5 < FAINTEST) return null
  const at = (a: number, b: number): Point =>
    toScreen(
      [0, 1, 2].map(
        (n) => (foot[n] as number) + a * (on.u[n] as number) + b * (on.v[n] as number),
      ) as unknown as Vec3,
    )
  const reach = GLOW_REACH * h
  const [o, p, q] = [at(0, 0), at(reach, 0), at(0, reach)]
  // Seen from near, the far half of a round is shorter than the near one: the mean of both is drawn.
  const [m, n] = [at(-reach, 0), at(0, -reach)]
  const [a, b, c, d] = [(p[0] - m[0]) / 2, (p[1] - m[1]) / 2, (q[0] - n[0]) / 2, (q[1] - n[1]) / 2]
  return {
    mark: 'path',
    runs: [[at(-reach, -reach), at(reach, -reach), at(reach, reach), at(-reach, reach)]],
    closed: true,
    role: 'glow',
    strength,
    fade: { kind: 'glow', matrix: [a, b, c, d, o[0], o[1]] },
  }
}
