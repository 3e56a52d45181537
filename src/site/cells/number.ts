import type { Design } from '../../paper/index.ts'
import {
  broughtIn,
  cardFields,
  change,
  settingOf as fieldValue,
  highest,
  measure,
  openingRange,
  openingStops,
  opensTo,
  pagePoint,
  partMargin,
  poseAt,
  settable,
  thickest,
} from '../../paper/index.ts'

/** What a number in the prose asks of the kernel. Lengths in mm, angles in degrees. */
export interface Ask {
  readonly of: string
  readonly id?: string | undefined
  readonly at?: number | undefined
  readonly and?: string | undefined
  readonly crease?: string | undefined
  readonly across?: number | undefined
  readonly with?: Readonly<Record<string, number | string>> | undefined
}

export interface Answer {
  readonly value: number
  readonly unit: 'mm' | 'deg' | 'count'
  /** Chosen by the author rather than read off the model: a whole number stays whole. */
  readonly chosen?: true
}

/** A question the kernel cannot answer: the message is a whole sentence. */
export class AskError extends Error {}

const list = (names: readonly string[]): string => names.join(', ')

function given<T>(value: T | undefined, name: string, of: string): T {
  if (value === undefined) throw new AskError(`A number of ${of} needs ${name}.`)
  return value
}

function opening(design: Design, ask: Ask): number {
  const at = given(ask.at, 'at, the opening in degrees', ask.of)
  if (!(at >= 0 && at <= 180))
    throw new AskError(`at is ${at}; an opening goes from 0 (shut) to 180 (flat) degrees.`)
  if (broughtIn(design, at) !== at) {
    const { least, most } = openingStops(design)
    throw new AskError(
      `at is ${at}, where this card cannot be. ${(at > 90 ? (most ?? least) : (least ?? most))?.sentence}`,
    )
  }
  return at
}

function mechanism(design: Design, id: string) {
  const found = design.mechanisms.find((m) => m.id === id)
  if (!found) {
    const ids = design.mechanisms.map((m) => m.id)
    throw new AskError(
      ids.length === 0
        ? `${design.title} is a bare card; there is no mechanism ${id}.`
        : `${design.title} has no mechanism ${id}; it has ${list(ids)}.`,
    )
  }
  return found
}

const tip = (design: Design, ask: Ask) => {
  const { id } = mechanism(design, given(ask.id, 'id, a mechanism', ask.of))
  const found = measure(design, opening(design, ask)).tips[id]
  if (!found) throw new AskError(`${id} has no tip to measure.`)
  return found
}

const mm = (value: number): Answer => ({ value, unit: 'mm' })

const deg = (value: number): Answer => ({ value, unit: 'deg' })

/** Everything that can be read off a whole design; a field of a mechanism is asked for by its own name. */
const readings: Readonly<Record<string, (design: Design, ask: Ask) => Answer>> = {
  rise: (design, ask) => mm(tip(design, ask).rise),
  'stand-off': (design, ask) => mm(tip(design, ask).standOff),
  reach: (design, ask) => mm(tip(design, ask).reach),
  margin: (design, ask) =>
    mm(ask.id === undefined ? measure(design, 0).margin : partMargin(design, mechanism(design, ask.id).id)),
  stop: (design, ask) => deg(opensTo(design, mechanism(design, given(ask.id, 'id', ask.of)).id)),
  /** How far the whole card can be shut: 0 where it shuts flat. */
  'shuts-to': (design) => deg(openingRange(design)[0]),
  /** How far a tip stands to the left or right of the plane half-way between the pages. */
  aside: (design, ask) => mm(Math.abs(tip(design, ask).at[0])),
  thickness: (design) => mm(thickest(design).thickness),
  layers: (design) => ({ value: thickest(design).layers, unit: 'count', chosen: true }),
  'highest-rise': (design, ask) =>
    mm(highest(design, mechanism(design, given(ask.id, 'id', ask.of)).id).rise),
  'highest-opening': (design, ask) =>
    deg(highest(design, mechanism(design, given(ask.id, 'id', ask.of)).id).opening),
  gape(design, ask) {
    const pair = [
      mechanism(design, given(ask.id, 'id', 'gape')).id,
      mechanism(design, given(ask.and, 'and', 'gape')).id,
    ]
    const found = measure(design, opening(design, ask)).gapes.find(({ between }) =>
      between.every((id) => pair.includes(id)),
    )
    if (!found)
      throw new AskError(`${pair[0]} and ${pair[1]} share no slit, so there is no gape between them.`)
    return mm(found.gape)
  },
  angle(design, ask) {
    const { creases } = poseAt(design, opening(design, ask))
    const name = given(ask.crease, 'crease, as in gutter or beak/ridge', 'angle')
    const found = creases[name]
    if (!found)
      throw new AskError(`${design.title} has no crease ${name}; it has ${list(Object.keys(creases))}.`)
    return deg(found.angle)
  },
  /** A point of one page and its twin on the other. */
  apart(design, ask) {
    const across = given(ask.across, 'across, the distance of the point from the gutter', 'apart')
    if (!(across >= 0 && across <= design.card.width))
      throw new AskError(`across is ${across}; the page goes from 0 to ${design.card.width} mm.`)
    return mm(pagePoint([across, 0], opening(design, ask)).gape)
  },
}

/** The number asked for, or an AskError whose message says what is missing or unknown. */
export function answer(design: Design, ask: Ask): Answer {
  const asked = ask.with === undefined ? design : change(design, mechanism(design, ask.id ?? '').id, ask.with)
  const read = readings[ask.of]
  if (read) return read(asked, ask)
  const size = cardFields.find(({ name }) => name === ask.of)
  if (size && ask.id === undefined)
    return { value: asked.card[size.name as 'width' | 'height' | 'caliper'], unit: size.unit, chosen: true }
  const known = [...Object.keys(readings), ...cardFields.map(({ name }) => name)]
  if (ask.id === undefined)
    throw new AskError(
      `${ask.of} is nothing that can be read off a card; give ${list(known)}, or a field and its id.`,
    )
  const m = mechanism(asked, ask.id)
  const field = settable(m).find(({ name }) => name === ask.of)
  if (!field)
    throw new AskError(
      `${ask.id} has no ${ask.of}; it has ${list(settable(m).map(({ name }) => name))}, and every card ${list(known)}.`,
    )
  return { value: fieldValue(m, field.name), unit: field.unit, chosen: true }
}

/** As it stands in a sentence: a true minus sign, and a space that does not break before mm. */
export function inText({ value, unit, chosen }: Answer, decimals = 1, bare = false): string {
  if (!Number.isFinite(value)) throw new AskError(`The kernel answers ${value}, which is no number to print.`)
  const rounded = chosen ? String(Number(value.toFixed(decimals))) : value.toFixed(decimals)
  // A negative nothing is nothing.
  const digits = Number(rounded) === 0 ? rounded.replace('-', '') : rounded.replace('-', '\u2212')
  if (bare || unit === 'count') return digits
  return unit === 'mm' ? `${digits}\u00a0mm` : `${digits}°`
}
