/**
 * What the checks find. Names of parts come as `names.ts` says them: `Name` stands at the beginning of a sentence. Lengths
 * and angles come with their units.
 */
import { begun, listed } from './grammar.ts'

/** A left or right fold. */
export const foldOf = (place: string): string => `${place} fold`

export const lessThan = (size: string): string => `less than ${size}`

// Openings, and when.

export const shut = 'shut'

export const flat = 'flat'

export const whenShut = 'when the card is shut'

export const whenFlat = 'when the card lies flat'

export const whenOpen = (opening: string): string => `when the card is open at ${opening}`

// Shuts flat.

export const shutsFlat = 'The card shuts flat.'

export const doesNotShut = (Name: string, off: string): string =>
  `${Name} does not shut flat: it still stands ${off} off the page.`

export const sidesDiffer = (Name: string, by: string): string =>
  `${Name} cannot shut flat: its left and right side differ by ${by}.`

// Opens flat.

export const opensFlat = 'The card opens flat.'

export const doesNotOpen = (Name: string, off: string): string =>
  `${Name} does not open flat: it stays ${off} away from where it should lie.`

export const sidesNeverMeet = (Name: string): string =>
  `${Name} fits at no opening of its fold: its two sides can never meet.`

export const neverFits = (Name: string): string => `${Name} and what it stands on fit together at no opening.`

// Stays inside.

export const edges: Readonly<Record<'near' | 'far' | 'side' | 'gutter', string>> = {
  near: 'near edge',
  far: 'far edge',
  side: 'side edge',
  gutter: 'gutter',
}

export const sticksOut = (Name: string, by: string, edge: string, when: string): string =>
  `${Name} sticks out ${by} past the ${edge} ${when}.`

export const nothingSticksOut = (name: string, margin: string, edge: string, when: string): string =>
  `Nothing sticks out: ${name} comes nearest, ${margin} inside the ${edge} ${when}.`

export const insideUntold = (name: string, margin: string): string =>
  `We cannot tell for sure whether ${name} stays inside the card on its way; the least margin seen is ${margin}.`

// Inside its fold.

export const keepsToFold = (name: string, short: string, fold: string): string =>
  `Every part keeps to its fold: ${name} ends ${short} short of the end of ${fold}.`

export const pastFold = (Name: string, by: string, fold: string): string =>
  `${Name} reaches ${by} past the end of ${fold}.`

// Cuts inside their panel, and apart.

export const cutsInside = 'Every cut lies inside its panel.'

export const cutOverEdge = (Name: string, by: string, panel: string): string =>
  `${Name} is cut ${by} over the edge of ${panel}.`

export const cutsApart = 'No cut runs into another.'

export const overlaps = (Name: string, other: string, by: string, fold: string): string =>
  `${Name} and ${other} overlap by ${by} on ${fold}.`

export const crossesItself = (name: string, off: string): string =>
  `The outline of ${name} crosses itself, ${off} from its nearest corner.`

export const cutInto = (Name: string, other: string, by: string, panel: string): string =>
  `${Name} and ${other} cut ${by} into each other on ${panel}.`

// Bridges of paper, and narrow parts.

export const edgeOfPage = 'the edge of the page'

export const narrowestBridge = (width: string, name: string, other: string): string =>
  `The narrowest bridge of paper is ${width}, between ${name} and ${other}.`

export const weakBridge = (width: string, panel: string, name: string, other: string): string =>
  `Only ${width} of paper is left on ${panel} between ${name} and ${other}: it may tear.`

export const narrowestPart = (panel: string, width: string): string =>
  `The narrowest part is ${panel}, ${width} wide.`

export const tooNarrow = (panel: string, width: string): string =>
  `Only ${width} wide: ${panel} may tear or buckle.`

// Glue.

export const glueHolds = 'All glue sticks to one side alone.'

export const gluePastEdge = (Name: string, by: string, panel: string): string =>
  `${Name}’s glue reaches ${by} past the edge of ${panel}.`

export const glueOverCut = (Name: string, by: string, other: string, panel: string): string =>
  `${Name}’s glue runs ${by} over the cut and folds of ${other} on ${panel}.`

export const glueBeside = (Name: string, by: string): string => `${Name}’s glue shows ${by} beside the piece.`

export const ownTabsInterlock = (name: string, panel: string): string =>
  `Two tabs of ${name} lie over each other’s joint on ${panel}: neither can be stuck down first.`

export const tabsInterlock = (Name: string, other: string, panel: string): string =>
  `${Name}’s tab and ${other}’s lie over each other’s joint on ${panel}: neither can be stuck down first.`

export const overSlit = (Name: string, by: string, other: string, panel: string): string =>
  `${Name} lies over ${by} of the slit for ${other} on ${panel}: once it is glued, that tab cannot go through. Make the first tab narrower, or move one of them.`

// Clear all the way.

export const clear = 'All parts pass clear of each other, from flat to shut.'

/** `some`: those that go less far, each as `goesFrom` says it. */
export const clearAsFar = (some: readonly string[]): string =>
  `All parts pass clear of each other, from flat to shut, as far as they go: ${listed(some)}, with all that stands on ${some.length > 1 ? 'them' : 'it'}.`

export const goesFrom = (name: string, from: string, to: string): string => `${name} from ${from} to ${to}`

export const lyingThrough = (Name: string, panel: string): string =>
  `${Name} would have to go through ${panel}: it cannot lie down like this.`

export const runInto = (name: string, other: string, when: string): string =>
  `${begun(name)} and ${other} run into each other ${when}.`

export const clearUntold = (name: string, other: string, when: string, gap: string): string =>
  `We cannot tell whether ${name} and ${other} pass clear ${when}: the gap is too small, ${gap}.`

/** `why`: `sidesNeverMeet` or `neverFits`. */
export const motionUntold = (why: string): string => `Nothing can be told of the whole motion. ${why}`

export const fitNowhere = (name: string): string =>
  `Nothing can be told of the whole motion: at no opening do all parts of the card fit together, ${name} among them.`

export const cutFirst = (name: string): string =>
  `Whether all parts pass clear of each other can be told once ${name} can be cut.`

// Thickness.

const thick = (thickness: string, layers: number, covered: boolean): string =>
  `Shut, the card is ${thickness} thick where ${layers} layers lie on one another${covered ? ', its cover among them' : ''}`

export const thin = (thickness: string, layers: number, covered: boolean): string =>
  `${thick(thickness, layers, covered)}.`

export const tooThick = (thickness: string, layers: number, covered: boolean): string =>
  `${thick(thickness, layers, covered)}: it may not stay shut.`
