/** What a sheet says: for the kinds of mechanism in the design and the side it is printed on. */
import { spineSays } from '../../making/spine.ts'
import type { Design, LineKind, Placed, Tight } from '../../paper/index.ts'
import { isUneven, jointsOf, kindOf, nameOf, pieces, rimOf, threaded } from '../../paper/index.ts'
import { shown } from './sizes.ts'

/** The side of the card that is printed. */
export type SheetFace = 'inside' | 'outside'

/**
 * How much is printed on the face that will be seen: every line (to practise with), ticks at the ends of the
 * folds and what will be covered (for a good copy), or nothing, and every line on the other face, mirrored.
 */
export type SheetLines = 'front' | 'ticks' | 'back'

/** What is drawn on the pieces: printed in colour, as lines to colour in, or left out. */
export type SheetArt = 'colour' | 'lines' | 'none'

/** The face that the lines are printed on: of the card, its front is the inside. */
export const faceOf = (lines: SheetLines): SheetFace => (lines === 'back' ? 'outside' : 'inside')

type Mechanism = Design['mechanisms'][number]

/** What a piece of card is called: its mechanism, and its part where there are several (`pond/wall-1`: pond wall 1). */
export function pieceName(id: string): string {
  const [owner = id, part] = id.split('/')
  return part === undefined || part === 'piece' ? nameOf(owner) : `${nameOf(owner)} ${nameOf(part)}`
}

const listed = (names: readonly string[]): string => names.join(names.length === 2 ? ' and ' : ', ')

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

/** How a part is cut on a fold that another part made. */
function nested(later: readonly Mechanism[]): string {
  const inwards = later.filter(({ on }) => on.endsWith('/ridge'))
  return [
    'Pinch each fold flat, cut from it, crease and push.',
    ...(inwards.length > 0 ? [`On a ridge push in, away from you: ${named(inwards)}.`] : []),
  ].join(' ')
}

function cuttingSteps(cut: readonly Mechanism[], face: SheetFace): readonly string[] {
  const shape = shapeOf(cut)
  const uneven = cut.filter(isUneven)
  const later = cut.filter((m) => m.on !== 'gutter')
  const steps = ['Fold the gutter, lines outside. Cut the solid lines from the fold, through both layers.']
  if (uneven.length > 0)
    steps.push(`Deeper on one side: ${named(uneven)}. Stop at the shorter end. Open the card and cut on.`)
  steps.push(`Fold each ${shape} to the front and press, then to the back.`)
  steps.push(
    `${face === 'inside' ? 'Fold the gutter the other way, lines inside.' : 'Keep the lines outside.'} ` +
      `Open the card half way. Push each ${shape} through to the inside.`,
  )
  if (later.length > 0) steps.push(`Work the new folds in the same way: ${named(later)}. ${nested(later)}`)
  return steps
}

/**
 * Where the card fills the paper, its edge is not printed: what to trim off at the left and right
 * (`sides`) and above and below (`ends`), mm each.
 */
export interface Trim {
  /** What does not work yet, in a sentence: cut as it is, paper is wasted. */
  readonly fault?: string
  readonly sides?: number
  readonly ends?: number
  /** How large a cover is that this paper cannot hold, laid open: it is cut from other card. */
  readonly cover?: readonly [wide: number, high: number]
  /** The card's fold lies across the long side of the paper, along which its fibres run nearly always. */
  readonly acrossGrain?: boolean
  /** All is printed so many times as large, to make up for a printer. */
  readonly stretch?: number
}

