import { change } from './change.ts'
import type { Design } from './model.ts'
import type { Poser } from './pose.ts'
import { compile } from './pose.ts'
import { kindOf } from './registry.ts'
import type { Frame, Handle, Placed } from './types.ts'

/** A handle on the flat sheet (frame of `Piece`, mm). */
export interface SheetHandle {
  readonly id: string
  readonly name: string
  readonly label: string
  /** The field or derived number moved across the host crease, and the one moved along it. */
  readonly across?: string
  readonly along?: string
  readonly at: readonly [x: number, y: number]
  /** Unit directions on the sheet: away from the host crease, and along it. */
  readonly acrossWay: readonly [x: number, y: number]
  readonly alongWay: readonly [x: number, y: number]
}

const flatPoser = (design: Design): Poser => {
  const poser = compile(design)
  poser(180)
  return poser
}

/** Origin and unit ways of one side of a mechanism's host crease, on the flat sheet. */
function hostWays(poser: Poser, index: number, handle: Handle<Placed>) {
  const host = poser.frames[poser.model.builds[index]?.host ?? 0] as Frame
  const sign = handle.side === 'left' ? -1 : 1
  const [ox, oy, xx, xy, dx, dy] = [0, 1, 3, 4, 6, 7].map((k) => host[k] as number) as [
    number,
    number,
    number,
    number,
    number,
    number,
  ]
  return { origin: [ox, oy], across: [sign * xx, sign * xy], along: [dx, dy] } as const
}

/** Every point of the flat sheet that can be dragged. */
export function handlesOf(design: Design): readonly SheetHandle[] {
  const poser = flatPoser(design)
  return design.mechanisms.flatMap((m, index) =>
    kindOf(m).handles.map((handle): SheetHandle => {
      const { origin, across, along } = hostWays(poser, index, handle)
      const [a, l] = handle.at(m)
      return {
        id: m.id,
        name: handle.name,
        label: handle.label,
        ...(handle.across === undefined ? {} : { across: handle.across }),
        ...(handle.along === undefined ? {} : { along: handle.along }),
        at: [origin[0] + a * across[0] + l * along[0], origin[1] + a * across[1] + l * along[1]],
        acrossWay: across,
        alongWay: along,
      }
    }),
  )
}

/** To a tenth of a millimetre: what a careful hand can cut. */
const tenth = (value: number): number => Math.round(value * 10) / 10

/**
 * The design with a handle brought as near to a point of the flat sheet (mm) as it can go; fields are
 * rounded to 0.1. Throws a RangeError for an unknown handle.
 */
export function dragHandle(design: Design, id: string, name: string, to: readonly [number, number]): Design {
  const index = design.mechanisms.findIndex((m) => m.id === id)
  const m = design.mechanisms[index]
  const kind = m && kindOf(m)
  const handle = kind?.handles.find((h) => h.name === name)
  if (!m || !kind || !handle) throw new RangeError(`there is no handle ${id} ${name}`)
  const { origin, across, along } = hostWays(flatPoser(design), index, handle)
  const [x, y] = [to[0] - origin[0], to[1] - origin[1]]
  const wanted = handle.drag(m, [x * across[0] + y * across[1], x * along[0] + y * along[1]])
  const fields: Record<string, number> = {}
  for (const { name: field, min, max } of kind.fields) {
    const value = (wanted as Record<string, unknown>)[field]
    if (typeof value === 'number') fields[field] = tenth(Math.min(max, Math.max(min, value)))
  }
  return change(design, id, fields)
}
