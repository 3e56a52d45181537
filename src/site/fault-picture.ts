import { z } from 'astro/zod'
import * as says from '../../content/words/drawing/view.ts'
import type { Drawing, Mark, Point } from '../drawing/pen/marks.ts'
import { angleText } from '../drawing/pen/numbers.ts'
import { stepFigure, stepStates } from '../drawing/steps/steps.ts'
import type { Size } from '../drawing/view/camera.ts'
import type { View } from '../drawing/view/view.ts'
import { view } from '../drawing/view/view.ts'
import type { Check, CheckName, Design, Mechanism } from '../paper/index.ts'
import {
  broughtIn,
  change,
  check,
  kindOf,
  openingRange,
  ownerOf,
  parseDesign,
  poseAt,
  settable,
} from '../paper/index.ts'
import { crookedMarks } from './crooked.ts'
import type { Places } from './fault-marks.ts'
import { placeMarks, ringed, standingOut } from './fault-marks.ts'
import { withoutHidden } from './haze.ts'

/** A card as its file has it. */
export type RawDesign = Record<string, unknown>

/** A shape drawn on a card, as its file has it. */
interface Art extends Readonly<RawDesign> {
  readonly on: string
  readonly also?: readonly string[]
}

/** A card that was made wrongly, as it stands. */
export const wrongCardSchema = z.strictObject({
  /** Degrees; where the card stops before that, it is drawn as far as it goes. */
  opening: z.number().min(0).max(180),
  /** What is wrong: fields of mechanisms, by their ids, as a design file has them; null takes a field or a mechanism away. */
  set: z.record(z.string(), z.record(z.string(), z.unknown()).nullable()).default({}),
  /** The check that it fails, which marks the place; with `where` that does. */
  marks: z.string().optional(),
  /**
   * Places that no check knows, parted by spaces: a loop round a crease by its name, a ring at `beak/left/end`, at
   * `/start` or at `/20` mm from there, at `tear:beak/left/end` with a tear in the page, a ring round a panel or a
   * mechanism.
   */
  where: z.string().optional(),
  /** From where it is seen: from its side if it is shut, else from the reader's end. */
  camera: z
    .strictObject({
      turn: z.number().min(-180).max(180),
      tilt: z.number().min(0).max(90),
      far: z.number().min(1).max(10).default(1.7),
    })
    .optional(),
  stand: z.enum(['gutter', 'left', 'right', 'edge']).optional(),
  /** Degrees by which the gutter of a card without parts is folded off its middle line; its corners are marked. */
  crooked: z.number().min(-10).max(10).optional(),
  /** How many times nearer than the whole card what is marked is seen. */
  near: z.number().min(1).max(8).optional(),
})

export type WrongCard = z.infer<typeof wrongCardSchema>

/** A picture of a fault: a card in a state of its making, or one that was made wrongly, open so far. */
export const faultPictureSchema = z.union([
  z.strictObject({ dummy: z.string(), shows: z.enum(stepStates) }),
  wrongCardSchema.extend({ dummy: z.string() }),
])

export type FaultPicture = z.infer<typeof faultPictureSchema>

/** How large a picture is, px, and how high its words are. */
export interface Scale {
  readonly size: Size
  readonly text: number
}

export const SMALL: Scale = { size: { width: 200, height: 140 }, text: 11 }

/** Shut, a card is seen from its side: there is nothing else of it. */
const SHUT = { turn: -64, tilt: 16, far: 1.7 }

const OPEN = { turn: -22, tilt: 34, far: 1.7 }

const list = (names: readonly string[]): string => (names.length > 0 ? names.join(', ') : 'none')

/** A number that a file does not have, for it follows from those that it has: how far a piece is turned. */
const isDerived = (m: Mechanism, file: RawDesign, name: string, value: unknown): boolean =>
  typeof value === 'number' && !(name in file) && settable(m).some((one) => one.name === name)

/** Fields that say where a piece of its own card sits, and not how it is cut. */
const PLACED = ['apex', 'base', 'leftFoot', 'rightFoot', 'on']

const isSetElsewhere = (m: Mechanism, wrong: Readonly<Record<string, unknown>>): boolean =>
  kindOf(m).stock.from === 'own-card' && Object.keys(wrong).every((name) => PLACED.includes(name))

