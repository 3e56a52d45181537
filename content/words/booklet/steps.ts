import { listed } from '../grammar.ts'

/**
 * The steps of any card. Each says what is done (its title), how (its sentences), and what the hands take. `what`: the
 * parts that it is about, as `the`, `many` or `card` say them; `place`: as one of the places.
 */

/** What a step is about. */
export const card = 'the card'

/** A name that ends in a number needs no article: `reed 1`, `the moth`. */
const one = (part: string): string => (/\d$/.test(part) ? part : `the ${part}`)

export const the = ([first = '', ...others]: readonly string[]): string => listed([one(first), ...others])
export const many = (count: number): string => `${count} parts`

/** Below a title that counts them. */
export const theyAre = (parts: readonly string[]): string => `They are ${the(parts)}.`

/** Places. */
export const gutter = 'the gutter'
export const ridge = (part: string): string => `the ridge of ${one(part)}`

const SIDES: Readonly<Record<string, string>> = { left: 'left', right: 'right' }

export const page = (side: string): string => `the ${SIDES[side] ?? side} page`
export const side = (of: string, which: string): string => `the ${SIDES[which] ?? which} side of ${one(of)}`

/** Which letters of the sheet lie on one another. */
export const letters = (all: readonly string[]): string => `${listed(all.map((one) => `${one} on ${one}`))}.`

/** A number of the model to hold a ruler to; `from`: a page, or either where both tell the same. */
export const eitherPage = 'the page'
export const check = (opening: string, from: string, part: string, rise: string): string =>
  `Hold the card open at ${opening}: from ${from} up to the tip of ${one(part)} a ruler shows ${rise}.`

/** Cautions. */
export const rules = 'Your school’s own rules come first.'
export const blade = 'A craft knife is a job for an adult. Pass scissors with the handles first.'
export const hotGlue = 'Hot glue is a job for an adult. A glue stick will do.'

/** The outline, and scoring: of a card by itself, and of one with pieces to glue on. */
export const cutOutTitle = 'Cut the card out and score its folds'
export const cutOutFirstTitle = 'Cut out the card and score its folds'
export const printAt = 'Print the sheet at 100 % and hold a ruler to its check lines.'

/** Of a piece that is as large as the paper, by which edges ever. */
export const trimFirst =
  'Where the sheet says so, trim its edges first: there the paper ends where the piece does.'
export const scoreFirst =
  'Go along every fold with a ruler and a dry ball pen before you cut: small ones cannot be reached later.'
export const kindsOfLine = 'Valley folds are dashed, mountain folds dash and dot. Solid lines are cut.'
export const cutOutTools = 'sheet, ruler, dry ball pen, scissors'

export const colourTitle = 'Colour it now'
export const colourFlat = 'Draw and colour while all lies flat. Later you reach only half of it.'
export const colourTools = 'pencils or pens'

export const slitsTitle = (what: string): string => `Cut the slits for ${what}`
export const cutSlits =
  'Lay the open card on a mat. Cut along each short line with a knife and a ruler, and no farther.'
export const slitsAreLonger =
  'Each slit is a hair longer than the tab that goes through it. It cannot be cut with scissors: it starts inside the paper.'
export const slitsTools = 'craft knife, ruler, mat'

export const cutTitle = (what: string): string => `Cut ${what}`
export const cutFromGutter =
  'Fold the card along the gutter with the lines outside. Cut each slit from the fold, through both layers. Stop at the end of the line.'
export const eachFold = 'each fold'
export const cutFromFold = (fold: string): string =>
  `Pinch ${fold} flat, so that its two layers lie on one another. Cut from the fold, through both layers.`

/** `parts`: those of them that are. No verb follows their names: one part may be called reeds. */
export const deeperOnOneSide = (parts: readonly string[], all: number): string =>
  `${
    parts.length < all
      ? `Deeper on one side: ${the(parts)}.`
      : `${all === 1 ? 'It is' : 'They are'} cut deeper on one side.`
  } Stop at the shorter end, open the card, and cut on.`
export const cutTools = 'scissors'

export const creaseTitle = (what: string): string => `Crease ${what} both ways`
export const creaseBothWays =
  'Keep the card shut. Fold each part over to the front and press. Fold it over to the back and press.'

