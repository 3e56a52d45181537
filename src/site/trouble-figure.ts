/** The small picture of a trouble: the card in a state of its making, or as it stands, made wrongly or worn. */
import type { Drawing } from '../drawing/pen/marks.ts'
import { stepFigure } from '../drawing/steps/steps.ts'
import type { Flat } from '../paper/index.ts'
import type { RawDesign, WrongCard } from './fault-picture.ts'
import { SMALL, spoilt, wrongCard, wrongCardSchema } from './fault-picture.ts'
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

/** How much wider than the card its picture is, for its shadow falls to the right of it. */
const ROOM = 1.1

/** The same with room for the shadow: without a table it would end at the edge. */
function roomy({ box: [x, y, width, height], ...drawing }: Drawing): Drawing {
  const [wide, high] = [ROOM * width, ROOM * height]
  return { ...drawing, box: [x - (wide - width) / 5, y - (high - height) / 3, wide, high] }
}

/** What belongs to a step alone, and what to a standing card alone. */
const OF_A_STEP = ['at', 'only', 'dots'] as const

const OF_A_CARD = ['marks', 'where', 'camera', 'stand', 'near'] as const

const given = (picture: TroublePicture, names: readonly (keyof TroublePicture)[]): readonly string[] =>
  names.filter((name) => picture[name] !== undefined && picture[name] !== false)

function wrongIn(written: Readonly<Record<string, unknown>>): WrongCard {
  const { data, error } = wrongCardSchema.safeParse(written)
  if (data) return data
  const [issue] = error.issues
  throw new Error(`has a wrong ${issue?.path.join('.')}: ${issue?.message}.`)
}

function inStep(raw: RawDesign, picture: TroublePicture, point: Flat | undefined): Drawing {
  const { shows, at, only, dots, set } = picture
  const [stray] = given(picture, OF_A_CARD)
  if (!shows || stray) throw new Error(`has ${stray}, which goes with opening, not with shows.`)
  if (dots && !point) throw new Error('has dots, and this chapter’s bench has no point.')
  return stepFigure(spoilt(raw, wrongIn({ opening: 0, set }).set), shows, SMALL.size, {
    ...(at === undefined ? {} : { opening: at }),
    ...(only === undefined ? {} : { of: only.split(/\s+/) }),
    ...(dots && point ? { dot: point } : {}),
    text: SMALL.text,
    plain: true,
  })
}

function standing(raw: RawDesign, picture: TroublePicture): Drawing {
  const [stray] = given(picture, OF_A_STEP)
  if (stray) throw new Error(`has ${stray}, which goes with shows, not with opening.`)
  const { opening, set, marks, where, camera, stand, near } = picture
  const drawing = wrongCard(plain(raw), wrongIn({ opening, set, marks, where, camera, stand, near }))
  return near === undefined ? roomy(drawing) : drawing
}

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
    return bare(shows === undefined ? standing(raw, picture) : inStep(raw, picture, point))
  } catch (error) {
    throw new Error(`${place} <Slip> ${error instanceof Error ? error.message : String(error)}`, {
      cause: error,
    })
  }
}