/**
 * Drawn for the right sizes: on wrong ones it would lie beside the paper, and so it might on pages that are cut for them.
 * Other parts keep theirs.
 */
function keptArt(art: unknown, cutWrongly: readonly string[]): { readonly art?: readonly Art[] } {
  const isKept = (panel: string): boolean =>
    !['page', 'cover'].includes(ownerOf(panel)) && !cutWrongly.includes(ownerOf(panel))
  const kept = ((art ?? []) as readonly Art[]).flatMap(({ on, also = [], ...shape }): readonly Art[] => {
    const [first, ...others] = [on, ...also].filter(isKept)
    return first === undefined
      ? []
      : [{ ...shape, on: first, ...(others.length > 0 ? { also: others } : {}) }]
  })
  return kept.length > 0 ? { art: kept } : {}
}

/** The design with what is wrong with it. Throws an Error for a mechanism that is not there, a `DesignError` where a file could not hold it. */
export function spoilt(raw: RawDesign, set: WrongCard['set']): Design {
  const right = parseDesign(raw)
  const files = raw.mechanisms as RawDesign[]
  const stranger = Object.keys(set).find((id) => !files.some((file) => file.id === id))
  if (stranger !== undefined)
    throw new Error(`set names ${stranger}; the card has ${list(right.mechanisms.map(({ id }) => id))}.`)
  const derived: [string, Record<string, number>][] = []
  let isCarried = true
  const mechanisms = right.mechanisms.flatMap((m, k): RawDesign[] => {
    const [file, wrong] = [files[k] ?? {}, set[m.id]]
    if (wrong === undefined) return [file]
    isCarried &&= wrong !== null && kindOf(m).carries !== undefined
    if (wrong === null) return []
    const all = Object.entries(wrong)
    const follows = all.filter(([name, value]) => isDerived(m, file, name, value))
    derived.push([m.id, Object.fromEntries(follows) as Record<string, number>])
    const written = all.filter((one) => !follows.includes(one))
    const entries = Object.entries({ ...file, ...Object.fromEntries(written) })
    return [Object.fromEntries(entries.filter(([, value]) => value !== null))]
  })
  const { art, ...rest } = raw
  const cutWrongly = right.mechanisms.flatMap((m) => {
    const wrong = set[m.id]
    return wrong === undefined || (wrong && isSetElsewhere(m, wrong)) ? [] : [m.id]
  })
  const papers = Object.entries((raw.papers as RawDesign | undefined) ?? {}).filter(
    ([id]) => set[id] !== null,
  )
  const wrong = parseDesign({
    ...(isCarried ? raw : { ...rest, ...keptArt(art, cutWrongly) }),
    ...(raw.papers ? { papers: Object.fromEntries(papers) } : {}),
    mechanisms,
  })
  return derived.reduce((design, [id, fields]) => change(design, id, fields), wrong)
}

/** What a card fails is marked where it is worst: so much another opening, degrees, shows something else. */
const SAME_OPENING = 1

const failing = (design: Design, names?: readonly CheckName[]): readonly Check[] =>
  check(design, { repairs: false, ...(names ? { names } : {}) }).filter(({ ok }) => !ok)

/** What a card fails of one check as it is drawn. Throws an Error if that is nothing: nothing would be marked. */
function failed(design: Design, name: CheckName, opening: number): readonly Check[] {
  const found = failing(design, [name])
  const [least, most] = openingRange(design)
  // Where the card does not come to, nothing has a place.
  const isBeyond = ({ opening: at = least }: Check): boolean => at < least || at > most
  const isHere = ({ opening: at = opening }: Check): boolean => Math.abs(at - opening) <= SAME_OPENING
  const here = found.filter((one) => (isBeyond(one) ? !one.space : isHere(one)))
  if (here.length > 0) return here
  const other = found.map((one) => `at ${one.opening?.toFixed(0)}°`)
  const fails = found.length > 0 ? [] : failing(design).map((one) => one.name)
  throw new Error(
    found.length > 0
      ? `marks is ${name}, which this card fails ${list(other)}; it is drawn at ${opening.toFixed(0)}°.`
      : `marks is ${name}, which this card does not fail; it fails ${list(fails)}.`,
  )
}

