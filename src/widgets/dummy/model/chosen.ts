import * as says from '../../../../content/words/dummy/places.ts'
import type { Design, Mechanism, Model } from '../../../paper/index.ts'
import { kindOf, modelOf, nameOf, ownerOf as nameOwner, settable } from '../../../paper/index.ts'
import type { BenchConfig, FieldChoice } from '../../state/config.ts'

/** What a maker has taken up: a fold or a face to build on, or a part to change. A fold and a face may share a name. */
export interface Chosen {
  readonly what: 'fold' | 'face' | 'part'
  /** The kernel's name of a crease or panel, or a mechanism's id. */
  readonly name: string
}

export const sameThing = (a: Chosen | null, b: Chosen | null): boolean =>
  a?.what === b?.what && a?.name === b?.name

/** The mechanism that a thing belongs to; undefined: the card itself. */
export function ownerOf(design: Design, chosen: Chosen | null): Mechanism | undefined {
  if (!chosen) return undefined
  const id = chosen.what === 'part' ? chosen.name : nameOwner(chosen.name)
  return design.mechanisms.find((m) => m.id === id)
}

/** Whether a thing is still there: a mechanism may have been removed or renamed. */
export function isThere(design: Design, { what, name }: Chosen): boolean {
  const { creases, panels } = modelOf(design)
  if (what === 'part') return design.mechanisms.some((m) => m.id === name)
  if (what === 'fold') return creases.some((crease) => crease.name === name && !crease.hidden)
  return panels.some((panel) => panel.name === name)
}

/** The part of its owner that a crease or panel is: `ridge` of `owl/ridge`; empty for the gutter. */
const partOf = (name: string): string => name.slice(nameOwner(name).length + 1)

/** What a thing is called in a sentence: `the gutter`, `the left fold of the owl`. */
export function called({ what, name }: Chosen): string {
  if (what === 'part') return says.part(nameOf(name))
  if (name === 'gutter') return says.gutter
  const id = nameOwner(name)
  const part = partOf(name)
  const word = says.sides[part] ?? nameOf(part)
  if (id === 'page') return says.page(word)
  if (what === 'face') return part === 'face' ? says.pieceFace(nameOf(id)) : says.faceOf(word, nameOf(id))
  return part === 'ridge' ? says.ridgeOf(nameOf(id)) : says.foldOf(word, nameOf(id))
}

/** The same in a list under its owner: `ridge`, `left fold`, `right face`. */
export function calledHere({ what, name }: Chosen): string {
  const part = partOf(name) || name
  if (part === 'ridge') return says.ridge
  if (part === 'face') return says.itsFace
  const word = says.sides[part] ?? nameOf(part)
  return what === 'fold' ? says.sideFold(word) : says.sideFace(word)
}

/** The folds and faces that belong to a mechanism, in the model's order; to the card itself if left out. */
export function placesOf(model: Model, id?: string): readonly Chosen[] {
  const owner = id === undefined ? -1 : model.builds.findIndex(({ mechanism }) => mechanism.id === id)
  if (id !== undefined && owner < 0) return []
  return [
    ...model.creases
      .filter((crease) => crease.owner === owner && !crease.hidden)
      .map(({ name }): Chosen => ({ what: 'fold', name })),
    ...model.panels
      .filter((panel) => panel.owner === owner)
      .map(({ name }): Chosen => ({ what: 'face', name })),
  ]
}

/** A maker's sizes go so far past the longer side of the card: what is too large is told and mended, not refused. */
const TOO_LARGE = 1.25

/** Everything of a mechanism that can be set, choices first. */
function everySetting(m: Mechanism, { width, height }: Design['card']): readonly FieldChoice[] {
  const far = Math.ceil(TOO_LARGE * Math.max(width, height))
  const choices = (kindOf(m).choices ?? []).map(({ name }): FieldChoice => ({ id: m.id, field: name }))
  const sizes = settable(m).map(
    ({ name, unit }): FieldChoice =>
      unit === 'mm' ? { id: m.id, field: name, min: -far, max: far } : { id: m.id, field: name },
  )
  return [...choices, ...sizes]
}

/** What the bench offers for the thing taken up: the sizes, handles and readings of its owner. */
export function configFor(design: Design, chosen: Chosen | null): BenchConfig {
  const owner = ownerOf(design, chosen)
  const look = { camera: { turn: -24, tilt: 34 }, opening: 100 }
  if (!owner) return { ...look, fields: [], handles: [] }
  const handles = kindOf(owner).handles.map(({ name }) => ({ id: owner.id, handle: name }))
  return { ...look, lead: owner.id, fields: everySetting(owner, design.card), handles }
}
