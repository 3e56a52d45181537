/** How much of its host's length a mechanism takes, and the same mechanism farther along it or smaller. */
import type { AnyKind, Mechanism } from '../mechanisms/registry.ts'
import { kindOf } from '../mechanisms/registry.ts'
import type { Flat } from '../plane/lay.ts'
import { assign, read } from './change.ts'
import type { Design } from './design.ts'
import { ownerOf } from './name.ts'

/** From and to, along a crease, mm. */
export type Stretch = readonly [from: number, to: number]

/** The fields that say where along its host it lies. */
const placesOf = (kind: AnyKind): readonly string[] =>
  kind.sitsOn === 'panel'
    ? ['along']
    : kind.fields.flatMap(({ name, said }) => (said?.as === 'place' ? [name] : []))

const pointsOf = (m: Mechanism, name: string): readonly Flat[] =>
  (read(m, name) as readonly Flat[] | undefined) ?? []

/** The stretch of its host crease (or along its host panel) that a mechanism takes: folds, cuts and tabs, mm. */
export function stretchOf(m: Mechanism): Stretch {
  const kind = kindOf(m)
  const { span, notch, cuts, glue, panels } = kind.build(m)
  const stuck = kind.sitsOn === 'panel'
  const points: readonly Flat[] = [
    ...(notch ? [...notch.left, ...notch.right] : []),
    ...[...cuts.left, ...cuts.right].flat(),
    ...(glue ?? []).flatMap(({ panel, outline }) => (panel.startsWith('host') ? outline : [])),
    ...(stuck ? panels.flatMap(({ outline }) => outline) : []),
  ]
  const along = [...(stuck ? [] : span), ...points.map(([, there]) => there)]
  return [Math.min(...along), Math.max(...along)]
}

/** The same mechanism so many mm farther along its host, its sizes kept. */
export function shiftedAlong(m: Mechanism, by: number): Mechanism {
  const kind = kindOf(m)
  const fields = Object.fromEntries(placesOf(kind).map((name) => [name, Number(read(m, name) ?? 0) + by]))
  const points = kind.points.flatMap(({ name, onHost }) => {
    const list = pointsOf(m, name)
    return onHost && list.length > 0
      ? [[name, list.map(([across, along]): Flat => [across, along + by])] as const]
      : []
  })
  return { ...assign(m, fields), ...Object.fromEntries(points) }
}

/** Every length of it `k` times as long, its tabs as wide as they were. */
export function sizedBy(m: Mechanism, k: number): Mechanism {
  const kind = kindOf(m)
  const fields = Object.fromEntries(
    kind.fields.flatMap(({ name, unit, idle }): [string, number][] => {
      const value = read(m, name)
      return unit === 'mm' && !idle && typeof value === 'number' ? [[name, value * k]] : []
    }),
  )
  const points = kind.points.flatMap(({ name }) => {
    const list = pointsOf(m, name)
    return list.length > 0 ? [[name, list.map(([a, l]): Flat => [a * k, l * k])] as const] : []
  })
  const lists = (kind.lists ?? []).flatMap(({ name, unit }) => {
    const value = read(m, name)
    return unit === 'mm' && Array.isArray(value)
      ? [[name, (value as readonly number[]).map((one) => one * k)] as const]
      : []
  })
  return { ...assign(m, fields), ...Object.fromEntries([...points, ...lists]) }
}

/** From where to where a crease runs, or a panel reaches along its crease, mm; null if there is none of that name. */
export function runOf(design: Design, place: string): Stretch | null {
  const { height } = design.card
  if (place === 'gutter' || ownerOf(place) === 'page') return [0, height]
  const m = design.mechanisms.find(({ id }) => id === ownerOf(place))
  if (!m) return null
  const { creases, panels } = kindOf(m).build(m)
  const part = place.slice(m.id.length + 1)
  const crease = creases.find((one) => one.part === part && !one.hidden)
  if (crease) return [0, crease.length]
  const along = panels.find((one) => one.part === part)?.outline.map(([, there]) => there)
  return along ? [Math.min(...along), Math.max(...along)] : null
}

/** Paper left between neighbours, mm. */
const GAP = 2

/**
 * How far along its host a mechanism must go to lie within it and clear of all others there, the shortest way;
 * null if there is no such place.
 */
export function wayToRoom(design: Design, m: Mechanism): number | null {
  const run = runOf(design, m.on)
  if (!run) return null
  const [from, to] = stretchOf(m)
  const long = to - from
  const taken = design.mechanisms
    .filter((one) => one.on === m.on && one.id !== m.id)
    .map(stretchOf)
    .map(([a, b]): Stretch => [a - GAP, b + GAP])
  // It may stay, begin where another ends, end where another begins, or lie at either end of its host.
  const starts = [from, run[0], run[1] - long, ...taken.flatMap(([a, b]) => [b, a - long])]
  const fits = (start: number): boolean =>
    start >= run[0] - 1e-9 &&
    start + long <= run[1] + 1e-9 &&
    taken.every(([a, b]) => start + long <= a + 1e-9 || start >= b - 1e-9)
  const [nearest] = starts.filter(fits).sort((a, b) => Math.abs(a - from) - Math.abs(b - from))
  return nearest === undefined ? null : nearest - from
}
