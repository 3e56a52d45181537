import { z } from 'astro/zod'
import type { Goal } from '../widgets/challenge/judge.ts'
import type { BenchConfig, Coverable, FigureName, ReadingName } from '../widgets/state/config.ts'

const READINGS = [
  'rise',
  'reach',
  'stand-off',
  'gape',
  'wedge',
  'slit',
  'lean',
  'depth',
  'margin',
  'opening',
  'highest',
  'stop',
] as const satisfies readonly ReadingName[]

const FIGURES = ['view', 'sheet', 'section', 'chart'] as const satisfies readonly FigureName[]

const COVERABLE = [
  ...READINGS,
  'section',
  'chart',
  'dimension',
  'ways',
] as const satisfies readonly Coverable[]

/** What a chapter says of its bench: what is left out is chosen to suit the dummy. */
export const benchSchema = z.strictObject({
  /** A point of the right page for a bare card, as [mm from the gutter, mm from the reader's end]. */
  point: z.tuple([z.number().min(0), z.number().min(0)]).optional(),
  /** From where the card is seen, in degrees: turn round it, tilt above the table. */
  camera: z.strictObject({ turn: z.number().min(-180).max(180), tilt: z.number().min(0).max(90) }).optional(),
  /** How the card rests on the table: on its gutter, or upright on its lower edge, as one holds a beak that bites. */
  stand: z.enum(['gutter', 'edge']).optional(),
  /** What the reader may set, in order: a mechanism's id and its field, or its choice. */
  fields: z
    .array(
      z.strictObject({
        id: z.string(),
        field: z.string(),
        label: z.string().optional(),
        from: z.string().optional(),
        min: z.number().optional(),
        max: z.number().optional(),
      }),
    )
    .optional(),
  /** The points of the flat sheet that the reader may drag: a mechanism's id and its handle. */
  handles: z
    .array(z.strictObject({ id: z.string(), handle: z.string(), label: z.string().optional() }))
    .optional(),
  /** The handle that the task names, as `id/handle`: it wears a ring until it is used. */
  first: z.string().optional(),
  /** What is read out, in order; the first one is red. */
  readings: z.array(z.enum(READINGS)).optional(),
  /** Mechanisms, by id, of which the bench says which way they go as the card opens. */
  ways: z.array(z.string()).optional(),
  /** What answers the chapter's guess, and so is covered until the reader has guessed. */
  covers: z.array(z.enum(COVERABLE)).optional(),
  /** Which of the four figures there are. */
  figures: z.array(z.enum(FIGURES)).optional(),
  /** Which of them are folded away until they are asked for; the chart if left out. */
  folds: z.array(z.enum(FIGURES)).optional(),
  /** How many of the sizes are seen at once; three if left out. */
  sizes: z.int().min(1).optional(),
})

interface Front {
  readonly opening: number
  readonly subject?: string | undefined
  readonly bench: z.infer<typeof benchSchema>
}

/** The front matter as the bench takes it: plain JSON, nothing undefined. */
export const benchConfig = ({ opening, subject, bench }: Front): BenchConfig =>
  JSON.parse(JSON.stringify({ lead: subject, opening, ...bench })) as BenchConfig

const bounds = {
  atLeast: z.number().optional(),
  atMost: z.number().optional(),
  between: z.tuple([z.number(), z.number()]).optional(),
}

const numberGoal = z
  .strictObject({
    measure: z.enum([...READINGS, 'field']),
    id: z.string().optional(),
    field: z.string().optional(),
    at: z.number().min(0).max(180).optional(),
    quiet: z.literal(true).optional(),
    ...bounds,
  })
  .refine(({ atLeast, atMost, between }) => [atLeast, atMost, between].some((bound) => bound !== undefined), {
    message: 'needs atLeast, atMost or between',
  })
  .refine(({ measure, field }) => measure !== 'field' || field !== undefined, {
    message: 'needs field, the number of the mechanism',
  })

const soundGoal = z.strictObject({ sound: z.literal(true) })

/** What a task asks for: a number within bounds, a sound card, or several at once. */
export const goalSchema = z.union([
  numberGoal,
  soundGoal,
  z.strictObject({ all: z.array(z.union([numberGoal, soundGoal])).min(1) }),
])

/** A goal as an author wrote it. Throws an Error that names the place. */
export function goalFrom(value: unknown, place: string): Goal {
  const read = goalSchema.safeParse(value)
  if (read.success) return read.data as Goal
  throw new Error(
    `${place} <Goal> wants ${JSON.stringify(value)}, which the kernel cannot judge. It expects a measure (${READINGS.join(', ')} or field) with atLeast, atMost or between, or { sound: true }, or { all: [...] }. ${z.prettifyError(read.error)}`,
  )
}
