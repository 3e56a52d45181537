/** The steps in brief on a sheet. */

const listed = (parts: readonly string[]): string => parts.join(parts.length === 2 ? ' and ' : ', ')

/** How a piece gets its outline where it fills its sheet; `mm`: how much is too much. Told among the steps, or on the sheet. */
export const ofCard = { sheet: 'the card’s sheet', own: 'the card’s own' }
export const ofThis = { sheet: 'this sheet', own: 'its own' }

type Filled = typeof ofCard

export const sidesAreEdges = ({ sheet, own }: Filled): string =>
  `The left and right edges of ${sheet} are ${own}.`
export const endsAreEdges = ({ sheet, own }: Filled): string =>
  `The upper and lower edges of ${sheet} are ${own}.`
export const trimSides = ({ sheet }: Filled, mm: string): string =>
  `Trim ${mm}\u00a0mm off the left and right edges of ${sheet}.`
export const trimEnds = ({ sheet }: Filled, mm: string): string =>
  `Trim ${mm}\u00a0mm off the upper and lower edges of ${sheet}.`
/** After scoring: small folds cannot be reached later. */
export const cutCardOut = 'Then cut the card out.'
export const cutCoverOut = 'Then cut the cover out.'
export const cutBothOut = 'Then cut the card and its cover out.'
export const cutAllOut = 'Then cut all pieces out.'

/** By the side that is printed: whoever cuts the piece out cuts the letter off. */
export const pencilFirst = {
  inside: 'Pencil each letter beside a piece on the back of that piece, at the same place.',
  outside: 'Pencil each letter beside a piece on that piece, on this printed side.',
}

/** On a face that has ticks: what must not be taken for one. */
export const notScored = {
  corners: 'Small corners show where a piece goes: do not score them.',
  tape: 'Small crossed corners are for tape: do not score them.',
  both: 'Small corners are for pieces, crossed ones for tape: do not score them.',
}

/** `isFromTicks`: where no fold has its line. */
export const score = (isFromTicks: boolean): string =>
  `Score every fold with a ruler and a dry ball pen${isFromTicks ? ', from tick to tick' : ''}.`
export const cutSlits =
  'Cut the short slits for tabs with a knife while all lies flat. They are for an adult.'

/** A card without cuts, by the side that its lines are on. */
export const foldGutter = {
  inside: 'Fold the gutter, lines inside. Press it from the middle to the ends.',
  outside: 'Fold the gutter, lines outside. Press it from the middle to the ends.',
}

/** Parts that are cut from their host; `loose`: what comes free, a part where there are several kinds. */
export const part = 'part'
/** On a good copy no part carries its name: where it lies, from and to. */
export const partAt = (name: string, from: number, to: number): string => `${name} (${from}–${to})`
export const partsAt = 'In brackets: mm along the gutter.'
export const foldToCut = 'Fold the gutter, lines outside.'
/** Parts and the fold that they are cut from. */
export interface OnFold {
  readonly parts: readonly string[]
  readonly side: string
  readonly owner: string
}

const onFolds = (groups: readonly OnFold[]): string =>
  groups.map(({ parts, side, owner }) => `${listed(parts)} on the ${side} fold of ${owner}`).join('; ')

/** The folds of a part. */
export const sides: Readonly<Record<string, string>> = { ridge: 'middle', left: 'left', right: 'right' }

/** None: all that the step is about. */
const someOf = (parts: readonly string[]): string => (parts.length > 0 ? listed(parts) : 'all')

/** Said before anything is cut: through both layers is too far on one of them. */
export const uneven = (parts: readonly string[]): string =>
  `Deeper on one side: ${someOf(parts)}. Turn the shorter lines to you, cut both layers so far, open and cut on.`
/** Once it was told how. */
export const unevenToo = (parts: readonly string[]): string =>
  `Deeper on one side, cut on as before: ${someOf(parts)}.`
/** `isOther`: not those that are deeper on one side. */
export const cutEven = (isOther: boolean): string =>
  `Cut the ${isOther ? 'other ' : ''}solid lines from the fold, through both layers.`
