import { z } from 'astro/zod'
import { AGES, MINUTES } from '../../class/words.ts'

const text = z.string().min(1).max(400)

const part = z.strictObject({
  name: z.enum(['show', 'guess', 'make', 'measure', 'say']),
  minutes: z.int().min(1),
  does: text,
})

/** A plan's minutes are the plan's. */
const plan = (minutes: number) =>
  z
    .array(part)
    .min(1)
    .refine((parts) => parts.reduce((sum, one) => sum + one.minutes, 0) === minutes, {
      message: `its parts must take ${minutes} minutes together`,
    })
    .refine((parts) => new Set(parts.map(({ name }) => name)).size === parts.length, {
      message: 'each part stands in it once',
    })

const mistake = z.strictObject({ sign: text, cure: text })

const question = z.strictObject({ asks: text, answer: text })

/** What is done in a part where all sheets are alike. */
const otherwise = z.strictObject({
  show: text.optional(),
  guess: text.optional(),
  make: text.optional(),
  measure: text.optional(),
  say: text.optional(),
})

const judged = z.strictObject({ aim: text, levels: z.array(text).length(3) })

/** Only what is said otherwise: see `Alike`. */
const alike = z.strictObject({
  aims: z.array(text).min(1).optional(),
  plans: z
    .strictObject({ '20': otherwise.optional(), '45': otherwise.optional(), '90': otherwise.optional() })
    .optional(),
  questions: z.array(question).min(1).optional(),
  slips: z.array(mistake).min(1).optional(),
  rubric: z.array(judged).min(1).optional(),
  notes: z.array(text).optional(),
  worksheet: z.array(text).min(1).optional(),
})

/** A lesson for one range of ages: see `Lesson`. */
export const lessonSchema = z.strictObject({
  ages: z.enum(AGES),
  label: text,
  aims: z.array(text).min(1),
  vocabulary: z.array(text).min(1),
  plans: z.strictObject({ '20': plan(MINUTES[0]), '45': plan(MINUTES[1]), '90': plan(MINUTES[2]) }),
  questions: z.array(question).min(1),
  slips: z.array(mistake).min(1),
  rubric: z.array(judged).min(1),
  notes: z.array(text),
  worksheet: z.array(text).min(1),
  alike,
})

const named = z.record(z.string(), text)

/** What every pack says: see `PackWords`. */
export const packSchema = z.strictObject({
  levels: z.array(text).length(3),
  parts: z.strictObject({ show: text, guess: text, make: text, measure: text, say: text }),
  labels: named,
  safety: z.array(text).min(1),
  hands: z.array(text).min(1),
  printing: z.array(text).min(1),
  materials: named,
  curriculum: text,
  reading: z.strictObject({ rise: text, gap: text }),
  worksheet: named,
  answers: named,
  certificate: named,
  formulas: named,
  standards: z.array(z.strictObject({ codes: text, name: text })).min(1),
})
