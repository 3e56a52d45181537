import { change, held, settled } from '../design/change.ts'
import type { Design } from '../design/design.ts'
import type { Handle, Placed } from '../mechanisms/kind.ts'
import { kindOf } from '../mechanisms/registry.ts'
import type { Lay } from '../plane/lay.ts'
import { compose, laid, MIRROR, sameLay, unlaid } from '../plane/lay.ts'
import type { Model, ModelBuild, ModelCrease, ModelPanel } from './model.ts'
import { modelOf } from './model.ts'

/** A handle on the flat sheet (frame of `Piece`, mm). */
export interface SheetHandle {
  readonly id: string
  /** The flat piece it lies on: `card`, or a glued piece. */
  readonly piece: string
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

/** The flat piece a handle lies on, and how its coordinates lie there. */
function ground(model: Model, index: number, handle: Handle<Placed>): { piece: string; lay: Lay } {
  const { mechanism, host, hostPanel } = model.builds[index] as ModelBuild
  if (handle.piece !== undefined) {
    const piece = `${mechanism.id}/${handle.piece}`
    const mirrored = model.pieces.some(({ id, mirrored }) => id === piece && mirrored)
    return { piece, lay: mirrored ? MIRROR : sameLay }
  }
  const crease = model.creases[host] as ModelCrease
  const { panel, lay } =
    hostPanel === undefined ? crease[handle.side ?? 'right'] : { panel: hostPanel, lay: sameLay }
  const { piece, onPiece } = model.panels[panel] as ModelPanel
  return { piece: model.pieces[piece]?.id ?? 'card', lay: compose(onPiece, lay) }
}

/** Every point of the flat sheet that can be dragged. */
export function handlesOf(design: Design): readonly SheetHandle[] {
  const model = modelOf(design)
  return design.mechanisms.flatMap((m, index) =>
    kindOf(m).handles.map((handle): SheetHandle => {
      const { piece, lay } = ground(model, index, handle)
      return {
        id: m.id,
        piece,
        name: handle.name,
        label: handle.label,
        ...(handle.across === undefined ? {} : { across: handle.across }),
        ...(handle.along === undefined ? {} : { along: handle.along }),
        at: laid(lay, handle.at(m)),
        acrossWay: lay.off,
        alongWay: lay.run,
      }
    }),
  )
}

/** To a tenth of a millimetre: what a careful hand can cut. */
const tenth = (value: number): number => Math.round(value * 10) / 10

/**
 * The design with a handle brought as near to a point of the flat sheet (mm) as it can go, and to what a
 * file may hold; fields are rounded to 0.1. Throws a RangeError for an unknown handle.
 */
export function dragHandle(design: Design, id: string, name: string, to: readonly [number, number]): Design {
  const index = design.mechanisms.findIndex((m) => m.id === id)
  const m = design.mechanisms[index]
  const kind = m && kindOf(m)
  const handle = kind?.handles.find((h) => h.name === name)
  if (!m || !kind || !handle) throw new RangeError(`there is no handle ${id} ${name}`)
  const wanted = handle.drag(m, unlaid(ground(modelOf(design), index, handle).lay, to))
  const fields = Object.entries(held(m, wanted)).flatMap(([field, value]): [string, number][] =>
    typeof value === 'number' ? [[field, tenth(value)]] : [],
  )
  return settled(change(design, id, Object.fromEntries(fields))) ?? design
}