/** The same where not all solid lines begin on this fold. */
export const cutNamed = (parts: readonly string[]): string =>
  `Cut the lines of ${listed(parts)} from the fold, through both layers.`
export const notYet = (parts: readonly string[]): string => `Not yet: ${listed(parts)}.`
/** The same where others are folded over; so many they are. */
export const notOver = (count: number): string =>
  count === 1 ? 'Do not fold it over: pushing folds it.' : 'Do not fold them over: pushing folds them.'

const eachOf = (loose: string, count: number): string => `${count === 1 ? 'the' : 'each'} ${loose}`

/** So many; `isOther`: not those that are deeper on one side. */
export const foldToAndFro = (loose: string, count: number, isOther: boolean): string =>
  `Fold ${isOther ? `the other ${loose}${count === 1 ? '' : 's'}` : eachOf(loose, count)} to the front and press, then to the back.`

/** What is folded and pushed, where other parts are not cut yet. */
export const cutPart = 'cut part'

/** Before parts are pushed through, by the side that lines are on. */
export const linesOf = {
  inside: 'Fold the gutter the other way, lines inside.',
  outside: 'Keep the lines outside.',
}
export const pushThrough = (loose: string, count: number): string =>
  `Open the card half way. Push ${eachOf(loose, count)} through to the inside.`

/** After those that could not be creased before. */
export const pressNewFolds = 'Shut it and press.'

/** Parts that a fold of what they are cut from runs through. */
export const pressOldFold = (parts: readonly string[]): string =>
  parts.length > 0
    ? `In ${listed(parts)} press the old fold flat again.`
    : 'Press the old fold in each flat again.'

/** Pinched the way that it lies, a valley would hide its lines. */
export const newFolds = (groups: readonly OnFold[]): string =>
  `Next, ${onFolds(groups)}. Pinch ${groups.length === 1 ? 'that' : 'each'} fold flat, lines outside, and cut from it.`
/** `creased`: those of so many that are folded over before they are pushed. */
export const creaseAndPush = (count: number, creased: readonly string[]): string =>
  creased.length === 0
    ? 'Push.'
    : creased.length < count
      ? `Crease (only ${listed(creased)}) and push.`
      : 'Crease and push.'
export const pushOutwards = (parts: readonly string[]): string => `Push to the outside: ${listed(parts)}.`

/** Parts of their own card: which letters meet, and which of two places gets the glue. */
export const foldPiece = (name: string): string => `Fold the ${name}.`
export const foldPieces = 'Fold each piece that has a fold.'
export const letterToTwin = 'Each letter has a twin: see the list of joints.'

/** Of several: what is read before anything is stuck. */
export const inOrder =
  'Then stick piece after piece, each letter on its twin, A first: see the joints. How: the next steps.'

/** `isHidden`: some joint has both its places on the other face; `hasRim`: that of the cover is hatched or dotted too. */
export const glueHatched = (isHidden: boolean, hasRim: boolean): string =>
  `Glue goes on the hatched one of the two places${
    isHidden ? '; where neither is hatched, on the other face of one' : ''
  }.${hasRim ? ' The rim waits for the cover.' : ''}`

/** Where nothing is printed on the face that is glued. */
export const findOnInside =
  'To find a joint on the clean side, hold the paper to a window, or prick both ends of its line through with a pin.'

/** Then how each kind is held. */
export const pushTabs = (parts: readonly string[]): string =>
  `Push each tab of ${listed(parts)} that has a slit through its slit, bend it away from the fold and glue it behind.`
/** Under a platform that stands on its walls no hand gets. */
export const beforePlatform = (parts: readonly string[]): string =>
  `What goes through a platform comes before it stands on its walls: ${listed(parts)}.`

/** The letters of the two joints of a piece, the one that is stuck first before the other. */
export type Pair = readonly [first: string, second: string]

