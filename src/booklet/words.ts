/** What a step of the booklet says. */

import * as says from '../../content/words/booklet/steps.ts'
import { only } from '../drawing/steps/scene.ts'
import { foldsTogether } from '../making/making.ts'
import { spineOf, spineSays } from '../making/spine.ts'
import type { Design, TipMeasure } from '../paper/index.ts'
import {
  isUneven,
  jointsOf,
  measure,
  nameOf,
  openingRange,
  ownerOf,
  pieces,
  ridgeFold,
  rimOf,
  riseOf,
  threaded,
} from '../paper/index.ts'
import { isOutside } from '../sheet/marks/instructions.ts'
import { letteredJoints } from '../sheet/marks/joint-places.ts'
import { shown } from '../sheet/marks/sizes.ts'
import type { Work } from './order.ts'
import { tapedOf } from './order.ts'
import { coverApart, mayBeTrimmed } from './outlines.ts'

export interface Words {
  readonly title: string
  readonly text: readonly string[]
  /** Which letters of the sheet lie on one another. */
  readonly letters?: string
  /** What the hands take. */
  readonly tools: string
  /** Where a blade, hot glue or small fingers come in. */
  readonly caution?: string
  /** A number of the model to hold a ruler to. */
  readonly check?: string
}

const namesOf = (ids: readonly string[]): readonly string[] => ids.map(nameOf)

const the = (ids: readonly string[]): string => (ids.length === 0 ? says.card : says.the(namesOf(ids)))

/** More parts than these are counted in a title, and named below it. */
const NAMED = 8

const titled = (ids: readonly string[]): string => (ids.length > NAMED ? says.many(ids.length) : the(ids))

/** The sentence that names them. */
const named = (ids: readonly string[]): readonly string[] =>
  ids.length > NAMED ? [says.theyAre(namesOf(ids))] : []

const mm = (value: number): string => `${value.toFixed(0)}\u00a0mm`

/** The opening at which a ruler is held: a right angle, or the nearest that the card reaches. */
function readAt(design: Design): number {
  const [least, most] = openingRange(design)
  return Math.round(Math.min(Math.max(90, least), most))
}

/** The page from which the ruler reads so: that which is nearer to the tip, unless the other one reads the same. */
function readFrom({ at, rise }: TipMeasure, opening: number): string {
  const [x, y, z] = at
  // From a tip to two pages it is as far, taken together, as from the spot of it right over the gutter.
  const fromOther = 2 * riseOf([0, y, z], opening) - rise
  if (mm(fromOther) === mm(rise)) return says.eitherPage
  return says.page(x > 0 ? 'right' : 'left')
}

/** How high the highest of some tips stands, once they are there. */
function checkOf(design: Design, done: readonly string[], of: readonly string[]): string | undefined {
  const part = only(design, done)
  const opening = readAt(part)
  if (opening < 20) return undefined
  const { tips } = measure(part, opening)
  const read = of.flatMap((id) => {
    const tip = tips[id]
    return tip && tip.rise >= 1 ? [{ id, tip }] : []
  })
  const [best] = [...read].sort((a, b) => b.tip.rise - a.tip.rise)
  if (!best) return undefined
  const { id, tip } = best
  return says.check(`${opening}°`, readFrom(tip, opening), nameOf(id), mm(tip.rise))
}

/** Strips that go away from the reader: those with a valley in their middle. */
const inwards = (design: Design, of: readonly string[]): readonly string[] =>
  of.filter((id) => ridgeFold(design, id) === 'valley')

const hostOf = (design: Design, id: string): string => design.mechanisms.find((m) => m.id === id)?.on ?? ''

/** Where a part hangs, in words: `the left page`, `the right side of the moth`. */
function placeOf(design: Design, id: string): string {
  const on = hostOf(design, id)
  const [owner = '', part = ''] = on.split('/')
  if (on === 'gutter') return says.gutter
  if (owner === 'page') return says.page(part)
  return part === 'ridge' ? says.ridge(nameOf(owner)) : says.side(nameOf(owner), part)
}

