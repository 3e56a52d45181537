/** What a sheet says: for the kinds of mechanism in the design and the side it is printed on. */
import * as key from '../../../content/words/sheet/key.ts'
import * as pages from '../../../content/words/sheet/pages.ts'
import * as sections from '../../../content/words/sheet/sections.ts'
import * as says from '../../../content/words/sheet/steps.ts'
import { foldsTogether } from '../../making/making.ts'
import { spineOf, spineSays } from '../../making/spine.ts'
import type { Design, LineKind, Placed, Tight } from '../../paper/index.ts'
import {
  isUneven,
  jointsOf,
  kindOf,
  nameOf,
  ownerOf,
  pieces,
  ridgeFold,
  rimOf,
  threaded,
} from '../../paper/index.ts'
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
  return part === undefined || part === 'piece' ? nameOf(owner) : pages.part(nameOf(owner), nameOf(part))
}

const named = (mechanisms: readonly Mechanism[]): readonly string[] => mechanisms.map(({ id }) => nameOf(id))

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
  return only !== undefined && shapes.size === 1 ? only : says.part
}

/** What parts that are cut from the card are called. */
type Called = (parts: readonly Mechanism[]) => readonly string[]

/** By name where the sheet names them, or where there is but one; else with where they lie along the gutter, once in a step. */
function calledOn(design: Design, lines: SheetLines, cut: readonly Mechanism[]): Called {
  if (lines !== 'ticks' || cut.length < 2) return named
  const card = pieces(design).find(({ id }) => id === 'card')
  return (parts) =>
    parts.map(({ id }) => {
      const along = (card?.lines ?? []).flatMap(({ of, points }) =>
        of.startsWith(`${id}/`) ? points.map(([, y]) => y) : [],
      )
      return says.partAt(nameOf(id), Math.round(Math.min(...along)), Math.round(Math.max(...along)))
    })
}

function deeper(parts: readonly Mechanism[], called: Called): readonly string[] {
  const uneven = parts.filter(isUneven)
  return uneven.length > 0 ? [says.uneven(called(uneven))] : []
}

/** How parts are cut on folds that other parts made. */
function nested(design: Design, later: readonly Mechanism[], called: Called, isExplained: boolean): string {
  const inwards = later.filter(({ id }) => ridgeFold(design, id) === 'valley')
  return [
    says.newFolds(called(later)),
    ...(called === named || isExplained ? [] : [says.partsAt]),
    ...deeper(later, named),
    says.workNewFolds(later.length, named(later.filter(({ id }) => foldsTogether(design, id)))),
    ...(inwards.length > 0 ? [says.pushInwards(named(inwards))] : []),
  ].join(' ')
}

function cuttingSteps(design: Design, cut: readonly Mechanism[], lines: SheetLines): readonly string[] {
  const face = faceOf(lines)
  const called = calledOn(design, lines, cut)
  const shape = shapeOf(cut)
  const first = cut.filter((m) => m.on === 'gutter')
  const later = cut.filter((m) => m.on !== 'gutter')
  // Where the two layers fold about different lines, folding them over together would put a fold beside its own line.
  const over = first.filter(({ id }) => foldsTogether(design, id))
  const others = first.length - over.length
  const uneven = deeper(first, called)
  const evenOnes = first.filter((m) => !isUneven(m))
  return [
    [
      says.foldToCut,
      ...uneven,
      ...(others > 0 ? [says.notOver(others)] : []),
      ...(evenOnes.length > 0 ? [says.cutEven(uneven.length > 0)] : []),
      ...(called !== named && uneven.length > 0 ? [says.partsAt] : []),
    ].join(' '),
    ...(over.length > 0 ? [says.foldToAndFro(shape, others > 0)] : []),
    [says.linesOf[face], says.pushThrough(shape), ...(others > 0 ? [says.pressNewFolds] : [])].join(' '),
    ...(later.length > 0 ? [nested(design, later, called, uneven.length > 0)] : []),
  ]
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
  /** Some letter stands beside its piece. */
  readonly hasLettersBeside?: boolean
}

/** How a piece that fills its sheet gets its outline: the card, or the one whose sheet says it. */
export function trimStep({ sides, ends }: Trim, of = says.ofCard): string | null {
  const part = (
    amount: number | undefined,
    edges: typeof says.sidesAreEdges,
    trim: typeof says.trimSides,
  ): readonly string[] => (amount === undefined ? [] : [amount < 0.05 ? edges(of) : trim(of, shown(amount))])
  const parts = [
    ...part(sides, says.sidesAreEdges, says.trimSides),
    ...part(ends, says.endsAreEdges, says.trimEnds),
  ]
  return parts.length === 0 ? null : parts.join(' ')
}

/** Built on the outside of a fold, where no page shuts on it. */
export const isOutside = (m: Mechanism): boolean => 'side' in m && m.side === 'outside'

/** Glue where there are tabs or glued places, tape along a joint that has none: letter to letter. */
function stickingSteps(design: Design, face: SheetFace, isDotted: boolean): readonly string[] {
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
  const folded = heldBy('joints').filter((m) => !through.includes(m))
  const laid = folded.filter((m) => !isOutside(m))
  const saddles = folded.filter(isOutside)
  const hasOthers = through.length + saddles.length > 0
  const platforms = new Set(walled.map(({ id }) => id))
  const above = through.filter(({ on }) => platforms.has(ownerOf(on)))
  return [
    face === 'outside' ? `${says.letterToTwin} ${says.findOnInside}` : says.letterToTwin,
    ...(through.length > 0 ? [says.pushTabs(named(through))] : []),
    ...(laid.length > 0 ? [says.leftFirst(hasOthers ? named(laid) : [])] : []),
    ...(saddles.length > 0 ? [says.astride(named(saddles))] : []),
    ...(walled.length > 0 ? [says.wallsFirst(named(walled))] : []),
    ...(above.length > 0 ? [says.beforePlatform(named(above))] : []),
    ...(isGlued ? [says.glueHatched(design.card.cover ?? false, isDotted)] : []),
    ...(isTaped ? [says.tapeEdges] : []),
  ]
}