/** How the card gets its outline. */
export function trimStep({ sides, ends }: Trim): string | null {
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

/** Glue where there are tabs or glued places, tape along a joint that has none: letter to letter. */
function stickingSteps(design: Design): readonly string[] {
  const all = jointsOf(design).filter(({ host }) => host.piece !== 'cover')
  const isGlued = all.some(({ isTaped }) => !isTaped)
  const isTaped = all.some(({ isTaped }) => isTaped)
  const through = design.mechanisms.filter(({ id }) => threaded(design).includes(id))
  const heldBy = (held: 'joints' | 'walls'): readonly Mechanism[] =>
    design.mechanisms.filter((m) => {
      const { stock } = kindOf(m)
      return stock.from === 'own-card' && stock.held === held
    })
  const walled = heldBy('walls')
  const laid = heldBy('joints').filter((m) => !through.includes(m))
  return [
    'Fold the other pieces. Put each letter to its twin, A first: the list of joints says what goes where.',
    ...(through.length > 0
      ? [
          `Push each tab of ${named(through)} through its slit, bend it away from the fold and glue it behind.`,
        ]
      : []),
    ...(laid.length > 0
      ? [
          `Of two joints${through.length > 0 ? ` of ${named(laid)}` : ''} stick the left one first and lay the piece folded to the left. Make the right one sticky, shut the card on it and press.`,
        ]
      : []),
    ...(walled.length > 0
      ? [`Of ${named(walled)}, glue all walls on the card first, then the platform on the walls.`]
      : []),
    ...(isGlued
      ? [
          `Put glue on the hatched places only${design.card.cover ? ', and not on the rim yet' : ''}; where there are dots, on the other face. Press, and let it dry.`,
        ]
      : []),
    ...(isTaped
      ? ['Where there is no tab, lay the edge on its line and tape it along its whole length.']
      : []),
  ]
}

/** Glued last: until then all that is cut can be pushed through from behind. */
const coverStep = (design: Design): string =>
  `${spineSays(design)}Fold the cover. Put glue on the hatched rim only: nothing that moves may stick. Lay card and cover gutter on gutter, letter on letter. Shut them and let them dry.`

/** The same where the cover has no page: no rim is marked. */
const ownCoverStep = (design: Design, [wide, high]: readonly [number, number], rim: number): string =>
  `For a cover, cut ${shown(wide)} × ${shown(high)}\u00a0mm from other card. ${spineSays(design)}Fold it in the middle. Put glue along the edges of the card’s back only, ${shown(rim)}\u00a0mm wide: nothing that moves may stick. Lay card and cover gutter on gutter. Shut them and let them dry.`

/** How the pieces get their outlines. */
function cuttingOut(design: Design, isTrimmed: boolean): string {
  const others = pieces(design).filter(({ id }) => id !== 'card')
  if (others.length === 0) return isTrimmed ? '' : 'Cut the card out. '
  if (others.every(({ id }) => id === 'cover'))
    return isTrimmed ? 'Cut the cover out. ' : 'Cut the card and its cover out. '
  return 'Cut all pieces out. '
}

/** Steps in brief. A design without mechanisms is a card to fold. */
export function stepsFor(design: Design, lines: SheetLines, trim: Trim = {}): readonly string[] {
  const face = faceOf(lines)
  const cut = design.mechanisms.filter(isCut)
  const glued = design.mechanisms.filter((m) => !isCut(m))
  const trimming = trimStep(trim)
  const steps = [
    ...(trimming === null ? [] : [trimming]),
    `${cuttingOut(design, trimming !== null)}` +
      `Score every fold with a ruler and a dry ball pen${lines === 'ticks' ? ', from tick to tick' : ''}.`,
  ]
  if (threaded(design).length > 0)
    steps.push('Cut the short slits for tabs with a knife while all lies flat. They are for an adult.')
  if (cut.length > 0) steps.push(...cuttingSteps(cut, face))
  else steps.push(`Fold the gutter, lines ${face}. Press it from the middle to the ends.`)
  if (glued.length > 0) steps.push(...stickingSteps(design))
  const pops = glued.some((m) => kindOf(m).pops)
  steps.push(
    `Shut the card slowly. Press every fold. Open it.${pops ? ' Push up from behind what stays down in its fold.' : ''}`,
  )
  if (design.card.cover) steps.push(coverStep(design))
  if (trim.cover) steps.push(ownCoverStep(design, trim.cover, rimOf(design.card)))
  return steps
}

export const CARE =
  'Your school’s own rules come first. A craft knife is a job for an adult. Turn the paper, not your hand, and pass scissors with the handles first.'

export const PRINT = 'Print at 100\u00a0%, “actual size”. Lay a ruler on both lines before you cut.'

/** How to print, and what this sheet does already to come out at true size. */
export function printSays(stretch = 1): string {
  if (stretch === 1) return PRINT
  const much = Math.abs(stretch - 1) * 100
  return `${PRINT} This sheet is drawn ${shown(much)}\u00a0% ${stretch > 1 ? 'larger' : 'smaller'}, for a printer that made 100\u00a0mm come out as ${shown(100 / stretch)}\u00a0mm. For another printer make it anew.`
}

export const faceSentence: Readonly<Record<SheetLines, string>> = {
  front: 'This side is the inside of the card. All lines are on it: a sheet to practise with.',
  ticks: 'This side is the inside of the card. Folds have ticks at their ends only: a sheet for a good copy.',
  back: 'This side is the outside of the card: left and right are swapped, and mountain and valley too. The inside stays clean.',
}

export const pieceSentence: Readonly<Record<SheetLines, string>> = {
  front: 'This side is the front of each piece.',
  ticks: 'This side is the front of each piece. Folds have ticks at their ends only.',
  back: 'This side is the back of each piece: left and right are swapped, and mountain and valley too.',
}

export const coverSentence: Readonly<Record<SheetLines, string>> = {
  front: 'The cover goes behind the card. This side is its inside.',
  ticks: 'The cover goes behind the card. This side is its inside.',
  back: 'The cover goes behind the card. This side is its outside: left and right are swapped, and mountain and valley too.',
}

/** Where the card has a page without room for words. */
export const endSentence =
  'The lower edge of its page is the reader’s end: lengths along the gutter start there.'

/** Under the edge of the card that lies nearest the reader. */
export const nearEdge: Readonly<Record<SheetFace, string>> = {
  inside: 'Inside of the card. Reader’s end: lengths along the gutter start here.',
  outside: 'Outside of the card. Reader’s end: lengths along the gutter start here.',
}

/** The same beside the card. */
export const sideOfCard: Readonly<Record<SheetFace, string>> = {
  inside: 'Inside of the card. The reader’s end is the lower edge: lengths along the gutter start there.',
  outside: 'Outside of the card. The reader’s end is the lower edge: lengths along the gutter start there.',
}

/** The same of the cover. */
export const coverEdge: Readonly<Record<SheetFace, string>> = {
  inside: 'Inside of the cover. Reader’s end below',
  outside: 'Outside of the cover. Reader’s end below',
}

/** The same where there is little room. */
export const shortEdge: Readonly<Record<SheetFace, string>> = {
  inside: 'Inside. Reader’s end',
  outside: 'Outside. Reader’s end',
}

/** What is marked on a sheet, and what it asks for, as seen on the printed side. */
export type Sign = LineKind | 'tape' | 'place' | 'behind' | 'care' | 'grain' | 'picture'

export const legend: readonly { readonly sign: Sign; readonly name: string; readonly does: string }[] = [
  { sign: 'cut', name: 'Cut', does: 'through the paper, along every solid line' },
  { sign: 'valley', name: 'Valley', does: 'fold both sides towards you' },
  { sign: 'mountain', name: 'Mountain', does: 'fold both sides away from you' },
  { sign: 'crease', name: 'Old fold', does: 'press it flat again' },
  { sign: 'glue', name: 'Glue', does: 'here, on this face' },
  { sign: 'tape', name: 'Tape', does: 'along this line, on this face' },
  { sign: 'behind', name: 'Glue behind', does: 'here, but on the other face (tape too)' },
  { sign: 'place', name: 'Place', does: 'where another piece goes: no cut, no fold' },
  { sign: 'care', name: 'Care', does: 'cut or glue this one with care' },
  { sign: 'grain', name: 'Grain', does: 'paper’s fibres run this way' },
  { sign: 'picture', name: 'Picture', does: 'fine grey dots: colour them in before you cut' },
]

/** What more is said of the grain: where no arrow is printed, and where the card's own fold lies across. */
export function grainSays(lines: SheetLines, { acrossGrain = false }: Trim): string {
  const where = lines === 'ticks' ? ' along each longest fold (no arrow, it would show)' : ''
  // Common practice, no source.
  const across = acrossGrain ? '; most paper: across this card’s fold' : ''
  return `${where}${across}`
}

/** How far what asks for care may not be off: the least of the sizes that are marked, of lengths and of angles. */
export function careSays(care: readonly Tight[]): string {
  const least = (unit: Tight['unit'], after: string): readonly string[] => {
    const all = care.filter((one) => one.unit === unit).map(({ spoilt }) => spoilt)
    return all.length === 0 ? [] : [`${shown(Math.min(...all))}${after}`]
  }
  return `: ${[...least('mm', '\u00a0mm'), ...least('deg', '°')].join(' or ')} off is too much`
}