const isOnBack = (design: Design, id: string): boolean =>
  design.mechanisms.some((m) => m.id === id && 'face' in m && m.face === 'back')

/** Where a piece is stuck on a face. */
function facePlace(design: Design, id: string): string {
  const place = placeOf(design, id)
  return isOnBack(design, id) ? says.back(place) : place
}

function facesOf(design: Design, of: readonly string[]): keyof typeof says.glueOn {
  const behind = of.filter((id) => isOnBack(design, id)).length
  if (behind === 0) return 'front'
  return behind === of.length ? 'back' : 'both'
}

/** Where a piece is laid, in a sentence. */
function laidOn(design: Design, id: string): string {
  const place = placeOf(design, id)
  if (sitsOutside(design, id)) return says.goesOutside(place)
  return hostOf(design, id) === 'gutter' ? says.goesOver(place) : says.goesOn(place)
}

/** The letters of the joints of some parts: all, or those on one side. */
function lettersOf(
  design: Design,
  of: readonly string[],
  side?: 'left' | 'right',
  saying = says.letters,
): string | undefined {
  const found = letteredJoints(design).filter(
    (joint) => of.includes(ownerOf(joint.of)) && (side === undefined || joint.of.endsWith(`/${side}`)),
  )
  const letters = [...new Set(found.map(({ letter }) => letter))]
  return letters.length === 0 ? undefined : saying(letters)
}

const withLetters = (letters: string | undefined): Pick<Words, 'letters'> =>
  letters === undefined ? {} : { letters }

/** Built on the outside of a fold, where a reader of the open card does not see it. */
const sitsOutside = (design: Design, id: string): boolean =>
  design.mechanisms.some((m) => m.id === id && isOutside(m))

const lifted = (design: Design, id: string): readonly string[] =>
  tapedOf(design).has(id) ? [says.liftAndTape] : []

/** How such a one is laid on: its fold has no other side that a shutting card would press on it. */
const astride = (design: Design, id: string): readonly string[] => [
  hostOf(design, id) === 'gutter' ? says.shutIt : says.pinch(placeOf(design, id)),
  says.layAstride,
]

/** How its second joint is stuck. */
function closingOn(design: Design, id: string): (what: string) => string {
  if (sitsOutside(design, id)) return says.closeAstride
  return tapedOf(design).has(id) ? says.closeOnTape : says.closeOnIt
}

/** What the joints of a part are stuck with: an edge without tabs takes tape, not glue. */
const stuckWith = (design: Design, id: string): Pick<Words, 'tools' | 'caution'> =>
  tapedOf(design).has(id) ? { tools: says.tapeTools } : { tools: says.gluedTools, caution: says.hotGlue }

/** Something is glued on, not taped; the cover comes later. */
const hasGlued = (design: Design): boolean =>
  jointsOf(design).some(({ isTaped, host }) => !isTaped && host.piece !== 'cover')

/** Some slits lie in pieces that are cut out later than the card. */
const hasSlitPieces = (design: Design): boolean =>
  jointsOf(design).some(({ isThrough, host }) => isThrough && host.piece !== 'card')

/** Those whose two layers are folded over as one before they are pushed through. */
const foldedOver = (design: Design, of: readonly string[]): readonly string[] =>
  of.filter((id) => foldsTogether(design, id))

/** Strips on a fold that is pinched flat are creased there. */
function creasingThere(design: Design, of: readonly string[]): readonly string[] {
  const even = foldedOver(design, of)
  return even.length > 0 ? [says.creaseThere(namesOf(even), of.length)] : []
}

/** What is said of the tabs of some parts: those that have any are glued by them. */
function tabsOf(design: Design, of: readonly string[]): readonly string[] {
  const owners = new Set(
    jointsOf(design).flatMap(({ owner, fold, isTaped }) =>
      fold === null || isTaped ? [] : [design.mechanisms[owner]?.id],
    ),
  )
  const tabbed = of.filter((id) => owners.has(id))
  if (tabbed.length === 0) return []
  return [tabbed.length === of.length ? says.keepTabs : says.keepTabsOn(the(tabbed))]
}

