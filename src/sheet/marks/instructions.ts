/** What a sheet says: for the kinds of mechanism in the design and the side it is printed on. */
import type { Design, Flat, LineKind, Placed } from '../../paper/index.ts'
import { kindOf, modelOf, nameOf, pieces, settable, settingOf } from '../../paper/index.ts'
import type { Run } from './setting.ts'

/** The side of the card that is printed. */
export type SheetFace = 'inside' | 'outside'

type Mechanism = Design['mechanisms'][number]

/** What a piece of card is called: its mechanism, and its part where there are several (`pond/wall-1`: pond wall 1). */
export function pieceName(id: string): string {
  const [owner = id, part] = id.split('/')
  return part === undefined || part === 'piece' ? nameOf(owner) : `${nameOf(owner)} ${nameOf(part)}`
}

const listed = (names: readonly string[], most = 4): string =>
  names.length > most
    ? `${names.slice(0, most).join(', ')} and ${names.length - most} more`
    : names.join(names.length === 2 ? ' and ' : ', ')

const named = (mechanisms: readonly Mechanism[]): string => listed(mechanisms.map(({ id }) => nameOf(id)))

const isCut = (m: Placed): boolean => kindOf(m).stock.from === 'host'

/** What the loose piece looks like once its cuts are made. */
function shapeOf(cut: readonly Mechanism[]): string {
  const shapes = new Set(
    cut.flatMap((m) => {
      const { stock } = kindOf(m)
      return stock.from === 'host' ? [stock.loose] : []
    }),
  )
  const [only] = shapes
  return only !== undefined && shapes.size === 1 ? only : 'part'
}

/** Mechanisms whose two sides are cut to different depths. */
function unequal(cut: readonly Mechanism[]): readonly Mechanism[] {
  const depth = (lines: readonly (readonly Flat[])[]): number =>
    Math.max(0, ...lines.flatMap((line) => line.map(([across]) => across)))
  return cut.filter((m) => {
    const { left, right } = kindOf(m).build(m).cuts
    return Math.abs(depth(left) - depth(right)) > 1e-6
  })
}

function cuttingSteps(cut: readonly Mechanism[], face: SheetFace): readonly string[] {
  const shape = shapeOf(cut)
  const uneven = unequal(cut)
  const later = cut.filter((m) => m.on !== 'gutter')
  const steps = ['Fold the gutter, lines outside. Cut the solid lines from the fold, through both layers.']
  if (uneven.length > 0)
    steps.push(`Deeper on one side: ${named(uneven)}. Stop at the shorter end. Open the card and cut on.`)
  steps.push(`Fold each ${shape} to the front and press. Fold it to the back and press.`)
  steps.push(
    `${face === 'inside' ? 'Fold the gutter the other way, lines inside.' : 'Keep the lines outside.'} ` +
      `Open the card half way. Push each ${shape} through to the inside.`,
  )
  if (later.length > 0) steps.push(`Work the new folds in the same way: ${named(later)}.`)
  return steps
}

/**
 * Where the card fills the paper, its edge is not printed: what to trim off at the left and right
 * (`sides`) and above and below (`ends`), mm each.
 */
export interface Trim {
  readonly sides?: number
  readonly ends?: number
}

/** How the card gets its outline. */
function trimStep({ sides, ends }: Trim): string | null {
  const part = (amount: number | undefined, edges: string): readonly string[] =>
    amount === undefined
      ? []
      : [
          amount < 0.05
            ? `The ${edges} edges of the paper are the card’s own.`
            : `Trim ${shown(amount)}\u00a0mm off the ${edges} edges of the paper.`,
        ]
  const parts = [...part(sides, 'left and right'), ...part(ends, 'upper and lower')]
  return parts.length === 0 ? null : parts.join(' ')
}

