import { z } from 'astro/zod'
import type { Drawing } from '../drawing/pen/marks.ts'
import { stepFigure, stepStates } from '../drawing/steps/steps.ts'
import type { Size } from '../drawing/view/camera.ts'
import { view } from '../drawing/view/view.ts'
import type { Design } from '../paper/index.ts'
import { check, parseDesign } from '../paper/index.ts'

/** A picture of a fault: a card in a state of its making, or one that was made wrongly, open so far. */
export const faultPictureSchema = z.union([
  z.strictObject({ dummy: z.string(), shows: z.enum(stepStates) }),
  z.strictObject({
    dummy: z.string(),
    /** Degrees. */
    opening: z.number().min(0).max(180),
    /** What is wrong: fields of mechanisms, by their ids, as a design file has them; null takes one away. */
    set: z.record(z.string(), z.record(z.string(), z.unknown())).default({}),
    /** The check that marks the place. */
    marks: z.string().optional(),
  }),
])

export type FaultPicture = z.infer<typeof faultPictureSchema>

const SMALL = { size: { width: 200, height: 140 }, text: 11 } as const

/** Shut, a card is seen from its side: there is nothing else of it. */
const SHUT = { turn: -64, tilt: 16, far: 1.7 }

const OPEN = { turn: -22, tilt: 34, far: 1.7 }

/** The design with what is wrong with it. Throws a `DesignError` where a file could not hold it. */
function spoilt(raw: Record<string, unknown>, set: Record<string, Record<string, unknown>>): Design {
  const mechanisms = (raw.mechanisms as { id: string }[]).map((m) =>
    Object.fromEntries(Object.entries({ ...m, ...set[m.id] }).filter(([, value]) => value !== null)),
  )
  // Drawn for the right sizes: on wrong ones it would lie beside the paper.
  const { art: _, ...rest } = raw
  return parseDesign({ ...(Object.keys(set).length > 0 ? rest : raw), mechanisms })
}

/** The picture of a fault, small unless said; its words `text` px high. `raw` is the dummy as its file has it. */
export function faultPicture(
  raw: Record<string, unknown>,
  picture: FaultPicture,
  { size, text }: { readonly size: Size; readonly text: number } = SMALL,
): Drawing {
  if ('shows' in picture) return stepFigure(parseDesign(raw), picture.shows, size, { text, plain: true })
  const { opening, set, marks } = picture
  const design = spoilt(raw, set)
  return view(design, opening, opening < 5 ? SHUT : OPEN, size, {
    frame: [opening],
    faults: marks === undefined ? [] : check(design, { repairs: false }).filter(({ name }) => name === marks),
    text,
  })
}
