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
import { letteredJoints } from './joint-places.ts'
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

/**
 * How a piece is printed. Of a cover the outside is seen and the inside never, but through holes: where the card is
 * printed on its outside, so that its inside stays clean, the cover is printed on its inside, with ticks.
 */
export const printedAs = (piece: string, lines: SheetLines): SheetLines =>
  piece === 'cover' && lines === 'back' ? 'ticks' : lines

type Mechanism = Design['mechanisms'][number]

/** The face of a piece that is printed with a face of the card. */
const PRINTED = { inside: 'front', outside: 'back' } as const

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

/** `say`: how they are cut; all of several are not named where they were just before. */
function deeper(
  parts: readonly Mechanism[],
  called: Called,
  say = says.uneven,
  areNamed = false,
): readonly string[] {
  const uneven = parts.filter(isUneven)
  const isAll = areNamed && uneven.length === parts.length && parts.length > 1
  if (uneven.length === 0) return []
  return [say(isAll ? [] : called(uneven))]
}

/** Of some parts of the card, those that a fold of what they are cut from runs through: it is pressed flat in them. */
function pressedFlat(design: Design, parts: readonly Mechanism[]): readonly Mechanism[] {
  const lines = pieces(design).find(({ id }) => id === 'card')?.lines ?? []
  const along = (of: (of: string) => boolean): readonly number[] =>
    lines.flatMap((line) => (of(line.of) ? line.points.map(([, y]) => y) : []))
  return parts.filter(({ id, on }) => {
    const own = along((of) => of.startsWith(`${id}/`))
    return lines.some(
      ({ kind, of, points }) =>
        kind === 'crease' &&
        of === on &&
        points.every(([, y]) => y > Math.min(...own) - 0.01 && y < Math.max(...own) + 0.01),
    )
  })
}

function pressing(design: Design, parts: readonly Mechanism[]): readonly string[] {
  const found = pressedFlat(design, parts)
  if (found.length === 0) return []
  return [says.pressOldFold(found.length === parts.length && parts.length > 1 ? [] : named(found))]
}

/** Parts by the fold that they are cut from, left and right as they are seen. */
function byFold(parts: readonly Mechanism[], face: SheetFace): readonly says.OnFold[] {
  const turned: Readonly<Record<string, string>> = face === 'outside' ? { left: 'right', right: 'left' } : {}
  return [...new Set(parts.map(({ on }) => on))].map((on) => {
    const side = on.slice(ownerOf(on).length + 1)
    return {
      parts: named(parts.filter((m) => m.on === on)),
      side: says.sides[turned[side] ?? side] ?? nameOf(side),
      owner: nameOf(ownerOf(on)),
    }
  })
}

/** How parts are cut on folds that other parts made: theirs are the solid lines that are left. */
function nested(
  design: Design,
  later: readonly Mechanism[],
  called: Called,
  face: SheetFace,
  isExplained: boolean,
): string {
  const outwards = later.filter(({ id }) => ridgeFold(design, id) === 'valley')
  return [
    says.newFolds(byFold(later, face)),
    ...deeper(later, called, isExplained ? says.unevenToo : says.uneven, true),
    says.creaseAndPush(later.length, named(later.filter(({ id }) => foldsTogether(design, id)))),
    ...(outwards.length > 0 ? [says.pushOutwards(named(outwards))] : []),
    ...pressing(design, later),
  ].join(' ')
}

/** Which solid lines are cut from the gutter: by name, where some of them begin on folds that are not there yet. */
function cutNow(even: readonly Mechanism[], later: readonly Mechanism[], isOther: boolean, called: Called) {
  if (even.length === 0) return []
  return [later.length > 0 ? says.cutNamed(called(even)) : says.cutEven(isOther)]
}

