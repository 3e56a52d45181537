/** The small picture of a trouble: the card in a state of its making, or as it stands, made wrongly or worn. */
import type { Drawing, Mark } from '../drawing/pen/marks.ts'
import type { StepState } from '../drawing/steps/steps.ts'
import { stepFigure } from '../drawing/steps/steps.ts'
import type { Flat } from '../paper/index.ts'
import { partMarks, ringed, standingOut } from './fault-marks.ts'
import type { RawDesign, WrongCard } from './fault-picture.ts'
import { SMALL, spoilt, wrongCard, wrongCardSchema } from './fault-picture.ts'
import { shadowFitted } from './shadow-room.ts'
import type { TroublePicture } from './trouble-rows.ts'

/** In a picture this small no word can be read, and it stands on the page, not on a table of its own. */
const bare = ({ ground: _, ...drawing }: Drawing): Drawing => ({
  ...drawing,
  marks: drawing.marks.filter(({ mark }) => mark !== 'word'),
})

/** Its pages stay plain, as in a step: of a small picture little is left but what it points at. */
const plain = (raw: RawDesign): RawDesign => {
  const art = raw.art as readonly { readonly on: string }[] | undefined
  return art ? { ...raw, art: art.filter(({ on }) => !on.startsWith('page/')) } : raw
}

/** States in which hands do what has not been done here: without them it is the fault itself. */
const UNDONE: readonly StepState[] = ['reversing', 'popping']

const isOfHands = ({ role }: Mark): boolean => role === 'hand' || role === 'ghost'

/** The same before a hand has come, and nothing shows how it would be. */
const undone = (marks: readonly Mark[]): readonly Mark[] =>
  marks.filter((mark, k) => {
    const next = marks[k + 1]
    return !(isOfHands(mark) || (mark.role === 'halo' && next && isOfHands(next)))
  })

/** A picture grows so many times at most for the shadow of its card. */
const ROOM = 1.3

/** What belongs to a step alone, and what to a standing card alone. */
const OF_A_STEP = ['at', 'only', 'dots'] as const

const OF_A_CARD = ['marks', 'camera', 'stand', 'near', 'crooked'] as const

const given = (picture: TroublePicture, names: readonly (keyof TroublePicture)[]): readonly string[] =>
  names.filter((name) => picture[name] !== undefined && picture[name] !== false)

function wrongIn(written: Readonly<Record<string, unknown>>): WrongCard {
  const { data, error } = wrongCardSchema.safeParse(written)
  if (data) return data
  const [issue] = error.issues
  throw new Error(`has a wrong ${issue?.path.join('.')}: ${issue?.message}.`)
}

function inStep(raw: RawDesign, picture: TroublePicture, point: Flat | undefined): Drawing {
  const { shows, at, only, dots, set, where } = picture
  const [stray] = given(picture, OF_A_CARD)
  if (!shows || stray) throw new Error(`has ${stray}, which goes with opening, not with shows.`)
  if (dots && !point) throw new Error('has dots, and this chapter’s bench has no point.')
  const figure = stepFigure(spoilt(raw, wrongIn({ opening: 0, set }).set), shows, SMALL.size, {
    ...(at === undefined ? {} : { opening: at }),
    ...(only === undefined ? {} : { of: only.split(/\s+/) }),
    ...(dots && point ? { dot: point } : {}),
    text: SMALL.text,
    plain: true,
  })
  const marks = UNDONE.includes(shows) ? undone(figure.marks) : figure.marks
  const pointed = where === undefined ? [] : ringed(partMarks(where, marks))
  return { ...figure, marks: [...marks, ...pointed.flatMap(standingOut)] }
}

function standing(raw: RawDesign, picture: TroublePicture): Drawing {
  const [stray] = given(picture, OF_A_STEP)
  if (stray) throw new Error(`has ${stray}, which goes with shows, not with opening.`)
  const { opening, set, marks, where, camera, stand, near, crooked } = picture
  return wrongCard(plain(raw), wrongIn({ opening, set, marks, where, camera, stand, near, crooked }))
}

/** Whether a trouble has a picture: where paper would have to bend, or glue to run, it has none. */
export const isPictured = (picture: TroublePicture): boolean =>
  Object.values(picture).some((value) => value !== undefined && value !== false)

/**
 * @param raw the chapter's card as its file has it
 * @param place where the trouble is written, for what cannot be drawn. Throws an Error with a sentence on that.
 */
export function troubleFigure(
  raw: RawDesign,
  picture: TroublePicture,
  { point, place }: { readonly point?: Flat | undefined; readonly place: string },
): Drawing {
  const { shows, opening } = picture
  try {
    if ((shows === undefined) === (opening === undefined))
      throw new Error('needs one of shows (a state of making) and opening (the card as it stands).')
    const drawing = bare(shows === undefined ? standing(raw, picture) : inStep(raw, picture, point))
    return picture.near === undefined ? shadowFitted(drawing, ROOM) : drawing
  } catch (error) {
    throw new Error(`${place} <Slip> ${error instanceof Error ? error.message : String(error)}`, {
      cause: error,
    })
  }
}