/** What fails without a place of its own, as what stops a card: the whole part, by its outlines. */
function outlines(
  design: Design,
  opening: number,
  faults: readonly Check[],
  toScreen: View['toScreen'],
): readonly Mark[] {
  const { panels } = poseAt(design, opening)
  const ids = faults.filter(({ space, flat }) => !space && !flat).flatMap((one) => one.ids)
  return Object.entries(panels)
    .filter(([name]) => ids.includes(ownerOf(name)))
    .map(([name, outline]): Mark => {
      return { mark: 'path', runs: [outline.map(toScreen)], closed: true, role: 'fault', of: name }
    })
}

/** Two parts that meet are shown by the ring where they do: their outlines, one over the other, would hide it. */
const isOutlineOfMeeting = (mark: Mark): boolean =>
  mark.mark === 'path' && mark.role === 'fault' && mark.of === 'clear-motion'

/** Where the creases would be, had the card been made rightly; nothing where that does not come so far. */
function soundPlaces(raw: RawDesign, opening: number): Places {
  const right = parseDesign(raw)
  return Math.abs(broughtIn(right, opening) - opening) < SAME_OPENING
    ? poseAt(right, opening)
    : { creases: {} }
}

const pointsOf = (mark: Mark): readonly Point[] => {
  if (mark.mark === 'dot') return [mark.at]
  return mark.mark === 'path' ? mark.runs.flat() : []
}

/** Of a large picture a part of this size, what is marked in the middle of it. Throws an Error if nothing is. */
function cropped(drawing: Drawing, { width, height }: Size): Drawing {
  const points = drawing.marks.filter(({ role }) => role === 'fault').flatMap(pointsOf)
  if (points.length === 0) throw new Error('near asks for something that is marked, by marks or by where.')
  const middle = (k: 0 | 1): number => {
    const all = points.map((p) => p[k])
    return (Math.min(...all) + Math.max(...all)) / 2
  }
  const [, , wide, high] = drawing.box
  const x = Math.max(0, Math.min(wide - width, middle(0) - width / 2))
  const y = Math.max(0, Math.min(high - height, middle(1) - height / 2))
  return { ...drawing, box: [x, y, width, height] }
}

function crookedCard(
  design: Design,
  { opening, crooked: off = 0, camera = OPEN, stand = 'left' }: WrongCard,
  { size, text }: Scale,
): Drawing {
  if (design.mechanisms.length > 0) throw new Error('crooked goes with a card without parts.')
  const marks = crookedMarks(design, { opening, off, camera, stand, size, text })
  return {
    box: [0, 0, size.width, size.height],
    unit: 'px',
    marks: ringed(marks).flatMap(standingOut),
    says: says.card(design.title, angleText(opening, 0), []),
  }
}

/** The picture of a card that was made wrongly. Throws an Error with a sentence on what cannot be. */
export function wrongCard(raw: RawDesign, wrong: WrongCard, { size, text }: Scale = SMALL): Drawing {
  const { opening: wanted, set, marks, where, stand, near = 1 } = wrong
  const design = spoilt(raw, set)
  const opening = broughtIn(design, wanted)
  const camera = wrong.camera ?? (opening < 5 ? SHUT : OPEN)
  if (wrong.crooked !== undefined) return crookedCard(design, wrong, { size, text })
  const large: Size = { width: near * size.width, height: near * size.height }
  const faults = marks === undefined ? [] : failed(design, marks as CheckName, opening)
  const drawn = view(design, opening, camera, large, {
    frame: [opening],
    faults: where === undefined ? faults : [],
    text,
    ...(stand ? { stand } : {}),
  })
  const { toScreen, ...picture } = drawn
  const pointed =
    where === undefined
      ? outlines(design, opening, faults, toScreen)
      : placeMarks(where, {
          pose: poseAt(design, opening),
          sound: soundPlaces(raw, opening),
          marks: drawn.marks,
          toScreen,
        })
  const marked = ringed([...drawn.marks.filter((mark) => !isOutlineOfMeeting(mark)), ...pointed])
  const whole = withoutHidden({ ...picture, marks: marked.flatMap(standingOut) })
  return near > 1 ? cropped(whole, size) : whole
}

/** The picture of a fault, small unless said. `raw` is the dummy as its file has it. */
export function faultPicture(raw: RawDesign, picture: FaultPicture, scale: Scale = SMALL): Drawing {
  if ('shows' in picture)
    return stepFigure(parseDesign(raw), picture.shows, scale.size, { text: scale.text, plain: true })
  return wrongCard(raw, picture, scale)
}