const pairs = (all: readonly Pair[]): string => listed(all.map((letters) => letters.join('\u00a0')))

/** It lies as it will lie in the shut card: never between its two lines. */
const laidOn = (letter: string, twin: string, fold: string): string =>
  `fold the piece. Lay its ${letter} on ${twin}, its ridge away from ${fold}`

/** Where its two places meet. */
export const gutter = 'the gutter'
export const itsFold = 'the fold that it stands on'

/** A piece that has tabs. */
export const layGlued = (all: readonly Pair[], fold: string): string => {
  const [only] = all
  return all.length === 1 && only
    ? `${only[0]} and ${only[1]}: ${laidOn(only[0], `the other ${only[0]}`, fold)}. Glue ${only[0]} alone. Then put glue on ${only[1]}, shut the card on it and press.`
    : `${pairs(all)}: ${laidOn('first letter', 'its twin', fold)}. Glue that joint alone. Then put glue on the other one, shut the card on it and press.`
}

/** One whose edges are taped: the first one from inside, for its front lies on the page. */
export const layTaped = (all: readonly Pair[], fold: string): string => {
  const [only] = all
  const [laid, edge, other] =
    all.length === 1 && only
      ? [
          `${only[0]} and ${only[1]}: ${laidOn(only[0], `the other ${only[0]}`, fold)}`,
          `all of ${only[0]}’s edge`,
          `${only[1]}’s edge`,
        ]
      : [`${pairs(all)}: ${laidOn('first letter', 'its twin', fold)}`, 'all of that edge', 'the other edge']
  return `${laid}. Lift its upper half and tape ${edge} along its line, not over the fold. Let it down. Slip tape under ${other}, sticky side up, half of it showing. Shut the card on it and press. Open it and tape both edges in front too.`
}

/** On the outside of a fold; `isTaped`: by edges without tabs. */
export const astride = (parts: readonly string[], isTaped: boolean): string =>
  `On the outside of a fold: ${listed(parts)}. Pinch that fold flat, set the piece over it, one half on each side, and ${
    isTaped ? 'tape both edges on their lines, along their whole length' : 'glue both joints'
  }.`
export const wallsFirst = (parts: readonly string[]): string =>
  `Of ${listed(parts)}, glue all walls on the open card first, all tabs pointing out. Then glue the platform on the walls, its fold right over the one below.`

export const letEachDry = 'Let each dry before the next.'
export const letDry = 'Let it dry.'

/** At last. */
export const shutSlowly = 'Shut the card slowly. Press every fold. Open it.'
export const pushUp = 'Push up from behind what stays down in its fold.'

/** The cover; `isLettered`: the card has its letters too; `isTwice`: it has two lines, to leave room for a thick card. */
export const glueCover = (isLettered: boolean, isTwice: boolean): string => {
  const gutter = isTwice ? 'gutter midway between the two' : 'gutter on gutter'
  const fold = isTwice ? 'Fold the cover along its two scored lines.' : 'Fold the cover.'
  const laid = isTwice ? 'Lay the card on it, ' : 'Lay card and cover '
  return `${fold} Put glue on the hatched rim only: nothing that moves may stick. ${
    isLettered
      ? `${laid}${gutter}, letter on letter.`
      : `Its letters have no twins: lay the card’s back on it, ${gutter}, reader’s ends together.`
  } Shut them and let them dry.`
}

/** The same where the cover has no page: no rim is marked. Numbers are mm. */
export const cutCover = (wide: string, high: string): string =>
  `For a cover, cut ${wide} × ${high}\u00a0mm from other card.`
export const glueOwnCover = (rim: string, isTwice: boolean): string => {
  const [fold, gutter] = isTwice
    ? ['Fold it along these two lines.', 'Lay the card on it, gutter midway between the two.']
    : ['Fold it in the middle.', 'Lay card and cover gutter on gutter.']
  return `${fold} Put glue along the edges of the card’s back only, ${rim}\u00a0mm wide: nothing that moves may stick. ${gutter} Shut them and let them dry.`
}
