/** What a picture beside a word shows, as content/glossary.json tells it. */
import { z } from 'astro/zod'
import { stepStates } from '../drawing/steps/steps.ts'

export const wordPictureSchema = z.strictObject({
  /** The name of a file in content/dummies. */
  dummy: z.string(),
  /** Degrees. */
  opening: z.number().min(0).max(180).default(104),
  /** Creases that are drawn red, by name. */
  lines: z.array(z.string()).default([]),
  /** The crease at whose start a dot is drawn. */
  point: z.string().optional(),
  /** Two mechanisms: a line goes from tip to tip. */
  between: z.tuple([z.string(), z.string()]).optional(),
  /** Mechanisms that stand in the light, all else dimmed. */
  lit: z.array(z.string()).optional(),
  /** The mechanism whose rise is measured. */
  rise: z.string().optional(),
  /** The mechanism whose reach is measured, along the gutter from the reader's end. */
  reach: z.string().optional(),
  /** Fibres run along the gutter. */
  grain: z.boolean().default(false),
  /** A blunt point goes along this crease. */
  pen: z.string().optional(),
  /** A making step in place of the standing card. */
  step: z.enum(stepStates).optional(),
})

export type WordPicture = z.infer<typeof wordPictureSchema>