/** How the walls of a platform are set up: which of their lower tabs go through slits, and which do not. */
function wallsSay(design: Design, id: string): string {
  const host = ownerOf(hostOf(design, id))
  const on = design.mechanisms.some((m) => m.id === host) ? the([host]) : says.card
  const feet = letteredJoints(design).filter(
    ({ of, host: { piece } }) => ownerOf(of) === id && ownerOf(piece) !== id,
  )
  const through = feet.filter(({ isThrough }) => isThrough).map(({ letter }) => letter)
  if (through.length === 0) return says.glueWalls(on)
  return says.threadWalls(on, through, through.length < feet.length)
}

/** How the cover gets its outline: last of all, so that it stays clean and flat until then. */
function coverCut(design: Design): string {
  const apart = coverApart(design)
  return [
    says.cutCover,
    ...(mayBeTrimmed(design, 'cover') ? [says.trimFirst] : []),
    ...(apart ? [says.coverOfOther(shown(apart[0]), shown(apart[1]))] : []),
  ].join(' ')
}

/** The words of one piece of work. */
export function wordsOf(design: Design, work: Work): Words {
  const { does, of, there, inHand } = work
  // No ruler reads what does not stand on the card yet.
  const done = inHand ? [] : [...there, ...of]
  const [first = ''] = of
  switch (does) {
    case 'cut-out':
      return {
        title: pieces(design).length > 1 ? says.cutOutFirstTitle : says.cutOutTitle,
        text: [
          says.printAt,
          ...(mayBeTrimmed(design, 'card') ? [says.trimFirst] : []),
          says.scoreFirst,
          says.kindsOfLine,
        ],
        tools: says.cutOutTools,
        caution: `${says.rules} ${says.blade}`,
      }
    case 'colour':
      return { title: says.colourTitle, text: [says.colourFlat], tools: says.colourTools }
    case 'slits':
      return {
        title: says.slitsTitle(titled(of)),
        text: [...named(of), says.cutSlits, says.slitsAreLonger],
        tools: says.slitsTools,
        caution: says.blade,
      }
    case 'cut': {
      const onGutter = design.mechanisms.every((m) => !of.includes(m.id) || m.on === 'gutter')
      const uneven = only(design, of)
        .mechanisms.filter(isUneven)
        .map(({ id }) => id)
      return {
        title: says.cutTitle(titled(of)),
        text: [
          ...named(of),
          onGutter
            ? says.cutFromGutter
            : says.cutFromFold(of.length === 1 ? placeOf(design, first) : says.eachFold),
          ...(uneven.length > 0 ? [says.deeperOnOneSide(namesOf(uneven), of.length)] : []),
          ...(onGutter ? [] : creasingThere(design, of)),
        ],
        tools: says.cutTools,
        caution: says.blade,
      }
    }
    case 'crease': {
      const even = foldedOver(design, of)
      return {
        title: says.creaseTitle(titled(even)),
        text: [
          ...named(even),
          says.creaseBothWays,
          ...(even.length < of.length ? [says.notOver(namesOf(of.filter((id) => !even.includes(id))))] : []),
        ],
        tools: says.creaseTools,
      }
    }
    case 'push': {
      const inner = inwards(design, of)
      return {
        title: says.pushTitle(titled(of)),
        text: [
          ...named(of),
          says.holdHalfOpen,
          ...(inner.length > 0 ? [says.pushInwards(the(inner), inner.length)] : []),
          ...(inner.length < of.length ? [says.pushFromBehind(inner.length > 0)] : []),
          says.pressSharp,
        ],
        tools: says.pushTools,
        ...withCheck(checkOf(design, done, of)),
      }
    }
    case 'pieces':
      return {
        title: of.length === 1 ? says.pieceTitle(the(of)) : says.piecesTitle,
        text: [
          says.cutPiecesOut(the(of)),
          ...tabsOf(design, of),
          says.foldPieces,
          ...(hasGlued(design) ? [says.hatchedGetGlue] : []),
          says.twins,
          ...(hasSlitPieces(design) ? [says.cutSlitsInPieces] : []),
        ],
        tools: says.piecesTools,
        caution: says.blade,
      }
    case 'thread':
      return {
        title: says.threadTitle(titled(of)),
        text: [
          ...(inHand ? [says.beforeItStands(the(inHand.slice(-1)))] : []),
          says.threadTabs(the(of)),
          says.bendTabs(placeOf(design, first)),
          threaded(design, 'card').includes(first) ? `${says.turnBack} ${says.hiddenBehind}` : says.turnBack,
        ],
        tools: says.threadTools,
        ...withLetters(lettersOf(design, of)),
        caution: says.hotGlue,
        ...withCheck(checkOf(design, done, of)),
      }
    case 'lay': {
      const byLetter = lettersOf(design, of) ? says.layLeftByLetter : says.layLeft
      return {
        title: says.layTitle(titled(of)),
        text: [
          laidOn(design, first),
          ...(sitsOutside(design, first) ? astride(design, first) : [byLetter, ...lifted(design, first)]),
        ],
        ...stuckWith(design, first),
        ...withLetters(lettersOf(design, of, 'left')),
      }
    }
    case 'close':
      return {
        title: sitsOutside(design, first) ? says.closeAstrideTitle : says.closeTitle,
        text: [
          closingOn(design, first)(the(of)),
          tapedOf(design).has(first) ? says.lookAtTape : says.lookWhileWet,
        ],
        ...stuckWith(design, first),
        ...withLetters(lettersOf(design, of, 'right')),
        ...withCheck(checkOf(design, done, of)),
      }
    case 'tape':
      return {
        title: says.tapeTitle(titled(of)),
        text: [says.tapeWhole(placeOf(design, first))],
        tools: says.tapeTools,
      }
    case 'pop':
      return { title: says.popTitle(titled(of)), text: [says.popUp], tools: says.popTools }
    case 'stand':
      return {
        title: says.standTitle(titled(of)),
        text: [
          ...(inHand ? [says.beforeItStands(the(inHand.slice(-1)))] : []),
          wallsSay(design, first),
          says.gluePlatform(placeOf(design, first)),
        ],
        tools: says.standTools,
        ...withLetters(lettersOf(design, of)),
        caution: says.hotGlue,
        ...withCheck(checkOf(design, done, of)),
      }
    case 'stick':
      return {
        title: says.stickTitle(titled(of)),
        text: [
          ...named(of),
          says.stickOn(of.length, [...new Set(of.map((id) => facePlace(design, id)))]),
          says.glueOn[facesOf(design, of)],
          says.shutOnce,
        ],
        tools: says.stickTools,
        ...withLetters(lettersOf(design, of)),
        caution: says.hotGlue,
      }
    case 'press':
      return {
        title: says.pressTitle,
        text: [says.pressHard, ...(hasGlued(design) ? [says.letDry] : [])],
        tools: says.pressTools,
      }
    case 'open':
      return {
        title: says.openTitle,
        text: [says.openSlowly],
        tools: says.openTools,
        ...withCheck(checkOf(design, done, done)),
      }
    case 'cover':
      return {
        title: says.coverTitle,
        text: [
          `${coverCut(design)} ${spineSays(design) || `${says.scoreCover} `}${says.glueRim(mm(rimOf(design.card)))}`,
          says.layInCover(spineOf(design) > 0),
        ],
        tools: says.coverTools,
        ...withLetters(lettersOf(design, ['cover'], undefined, says.coverLetters)),
        caution: says.hotGlue,
      }
  }
}

const withCheck = (check: string | undefined): Pick<Words, 'check'> => (check === undefined ? {} : { check })
