/** What a sheet says: for the kinds of mechanism in the design and the side it is printed on. */
import type { Design, LineKind, Placed } from '../paper/index.ts'
import { kindOf, settable, settingOf } from '../paper/index.ts'
import type { Run } from './setting.ts'

/** The side of the card that is printed. */
export type SheetFace = 'inside' | 'outside'

type Mechanism = Design['mechanisms'][number]

/** What a mechanism is called: its id, in words. */
export const nameOf = ({ id }: Placed): string => id.replaceAll('-', ' ')

const listed = (names: readonly string[], most = 4): string =>
  names.length > most
    ? `${names.slice(0, most).join(', ')} and ${names.length - most} more`
    : names.join(names.length === 2 ? ' and ' : ', ')

/** What the loose piece looks like once its cuts are made. */
function shapeOf(design: Design): string {
  const pointed = design.mechanisms.filter((m) => m.kind.endsWith('v-fold')).length
  if (pointed === design.mechanisms.length) return 'triangle'
  return pointed === 0 ? 'strip' : 'piece'
}

/** Mechanisms whose two sides are cut to different depths. */
function unequal(design: Design): readonly Mechanism[] {
  const depths = (m: Mechanism): number[] =>
    kindOf(m)
      .fields.filter((field) => field.name === 'left' || field.name === 'right')
      .map((field) => settingOf(m, field.name))
  return design.mechanisms.filter((m) => {
    const [left, right] = depths(m)
    return left !== undefined && right !== undefined && Math.abs(left - right) > 1e-6
  })
}

/** Steps in brief. A design without mechanisms is a card to fold. */
export function stepsFor(design: Design, face: SheetFace): readonly string[] {
  const steps = ['Cut the card out. Score every fold with a ruler and a dry pen.']
  if (design.mechanisms.length === 0)
    return [
      ...steps,
      `Fold it along the gutter, lines ${face}. Press the fold from the middle to the ends.`,
      'Open it slowly.',
    ]
  const shape = shapeOf(design)
  const uneven = unequal(design)
  const later = design.mechanisms.filter((m) => m.on !== 'gutter')
  steps.push('Fold it along the gutter, lines outside. Cut each cut line from the fold, through both layers.')
  if (uneven.length > 0)
    steps.push(
      `One side is deeper here: ${listed(uneven.map(nameOf))}. Stop at the shorter end, open the card, cut that side on to its end.`,
    )
  steps.push(`Fold each ${shape} over to the front and press. Then to the back and press.`)
  steps.push(
    face === 'inside'
      ? `Open the card half way, lines towards you. Push each ${shape} through to your side.`
      : `Open the card half way, lines away from you. Push each ${shape} through to your side.`,
  )
  if (later.length > 0) steps.push(`Do the same on the new folds: ${listed(later.map(nameOf))}.`)
  steps.push('Shut the card and press. Open it slowly.')
  return steps
}

export const CARE =
  'A craft knife is for an adult. With scissors, turn the paper, not your hand. Your school’s own rules come first.'

export const PRINT = 'Print at 100\u00a0%, “actual size”. Lay a ruler on both lines before you cut.'

export const faceSentence: Readonly<Record<SheetFace, string>> = {
  inside: 'This side is the inside.',
  outside: 'This side is the outside. Left and right are swapped, and the folds look the other way round.',
}

/** What each kind of line asks for, as seen on the printed side. */
export const legend: readonly { readonly kind: LineKind; readonly name: string; readonly does: string }[] = [
  { kind: 'cut', name: 'Cut', does: 'through the paper' },
  { kind: 'valley', name: 'Valley', does: 'fold both sides towards you' },
  { kind: 'mountain', name: 'Mountain', does: 'fold both sides away from you' },
  { kind: 'crease', name: 'Old fold', does: 'press it flat again' },
  { kind: 'glue', name: 'Glue', does: 'on this area only' },
]

const shown = (value: number, unit: 'mm' | 'deg'): string =>
  unit === 'deg' ? `${value.toFixed(1)}°` : value.toFixed(1)

/** One mechanism's numbers, from the kernel: those that are nought and may be left out are left out. */
export function sizesOf(m: Mechanism): readonly Run[] {
  const numbers = settable(m).flatMap((field) => {
    const value = settingOf(m, field.name)
    const silent = 'optional' in field && field.optional === true && Math.abs(value) < 0.05
    return silent ? [] : [`${field.label} ${shown(value, field.unit)}`.replaceAll(' ', '\u00a0')]
  })
  return [{ text: nameOf(m), bold: true }, { text: ` ${numbers.join(', ')}` }]
}

/** The card's own numbers. */
export function cardSizes({ card }: Design): readonly Run[] {
  const { width, height, caliper } = card
  return [
    { text: 'card', bold: true },
    {
      text:
        ` Open ${shown(2 * width, 'mm')} × ${shown(height, 'mm')}, one page ${shown(width, 'mm')} wide, ` +
        `${String(caliper)} thick`,
    },
  ]
}

/** Under the edge of the card that lies nearest the reader. */
export const nearEdge = 'Reader’s end: lengths along the gutter start here.'