/** After these: parts that are not folded over. */
export const notOver = (parts: readonly string[]): string =>
  `Leave ${the(parts)} as ${parts.length === 1 ? 'it is: pushing makes its folds' : 'they are: pushing makes their folds'}.`

/** The same on a fold that is pinched flat: for all that are cut there, or for these of them. */
export const creaseThere = (parts: readonly string[], all: number): string =>
  `While it is flat, fold ${
    parts.length < all ? the(parts) : all === 1 ? 'the part' : 'each part'
  } over to the front and press, then to the back.`
export const creaseTools = 'a thumbnail or a spoon'

export const pushTitle = (what: string): string => `Push ${what} through`
export const holdHalfOpen = 'Hold the card half open, lines inside.'

/** Those whose middle fold is a valley, and so many they are; then the others. */
export const pushInwards = (what: string, count: number): string =>
  `Push ${what} in, away from you: ${count === 1 ? 'its middle fold is a valley' : 'their middle folds are valleys'}.`
export const pushFromBehind = (isOther: boolean): string =>
  `Push each ${isOther ? 'other part' : 'part'} from behind until its middle fold comes towards you.`
export const pressSharp = 'Shut the card and press, so that the new folds are sharp.'
export const pushTools = 'fingers, the tip of a pencil'

export const pieceTitle = (what: string): string => `Cut out ${what}`
export const piecesTitle = 'Cut out the other pieces'
export const cutPiecesOut = (what: string): string => `Score the folds, then cut out ${what}.`

/** On all of them, and on some. */
export const keepTabs = 'Leave the tabs on.'
export const keepTabsOn = (what: string): string => `Leave the tabs on ${what}.`
export const foldPieces = 'Fold each piece along its folds, both ways.'

/** Where something is glued on, before its cover is. */
export const hatchedGetGlue =
  'Of two places that meet, the hatched one gets glue; where both are dotted, glue goes on the other face.'
export const twins = 'Each letter has a twin: that is where it goes.'
export const cutSlitsInPieces =
  'Cut the short slits in them too, while they lie flat on a mat: with a knife and a ruler, and no farther.'
export const piecesTools = 'scissors, ruler, dry ball pen'

export const threadTitle = (what: string): string => `Push the tabs of ${what} through`
export const threadTabs = (what: string): string =>
  `Do not glue yet. Push each tab of ${what} through its slit, until the edge beside it stands on the line.`
export const bendTabs = (place: string): string =>
  `Look at it from behind. Bend the tabs away from ${place}, so that they lie flat, and glue them there.`
export const turnBack = 'Turn it back, shut it and press.'

/** Added where tabs come out behind the card itself. */
export const hiddenBehind = 'What shows behind is hidden by a cover, or by a sheet glued over it.'

/** On a platform that has no walls yet. */
export const beforeItStands = (what: string): string =>
  `Do this before ${what} is set up: later no finger gets under it.`
export const threadTools = 'glue'

export const layTitle = (what: string): string => `Stick one side of ${what}`
export const goesOutside = (place: string): string =>
  `It goes on the outside of ${place}: turn the card so that you see it.`

/** There it sits like a saddle on the fold, which is pinched flat for it; the gutter is flat when the card is shut. */
export const pinch = (place: string): string => `Pinch ${place} flat.`
export const shutIt = 'Shut the card.'
export const layAstride =
  'Fold the piece and set it over the fold, one half on each side. Stick one of its joints, right on its line, letter on letter.'
export const closeAstride = (what: string): string =>
  `The fold stays flat. Stick the other joint of ${what} on its line too, and press.`
export const closeAstrideTitle = 'Stick the other side'
export const goesOver = (place: string): string => `It goes over ${place}.`
export const goesOn = (place: string): string => `It goes on ${place}.`
export const layLeft =
  'Fold it and lay it to the left, its left joint right on its line. Stick that joint alone.'
export const layLeftByLetter =
  'Fold it and lay it to the left, its left joint right on its line, letter on letter. Stick that joint alone.'
/** An edge without a tab: its front lies on the page. */
export const liftAndTape = 'Lift its upper half to tape the lower one from inside, then let it down.'

export const closeTitle = 'Let the card find the other side'
export const closeOnIt = (what: string): string =>
  `Make the right joint of ${what} sticky. Shut the card on it and press. It sticks just where it should.`
