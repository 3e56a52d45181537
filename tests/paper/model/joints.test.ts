// Which face is glued, and how a tab is folded, against the pose: the tab as a plate that the fold turns
// into the plane of what it is glued on. By hand: x, y and the front's normal of a flat piece are right-handed.
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Design, Joint, Vec3 } from '../../../src/paper/index.ts'
import { jointsOf, modelOf, pieces, poseAt } from '../../../src/paper/index.ts'
import { design, designs, gluedMoth, gluedPond, runs, vFold } from '../shared/designs.ts'

const minus = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]

const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
]

const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]

const unit = (a: Vec3): Vec3 => {
  const long = Math.sqrt(dot(a, a))
  return [a[0] / long, a[1] / long, a[2] / long]
}

const middle = (points: readonly Vec3[]): Vec3 => {
  const sum = points.reduce<Vec3>((a, b) => [a[0] + b[0], a[1] + b[1], a[2] + b[2]], [0, 0, 0])
  return [sum[0] / points.length, sum[1] / points.length, sum[2] / points.length]
}

type Spot = readonly [number, number]

/** Takes a flat piece's plane into space by three corners of a panel: a point, and the front's normal. */
function plate(made: Design, pose: ReturnType<typeof poseAt>, panel: number) {
  const { name, outline, onPiece } = modelOf(made).panels[panel] ?? {}
  const corners = pose.panels[name ?? ''] ?? []
  const flat = (outline ?? []).map(([a, l]): Spot => {
    const { origin, run, off } = onPiece ?? { origin: [0, 0], run: [0, 0], off: [0, 0] }
    return [origin[0] + l * run[0] + a * off[0], origin[1] + l * run[1] + a * off[1]]
  })
  for (let i = 1; i < flat.length; i++)
    for (let k = i + 1; k < flat.length; k++) {
      const [[ox, oy] = [0, 0], [px, py] = [0, 0], [qx, qy] = [0, 0]] = [flat[0], flat[i], flat[k]]
      const area = (px - ox) * (qy - oy) - (py - oy) * (qx - ox)
      if (Math.abs(area) < 1) continue
      const [o, p, q] = [corners[0], corners[i], corners[k]] as [Vec3, Vec3, Vec3]
      const [u, v] = [minus(p, o), minus(q, o)]
      const normal = unit(cross(u, v))
      const at = ([x, y]: Spot): Vec3 => {
        const s = ((x - ox) * (qy - oy) - (y - oy) * (qx - ox)) / area
        const t = ((px - ox) * (y - oy) - (py - oy) * (x - ox)) / area
        return [o[0] + s * u[0] + t * v[0], o[1] + s * u[1] + t * v[1], o[2] + s * u[2] + t * v[2]]
      }
      return { at, normal: (area > 0 ? normal : [-normal[0], -normal[1], -normal[2]]) as Vec3, corners }
    }
  return null
}

/** What the pose says of a joint; null where it cannot tell (a mechanism at its stop, or flat). */
function seen(made: Design, joint: Joint, index: number, opening: number) {
  const pose = poseAt(made, opening)
  // Past shut a part would lie through its page: no paper does.
  const past = Object.values(pose.creases).some(({ angle }) => angle < 0 || angle > 180)
  if (pose.stopped.length > 0 || past || !joint.line) return null
  const model = modelOf(made)
  const glue = model.glue[index]
  const crease = model.creases.find(({ name }) => name === joint.of)
  if (!glue || !crease) return null
  const ownPanel = crease.left.panel === glue.panel ? crease.right.panel : crease.left.panel
  const [host, own] = [plate(made, pose, glue.panel), plate(made, pose, ownPanel)]
  if (!host || !own) return null
  const [a, b] = [host.at(joint.line.host[0]), host.at(joint.line.host[1])]
  const [c, d] = [own.at(joint.line.own[0]), own.at(joint.line.own[1])]
  const along = unit(minus(b, a))
  const up = dot(minus(middle(own.corners), a), host.normal)
  if (Math.abs(up) < 0.5) return null
  const outlineMiddle = middle(joint.host.points.map(host.at))
  /** From the joint into the tab, in the plane of the host. */
  const into = (() => {
    const v = minus(outlineMiddle, a)
    const s = dot(v, along)
    return minus(v, [along[0] * s, along[1] * s, along[2] * s])
  })()
  const risesTo = dot(into, own.normal)
  return {
    apart: Math.max(Math.hypot(...minus(a, c)), Math.hypot(...minus(b, d))),
    host: up > 0 ? 'front' : 'back',
    // The tab is folded towards the side on which it comes to lie: a valley as seen from there.
    fold: risesTo > 0 ? 'valley' : 'mountain',
    sure: Math.abs(risesTo) > 0.2,
  }
}