/** Glued last: until then all that is cut can be pushed through from behind. A good copy has no letters of its rim. */
const coverStep = (design: Design, lines: SheetLines): string =>
  says.glueCover(lines !== 'ticks', spineOf(design) > 0)

/** The same where the cover has no page: no rim is marked. */
const ownCoverStep = (design: Design, [wide, high]: readonly [number, number], rim: number): string =>
  `${says.cutCover(shown(wide), shown(high))} ${spineSays(design)}${says.glueOwnCover(shown(rim))}`

/** How the pieces get their outlines. */
function cuttingOut(design: Design, isTrimmed: boolean, hasLettersBeside: boolean): readonly string[] {
  const others = pieces(design).filter(({ id }) => id !== 'card')
  if (others.length === 0) return isTrimmed ? [] : [says.cutCardOut]
  if (others.every(({ id }) => id === 'cover')) return [isTrimmed ? says.cutCoverOut : says.cutBothOut]
  return [...(hasLettersBeside ? [says.pencilFirst] : []), says.cutAllOut]
}

/**
 * Steps in brief. A design without mechanisms is a card to fold.
 * @param isDotted whether places that are glued on the other face are dotted on this sheet
 * @param hasCorners whether corners show where a piece is stuck flat
 */
export function stepsFor(
  design: Design,
  lines: SheetLines,
  trim: Trim = {},
  isDotted = lines !== 'ticks',
  hasCorners = false,
): readonly string[] {
  const face = faceOf(lines)
  const cut = design.mechanisms.filter(isCut)
  const glued = design.mechanisms.filter((m) => !isCut(m))
  const trimming = trimStep(trim)
  const steps = [
    ...(trimming === null ? [] : [trimming]),
    [
      ...cuttingOut(design, trimming !== null, trim.hasLettersBeside ?? false),
      says.score(lines === 'ticks'),
      ...(lines === 'ticks' && hasCorners ? [says.cornersAreNone] : []),
    ].join(' '),
  ]
  if (threaded(design).length > 0) steps.push(says.cutSlits)
  if (cut.length > 0) steps.push(...cuttingSteps(design, cut, lines))
  else steps.push(says.foldGutter[face])
  if (glued.length > 0) steps.push(...stickingSteps(design, face, isDotted))
  const pops = glued.some((m) => kindOf(m).pops)
  steps.push(pops ? `${says.shutSlowly} ${says.pushUp}` : says.shutSlowly)
  if (design.card.cover) steps.push(coverStep(design, lines))
  if (trim.cover) steps.push(ownCoverStep(design, trim.cover, rimOf(design.card)))
  return steps
}

/** How to print, and what this sheet does already to come out at true size. */
export function printSays(stretch = 1): string {
  if (stretch === 1) return sections.print
  const drawn = stretch > 1 ? sections.drawnLarger : sections.drawnSmaller
  return `${sections.print} ${drawn(shown(Math.abs(stretch - 1) * 100), shown(100 / stretch))}`
}

/** What is marked on a sheet, and what it asks for, as seen on the printed side. */
export type Sign = LineKind | 'tape' | 'place' | 'behind' | 'care' | 'grain' | 'picture'

/** How a sheet is printed, as far as its key speaks of it; `care`: the sizes that are marked. */
export interface KeyOf {
  readonly lines: SheetLines
  readonly trim: Trim
  readonly care: readonly Tight[]
  /** Something is taped. */
  readonly hasTape: boolean
}

export interface KeyEntry {
  readonly sign: Sign
  readonly name: string
  readonly does: string
}

export const legend = (of: KeyOf): readonly KeyEntry[] => [
  { sign: 'cut', name: key.cut, does: key.cutDoes },
  { sign: 'valley', name: key.valley, does: key.valleyDoes },
  { sign: 'mountain', name: key.mountain, does: key.mountainDoes },
  { sign: 'crease', name: key.oldFold, does: key.oldFoldDoes },
  { sign: 'glue', name: key.glue, does: key.glueDoes },
  { sign: 'tape', name: key.tape, does: key.tapeDoes },
  { sign: 'behind', name: key.behind, does: key.behindDoes(of.hasTape) },
  { sign: 'place', name: key.place, does: key.placeDoes },
  { sign: 'care', name: key.care, does: key.careDoes(spoiltBy(of.care)) },
  // That it lies across the fold of most paper is common practice, no source.
  { sign: 'grain', name: key.grain, does: key.grainDoes(of.lines === 'ticks', of.trim.acrossGrain ?? false) },
  { sign: 'picture', name: key.picture, does: key.pictureDoes },
]

/** How far what asks for care may not be off: the least of the sizes that are marked, of lengths and of angles. */
function spoiltBy(care: readonly Tight[]): readonly string[] {
  const least = (unit: Tight['unit'], after: string): readonly string[] => {
    const all = care.filter((one) => one.unit === unit).map(({ spoilt }) => spoilt)
    return all.length === 0 ? [] : [`${shown(Math.min(...all))}${after}`]
  }
  return [...least('mm', '\u00a0mm'), ...least('deg', '°')]
}