export const closeOnTape = (what: string): string =>
  `Slip tape under the right edge of ${what}, sticky side up, half of it showing. Shut the card on it and press. It sticks just where it should.`
export const lookWhileWet = 'Open the card while the glue is wet and look.'
export const lookAtTape = 'Open the card and look.'

/** What joints with tabs are stuck with; edges take tape. */
export const gluedTools = 'glue'

export const tapeTitle = (what: string): string => `Tape the joints of ${what}`
export const tapeWhole = (place: string): string =>
  `Run tape along the whole of each joint, right into the corner, and not across ${place}.`
export const tapeTools = 'tape'

export const popTitle = (what: string): string => `Push up ${what}, if needed`
export const popUp =
  'A part like this has two states. If it stays down, put a finger behind its ridge and help both sides past the middle.'
export const popTools = 'a finger'

export const standTitle = (what: string): string => `Set up ${what}`

/** `on`: what the walls stand on; `tabs`: the letters of those that go through slits in it, and whether there are others. */
export const threadWalls = (on: string, tabs: readonly string[], hasOthers: boolean): string =>
  `Work with ${on} open flat. Push the lower ${
    tabs.length === 1
      ? `tab ${listed(tabs)} through its slit, and glue it`
      : `tabs ${listed(tabs)} through their slits, and glue them`
  } behind.${hasOthers ? ` No other tab has a slit: glue the other lower ones on ${on}, letter on letter.` : ''}`
export const glueWalls = (on: string): string =>
  `Work with ${on} open flat. Glue the walls on ${on} first, letter on letter, all tabs pointing out.`
export const gluePlatform = (over: string): string =>
  `Then glue the platform on the walls, its fold right over ${over}.`
export const standTools = 'glue'

export const stickTitle = (what: string): string => `Stick on ${what}`
export const back = (place: string): string => `the back of ${place}`
export const stickOn = (count: number, places: readonly string[]): string =>
  `${count === 1 ? 'It goes' : 'They go'} on ${places.join(', ')}.`

/** By the faces that they go on. */
export const glueOn = {
  front: 'Put glue on the hatched place only, and none over a fold.',
  back: 'Put glue on the other face of the dotted place only, and none over a fold.',
  both: 'Put glue on the hatched places only; where there are dots, on the other face. None goes over a fold.',
}
export const shutOnce = 'Press, then shut the card once to see that nothing is in the way.'
export const stickTools = 'glue stick or double-sided tape'

export const pressTitle = 'Shut it and press'
export const pressHard =
  'Shut the card slowly and look from its end. Help each part to lie flat. When nothing is in the way, press hard.'
export const letDry = 'Let the glue dry under a book.'
export const pressTools = 'a heavy book'

export const openTitle = 'Open it'
export const openSlowly = 'Open the card slowly.'
export const openTools = 'ruler'

export const coverTitle = 'Glue the cover behind'
export const cutCover = 'Cut the cover out.'

/** The same where some sheets have no room for it; numbers are mm. */
export const coverOfOther = (wide: string, high: string): string =>
  `If no sheet has it, cut it from other card, ${wide} × ${high}\u00a0mm.`
export const scoreCover = 'Score its fold.'
export const glueRim = (wide: string): string =>
  `Fold the cover. Put glue on the rim alone, ${wide} wide: nothing that moves may stick.`
/** `twice`: it is scored along two lines, and has no fold that the gutter could lie on. */
export const layInCover = (twice: boolean): string =>
  `Lay the card in it, gutter ${twice ? 'midway between the two lines' : 'on gutter'}. Shut both and let them dry.`

/** A good copy has no letters on its card, for its face is seen; nor has a card whose cover is cut without a sheet. */
export const coverLetters = (all: readonly string[]): string =>
  `${letters(all)} If your card has none, lay reader’s ends together.`
export const coverTools = 'scissors, ruler, dry ball pen, glue'

/** The steps as plain text, line by line. */
export const numbered = (number: number, title: string): string => `${number}. ${title}`
export const withLetters = (which: string): string => `Letters: ${which}`
export const youNeed = (tools: string): string => `You need: ${tools}.`
export const takeCare = (caution: string): string => `Take care: ${caution}`
export const withCheck = (how: string): string => `Check: ${how}`