const tabbed = (): readonly Design[] => [
  design([
    gluedMoth({ tab: 8 }),
    gluedMoth({ id: 'low', apex: 30, toward: -1, tab: 6, foot: 20, ridge: 20 }),
  ]),
  design([gluedMoth({ tab: 8, side: 'outside', base: 60, facet: 80 })]),
  design([gluedMoth({ tab: 8, base: 120, facet: 130, ridge: 20 })]),
  design([
    { ...gluedPond, tab: 8 },
    gluedMoth({ id: 'lily', on: 'pond/ridge', apex: 10, foot: 15, ridge: 15, tab: 4 }),
  ]),
  // No room for tabs outside: under the platform they turn inwards.
  design([{ ...gluedPond, tab: 8, walls: [-28, 28] }]),
  design([
    vFold('beak', 'gutter', 110, -60, 50),
    gluedMoth({ id: 'tuft', on: 'beak/ridge', apex: 10, foot: 20, ridge: 20, tab: 5 }),
  ]),
  design([
    vFold('beak', 'gutter', 110, -60, 50),
    gluedMoth({
      id: 'tuft',
      on: 'beak/ridge',
      side: 'outside',
      apex: 10,
      foot: 20,
      ridge: 20,
      base: 60,
      facet: 80,
      tab: 5,
    }),
  ]),
]

describe('a joint', () => {
  test('is told as the pose has it', () => {
    let told = 0
    for (const made of tabbed())
      for (const [k, joint] of jointsOf(made).entries()) {
        const found = [90, 60, 120, 40]
          .map((opening) => seen(made, joint, k, opening))
          .find((one) => one?.sure)
        if (!found) continue
        told += 1
        expect(found.apart).toBeLessThan(1e-6)
        expect({ of: joint.of, host: joint.host.face, fold: joint.fold }).toEqual({
          of: joint.of,
          host: found.host,
          fold: found.fold,
        })
        // Folded like a valley, the front of the tab looks up: it is glued by its back.
        expect(joint.own.face).toBe(joint.fold === 'valley' ? 'back' : 'front')
      }
    expect(told).toBeGreaterThan(16)
  })

  test('of random designs too', () => {
    let told = 0
    fc.assert(
      fc.property(
        designs({ most: 3, kinds: ['glued-v-fold', 'glued-tent', 'cut-v-fold'] }).map((made) =>
          design(
            made.mechanisms.map((m) => (m.kind.startsWith('glued') ? { ...m, tab: 5 } : m)),
            made.card,
          ),
        ),
        (made) => {
          for (const [k, joint] of jointsOf(made).entries()) {
            const found = seen(made, joint, k, 90)
            if (!found?.sure) continue
            told += 1
            expect(joint.host.face).toBe(found.host)
            expect(joint.fold).toBe(found.fold)
          }
        },
      ),
      runs(300),
    )
    expect(told).toBeGreaterThan(50)
  })

  test('has its tab folded on the sheet as it is told', () => {
    for (const made of tabbed())
      for (const { own, fold, line } of jointsOf(made)) {
        const lines = pieces(made).find(({ id }) => id === own.piece)?.lines ?? []
        const same = (a: Spot | undefined, b: Spot | undefined): boolean =>
          Math.hypot((a?.[0] ?? 0) - (b?.[0] ?? 9), (a?.[1] ?? 0) - (b?.[1] ?? 9)) < 1e-6
        const printed = lines.filter(
          ({ kind, points: [p, q, more] }) =>
            (kind === 'valley' || kind === 'mountain') &&
            !more &&
            ((same(p, line?.own[0]) && same(q, line?.own[1])) ||
              (same(q, line?.own[0]) && same(p, line?.own[1]))),
        )
        expect(printed.map(({ kind }) => kind)).toEqual([fold])
      }
  })

  test('of a piece stuck flat on a face is by its back, wherever it is', () => {
    const star = {
      id: 'star',
      kind: 'rider',
      on: 'page/left',
      shape: [
        [10, 10],
        [30, 10],
        [30, 30],
      ],
      glue: [
        [15, 12],
        [28, 12],
        [28, 20],
      ],
    }
    const [joint] = jointsOf(design([star]))
    expect(joint).toMatchObject({
      of: 'star',
      host: { piece: 'card', face: 'front' },
      own: { piece: 'star/piece', face: 'back' },
      fold: null,
      line: null,
    })
    expect(joint?.own.points).toHaveLength(3)
  })
})