function cuttingSteps(design: Design, cut: readonly Mechanism[], lines: SheetLines): readonly string[] {
  const face = faceOf(lines)
  const called = calledOn(design, lines, cut)
  const first = cut.filter((m) => m.on === 'gutter')
  const later = cut.filter((m) => m.on !== 'gutter')
  const shape = later.length > 0 ? says.cutPart : shapeOf(cut)
  // Where the two layers fold about different lines, folding them over together would put a fold beside its own line.
  const over = first.filter(({ id }) => foldsTogether(design, id))
  const others = first.length - over.length
  const uneven = deeper(first, called)
  return [
    [
      says.foldToCut,
      ...uneven,
      ...(others > 0 ? [says.notOver(others)] : []),
      ...cutNow(
        first.filter((m) => !isUneven(m)),
        later,
        uneven.length > 0,
        called,
      ),
      ...(later.length > 0 ? [says.notYet(named(later))] : []),
      ...(called !== named && (uneven.length > 0 || later.length > 0) ? [says.partsAt] : []),
    ].join(' '),
    ...(over.length > 0 ? [says.foldToAndFro(shape, over.length, others > 0)] : []),
    [
      says.linesOf[face],
      says.pushThrough(shape, first.length),
      ...(others > 0 ? [says.pressNewFolds] : []),
      ...pressing(design, first),
    ].join(' '),
    ...(later.length > 0 ? [nested(design, later, called, face, uneven.length > 0)] : []),
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

/** The letters of the two joints of each of some parts, in the order in which they are stuck: the left one first. */
const pairsOf = (design: Design, parts: readonly Mechanism[]): readonly says.Pair[] =>
  parts.flatMap(({ id }): readonly says.Pair[] => {
    const own = letteredJoints(design).filter(({ of }) => ownerOf(of) === id)
    const at = (side: string): string | undefined => own.find(({ of }) => of === `${id}/${side}`)?.letter
    const [left, right] = [at('left'), at('right')]
    return left !== undefined && right !== undefined ? [[left, right]] : []
  })

/** The pieces of their own card that are folded before they are stuck. */
function folding(design: Design): readonly string[] {
  const folded = pieces(design).filter(
    ({ id, lines }) =>
      id !== 'card' && id !== 'cover' && lines.some(({ kind }) => kind === 'valley' || kind === 'mountain'),
  )
  const [only] = folded
  if (!only) return []
  return [folded.length === 1 ? says.foldPiece(pieceName(only.id)) : says.foldPieces]
}

/** How pieces of their own card are stuck: in which order, on which places, and how each kind is held. */
function stickingSteps(design: Design, face: SheetFace): readonly string[] {
  const all = jointsOf(design).filter(({ host }) => host.piece !== 'cover')
  const isGlued = all.some(({ isTaped }) => !isTaped)
  const taped = new Set(all.flatMap(({ of, isTaped }) => (isTaped ? [ownerOf(of)] : [])))
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
  const platforms = new Set(walled.map(({ id }) => id))
  const above = through.filter(({ on }) => platforms.has(ownerOf(on)))
  const withTape = (parts: readonly Mechanism[], isTaped: boolean): readonly Mechanism[] =>
    parts.filter(({ id }) => taped.has(id) === isTaped)
  const [gluedLaid, tapedLaid] = [withTape(laid, false), withTape(laid, true)]
  const isOne = new Set(all.map(({ of }) => ownerOf(of))).size === 1
  const isHidden = all.some(
    ({ isTaped, own, host }) => !isTaped && [own, host].every(({ face: on }) => on !== PRINTED[face]),
  )
  const over = (parts: readonly Mechanism[]): string =>
    parts.every(({ on }) => on === 'gutter') ? says.gutter : says.itsFold
  const how = [
    ...(walled.length > 0 ? [says.wallsFirst(named(walled))] : []),
    ...(through.length > 0 ? [says.pushTabs(named(through))] : []),
    ...(above.length > 0 ? [says.beforePlatform(named(above))] : []),
    ...(gluedLaid.length > 0 ? [says.layGlued(pairsOf(design, gluedLaid), over(gluedLaid))] : []),
    ...(tapedLaid.length > 0 ? [says.layTaped(pairsOf(design, tapedLaid), over(tapedLaid))] : []),
    ...[false, true].flatMap((isTaped) => {
      const some = withTape(saddles, isTaped)
      return some.length > 0 ? [says.astride(named(some), isTaped)] : []
    }),
  ]
  return [
    [
      ...folding(design),
      isOne ? says.letterToTwin : says.inOrder,
      ...(isGlued ? [says.glueHatched(isHidden, design.card.cover ?? false)] : []),
      ...(face === 'outside' ? [says.findOnInside] : []),
      ...(isGlued && !isOne ? [says.letEachDry] : []),
    ].join(' '),
    ...(isOne && isGlued ? [...how.slice(0, -1), [...how.slice(-1), says.letDry].join(' ')] : how),
  ]
}

/** Glued last: until then all that is cut can be pushed through from behind. A good copy has no letters of its rim. */
const coverStep = (design: Design, lines: SheetLines): string =>
  says.glueCover(lines !== 'ticks', spineOf(design) > 0)

/** The same where the cover has no page: no rim is marked, and the design that is printed has none. */
function ownCoverStep(printed: Design, [wide, high]: readonly [number, number]): string {
  const design = { ...printed, card: { ...printed.card, cover: true } }
  const glued = says.glueOwnCover(shown(rimOf(printed.card)), spineOf(design) > 0)
  return `${says.cutCover(shown(wide), shown(high))} ${spineSays(design)}${glued}`
}

/** What stands among ticks and is none. */
function notScored(hasCorners: boolean, hasTape: boolean): readonly string[] {
  if (!hasCorners && !hasTape) return []
  return [says.notScored[hasCorners ? (hasTape ? 'both' : 'corners') : 'tape']]
}

/** How the pieces get their outlines, once they are scored. */
function cuttingOut(design: Design, isTrimmed: boolean): readonly string[] {
  const others = pieces(design).filter(({ id }) => id !== 'card')
  if (others.length === 0) return isTrimmed ? [] : [says.cutCardOut]
  if (others.every(({ id }) => id === 'cover')) return [isTrimmed ? says.cutCoverOut : says.cutBothOut]
  return [says.cutAllOut]
}

/**
 * Steps in brief. A design without mechanisms is a card to fold.
 * @param hasCorners whether corners show where a piece is stuck flat
 */
export function stepsFor(
  design: Design,
  lines: SheetLines,
  trim: Trim = {},
  hasCorners = false,
): readonly string[] {
  const face = faceOf(lines)
  const cut = design.mechanisms.filter(isCut)
  const glued = design.mechanisms.filter((m) => !isCut(m))
  const trimming = trimStep(trim)
  const steps = [
    ...(trimming === null ? [] : [trimming]),
    [
      says.score(lines === 'ticks'),
      ...(lines === 'ticks'
        ? notScored(
            hasCorners,
            jointsOf(design).some(({ isTaped }) => isTaped),
          )
        : []),
      ...(trim.hasLettersBeside ? [says.pencilFirst[face]] : []),
      ...cuttingOut(design, trimming !== null),
    ].join(' '),
  ]
  if (threaded(design).length > 0) steps.push(says.cutSlits)
  if (cut.length > 0) steps.push(...cuttingSteps(design, cut, lines))
  else steps.push(says.foldGutter[face])
  if (glued.length > 0) steps.push(...stickingSteps(design, face))
  const pops = glued.some((m) => kindOf(m).pops)
  steps.push(pops ? `${says.shutSlowly} ${says.pushUp}` : says.shutSlowly)
  if (design.card.cover) steps.push(coverStep(design, lines))
  if (trim.cover) steps.push(ownCoverStep(design, trim.cover))
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
