import * as says from '../../../content/words/fields.ts'
import type { Choice, Design, Flat, Placed } from '../../paper/index.ts'
import {
  change,
  fieldsFor,
  helpOn,
  kindOf,
  modelOf,
  nameOf,
  settable,
  settingOf,
  settled,
  sharedSlits,
} from '../../paper/index.ts'
import type { BenchConfig, FieldChoice } from './config.ts'
import type { LengthUnit, ValueUnit } from './format.ts'
import { large, shown, small } from './format.ts'
import { mechanismOf } from './mechanism-of.ts'
import { keptFields, withFields } from './settings.ts'
import type { BenchState } from './state.ts'
import { kept, leadOf, within } from './state.ts'

/** One number of the bench that a reader can set. */
export interface BenchField {
  /** `beak.cut`: what a link calls it. */
  readonly key: string
  readonly label: string
  readonly help: string
  /** From where it is measured, where the chapter says so. */
  readonly from?: string
  readonly unit: ValueUnit
  /** The range offered, both ends included. */
  readonly min: number
  readonly max: number
  get(state: BenchState): number
  /** The state with this value, or the nearest that the field's own rules allow. */
  set(state: BenchState, value: number): BenchState
}

/** One of a few states of a mechanism that a reader can choose. */
export interface BenchChoice {
  /** `moth.pop`: what a link calls it. */
  readonly key: string
  readonly label: string
  readonly help: string
  readonly options: readonly { readonly value: string | number; readonly says: string }[]
  get(state: BenchState): string | number
  set(state: BenchState, value: string | number): BenchState
}

/** What stands in the sentence for a value outside a field's range. */
export const refusal = (field: BenchField, length: LengthUnit): string =>
  says.goesFromTo(
    large(field.label),
    shown(field.min, field.unit, length),
    shown(field.max, field.unit, length),
  )

const withDesign = (state: BenchState, design: Design): BenchState => {
  const sound = settled(design)
  return sound ? { ...state, design: sound } : state
}

/** Half the card for what lies across the gutter, the whole host crease for what lies along it. */
function room(design: Design, m: Placed, name: string): number {
  const host = modelOf(design).creases.find((crease) => crease.name === m.on)
  const along = host?.length ?? design.card.height
  const isAcross = kindOf(m).handles.some((handle) => handle.across === name)
  return Math.ceil(m.on === 'gutter' && isAcross ? design.card.width : along)
}

function rangeOf(design: Design, m: Placed, choice: FieldChoice): readonly [min: number, max: number] {
  const field = settable(m).find(({ name }) => name === choice.field)
  if (!field) throw new RangeError(`${m.id} has no ${choice.field}`)
  const far = field.unit === 'deg' ? 180 : room(design, m, choice.field)
  return [Math.max(field.min, choice.min ?? -far), Math.min(field.max, choice.max ?? far)]
}

/** Setting the apex alone leaves the slit where it is, as dragging it does. */
function fieldsToSet(m: Placed, name: string, value: number) {
  const handle = kindOf(m).handles.find((one) => one.name === name && one.along === name)
  if (!handle) return fieldsFor(m, name, value)
  const [across] = handle.at(m)
  return handle.drag(m, [across, value])
}

function mechanismField(design: Design, choice: FieldChoice, several: boolean): BenchField {
  const m = mechanismOf(design, choice.id)
  const [min, max] = rangeOf(design, m, choice)
  const { label, unit } = settable(m).find(({ name }) => name === choice.field) ?? {
    label: choice.field,
    unit: 'mm' as const,
  }
  return {
    key: `${choice.id}.${choice.field}`,
    label: choice.label ?? (several ? `${large(nameOf(choice.id))}: ${small(label)}` : label),
    help: helpOn(kindOf(m), choice.field),
    ...(choice.from === undefined ? {} : { from: choice.from }),
    unit,
    min,
    max,
    get: (state) => settingOf(mechanismOf(state.design, choice.id), choice.field),
    set(state, value) {
      const now = mechanismOf(state.design, choice.id)
      const fields = fieldsToSet(now, choice.field, within(value, min, max))
      return withDesign(state, change(state.design, choice.id, keptFields(fields)))
    },
  }
}

const pointHelp = {
  across: says.toGutterHelp,
  along: says.toLowerEdgeHelp,
} as const

/** `across` or `along` of the point of a bare card. */
function pointField(design: Design, choice: FieldChoice): BenchField {
  const which = choice.field === 'along' ? 'along' : 'across'
  const index = which === 'across' ? 0 : 1
  const [min, max] = [choice.min ?? 0, choice.max ?? (index === 0 ? design.card.width : design.card.height)]
  return {
    key: `point.${which}`,
    label: choice.label ?? (index === 0 ? says.toGutter : says.toLowerEdge),
    help: pointHelp[which],
    unit: 'mm',
    min,
    max,
    get: (state) => state.point?.[index] ?? 0,
    set(state, value) {
      if (!state.point) return state
      const there = kept(within(value, min, max))
      const point: Flat = index === 0 ? [there, state.point[1]] : [state.point[0], there]
      return { ...state, point }
    },
  }
}

/** What the lead offers if the chapter does not choose: all its numbers, and its twin's apex. */
function everyField(design: Design, config: BenchConfig): readonly FieldChoice[] {
  if (config.point)
    return [
      { id: 'point', field: 'across' },
      { id: 'point', field: 'along' },
    ]
  const lead = leadOf(design, config)
  if (!lead) return []
  const index = design.mechanisms.indexOf(lead)
  const twin = sharedSlits(design).find((pair) => pair.includes(index))
  const other = twin && design.mechanisms[twin[0] === index ? twin[1] : twin[0]]
  const own = settable(lead).map(({ name }) => ({ id: lead.id, field: name }))
  return other ? [...own, { id: other.id, field: 'apex' }] : own
}

const choiceNamed = (m: Placed, name: string): Choice | undefined =>
  kindOf(m).choices?.find((choice) => choice.name === name)

/** A choice's value as the design has it; the kind's first where the file does not say. */
export const chosen = (m: Placed, { name, values }: Choice): string | number => {
  const value = (m as unknown as Record<string, unknown>)[name]
  return typeof value === 'string' || typeof value === 'number' ? value : (values[0] ?? '')
}

/** The states a bench lets the reader choose, in order: those of the chapter's fields that are no numbers. */
export function benchChoices(design: Design, config: BenchConfig): readonly BenchChoice[] {
  return (config.fields ?? []).flatMap(({ id, field, label }): BenchChoice[] => {
    const choice = id === 'point' ? undefined : choiceNamed(mechanismOf(design, id), field)
    if (!choice) return []
    return [
      {
        key: `${id}.${field}`,
        label: label ?? choice.label,
        help: helpOn(kindOf(mechanismOf(design, id)), field),
        options: choice.values.map((value, k) => ({ value, says: choice.words[k] ?? String(value) })),
        get: (state) => chosen(mechanismOf(state.design, id), choice),
        set: (state, value) => withDesign(state, withFields(state.design, id, { [field]: value })),
      },
    ]
  })
}

/** The numbers a bench offers, in order. Throws a RangeError if the chapter names one that is not there. */
export function benchFields(design: Design, config: BenchConfig): readonly BenchField[] {
  const choices = (config.fields ?? everyField(design, config)).filter(
    ({ id, field }) => id === 'point' || !choiceNamed(mechanismOf(design, id), field),
  )
  const several = new Set(choices.map(({ id }) => id)).size > 1
  return choices.map((choice) =>
    choice.id === 'point' ? pointField(design, choice) : mechanismField(design, choice, several),
  )
}