/** Glue where there are tabs or hatched places, tape along a joint that has none. */
function stickingStep(design: Design, stuck: readonly Mechanism[]): string {
  const { glue, builds } = modelOf(design)
  const isTaped = ({ id }: Mechanism): boolean =>
    glue.every(({ owner, closed }) => builds[owner]?.mechanism.id !== id || !closed)
  const taped = stuck.filter(isTaped)
  const glued = stuck.filter((m) => !isTaped(m))
  return [
    ...(taped.length > 0 ? [`Tape each along its whole joint: ${named(taped)}.`] : []),
    ...(glued.length > 0 ? [`Glue each on its hatched place: ${named(glued)}. Let it dry.`] : []),
  ].join(' ')
}

/** Steps in brief. A design without mechanisms is a card to fold. */
export function stepsFor(design: Design, face: SheetFace, trim: Trim = {}): readonly string[] {
  const cut = design.mechanisms.filter(isCut)
  const glued = design.mechanisms.filter((m) => !isCut(m))
  const several = pieces(design).length > 1
  const trimming = trimStep(trim)
  const steps = [
    ...(trimming === null ? [] : [trimming]),
    `${several ? 'Cut all pieces out. ' : trimming === null ? 'Cut the card out. ' : ''}` +
      'Score every fold with a ruler and a dry ball pen.',
  ]
  if (cut.length > 0) steps.push(...cuttingSteps(cut, face))
  else steps.push(`Fold the gutter, lines ${face}. Press it from the middle to the ends.`)
  if (glued.length > 0) steps.push(`Fold the other pieces. ${stickingStep(design, glued)}`)
  steps.push('Shut the card slowly. Press every fold. Open it.')
  return steps
}

export const CARE =
  'Your school’s own rules come first. A craft knife is a job for an adult. Turn the paper, not your hand, and pass scissors with the handles first.'

export const PRINT = 'Print at 100\u00a0%, “actual size”. Lay a ruler on both lines before you cut.'

export const faceSentence: Readonly<Record<SheetFace, string>> = {
  inside: 'This side is the inside of the card.',
  outside: 'This side is the outside: left and right are swapped, and so are the folds.',
}

export const pieceSentence: Readonly<Record<SheetFace, string>> = {
  inside: 'This side is the front of each piece.',
  outside: 'This side is the back of each piece: left and right are swapped, and so are the folds.',
}

/** Under the edge of the card that lies nearest the reader. */
export const nearEdge = 'Reader’s end: lengths along the gutter start here.'

/** What each kind of line asks for, as seen on the printed side. */
export const legend: readonly { readonly kind: LineKind; readonly name: string; readonly does: string }[] = [
  { kind: 'cut', name: 'Cut', does: 'through the paper' },
  { kind: 'valley', name: 'Valley', does: 'fold both sides towards you' },
  { kind: 'mountain', name: 'Mountain', does: 'fold both sides away from you' },
  { kind: 'crease', name: 'Old fold', does: 'press it flat again' },
  { kind: 'glue', name: 'Glue', does: 'here, and nowhere else' },
]

/** At most one decimal, no idle nought, a true minus. */
const shown = (value: number): string => String(Number(value.toFixed(1))).replace('-', '−')

/**
 * One mechanism's numbers, from the kernel. What is nought and may be left out is left out, and so is a
 * derived number that repeats a field. Empty if it has none.
 */
export function sizesOf(m: Mechanism): readonly Run[] {
  const said: string[] = []
  const numbers = settable(m).flatMap((field) => {
    const value = settingOf(m, field.name)
    const text = `${shown(value)}${field.unit === 'deg' ? '°' : ''}`
    const silent = 'get' in field ? said.includes(text) : field.optional === true && Math.abs(value) < 0.05
    said.push(text)
    return silent ? [] : [`${field.label} ${text}`.replaceAll(' ', '\u00a0')]
  })
  if (numbers.length === 0) return []
  return [{ text: nameOf(m.id), bold: true }, { text: ` ${numbers.join(', ')}` }]
}

/** The card's own numbers. */
export function cardSizes({ card: { width, height, caliper } }: Design): readonly Run[] {
  const text = ` Open ${shown(2 * width)} × ${shown(height)}, page ${shown(width)} wide, ${String(caliper)} thick`
  return [{ text: 'card', bold: true }, { text }]
}
