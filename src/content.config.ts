import { defineCollection, reference } from 'astro:content'
import { file, glob } from 'astro/loaders'
import { z } from 'astro/zod'
import { DesignError, parseDesign } from './paper/index.ts'
import { benchSchema } from './site/bench.ts'
import { WANTS } from './site/choosing.ts'
import { faultPictureSchema } from './site/fault-picture.ts'
import { lessonSchema, packSchema } from './site/lesson/schema.ts'
import { wordPictureSchema } from './site/word-told.ts'

const chapters = defineCollection({
  loader: glob({ base: 'content/chapters', pattern: '*.mdx' }),
  schema: z.strictObject({
    /** Its place on the path, from 1; the chapters are read in this order. */
    number: z.int().min(1),
    /** The heading of the page, and what links to it say. */
    title: z.string().min(1).max(60),
    /** One or two short sentences on the path: what the reader is going to do and see. */
    lead: z.string().min(1).max(220),
    /** One or two short sentences over the bench: what to do there first. It gives no guess away. */
    task: z.string().min(1).max(150),
    /** The guess for a class in a few words, and what is right: the headline on a projector. */
    ask: z.strictObject({ asks: z.string().min(1).max(60), answer: z.string().min(1).max(60) }).optional(),
    /** What a search engine shows; the lead stands in if it is left out. */
    description: z.string().max(200).optional(),
    /** The design on the bench: the name of a file in content/dummies, without .hingebook.json. */
    dummy: reference('dummies'),
    /** How far the card stands open when the page is opened, in degrees. */
    opening: z.number().min(0).max(180).default(90),
    /** The mechanism whose rise is read out first, by its id in the dummy; the first one if left out. */
    subject: z.string().optional(),
    /** What else there is to say of the bench. */
    bench: benchSchema.default({}),
    /** Its part in the night garden: the mechanisms of content/dummies/garden that are lit beside it, by id. */
    part: z.array(z.string()).default([]),
    /** How long making it takes, as in "20 minutes". */
    time: z.string().min(1),
    /** What must lie on the table before starting. */
    materials: z.array(z.string().min(1)).min(1),
    /** Mistakes found after the chapter was out, each with the test that guards it now. */
    errata: z
      .array(z.strictObject({ said: z.string(), is: z.string(), date: z.iso.date(), test: z.string() }))
      .default([]),
  }),
})

const plans = defineCollection({
  loader: glob({ base: 'content/plans', pattern: '*.mdx' }),
  schema: z.strictObject({
    /** The order in which the plans are shown, from 1. */
    number: z.int().min(1),
    /** The heading of the page, and what links to it say. */
    title: z.string().min(1).max(60),
    /** One or two short sentences: the wish, and what comes of it. */
    lead: z.string().min(1).max(220),
    /** The design that the plan begins with. */
    start: reference('dummies'),
    /** The design that it ends with. */
    dummy: reference('dummies'),
    /** How far its card stands open in its picture, degrees. */
    opening: z.number().min(0).max(180).default(100),
  }),
})

/** Read again by `dummyNamed`; here only so that a bad design stops the build with the kernel's own sentence. */
const design = z.looseObject({}).superRefine((json, context) => {
  try {
    parseDesign(json)
  } catch (error) {
    if (!(error instanceof DesignError)) throw error
    context.addIssue({ code: 'custom', message: error.message })
  }
})

const dummies = defineCollection({
  loader: glob({
    base: 'content/dummies',
    pattern: '*.hingebook.json',
    generateId: ({ entry }) => entry.replace(/\.hingebook\.json$/, ''),
  }),
  schema: design,
})

const choices = defineCollection({
  loader: file('content/choices.json'),
  schema: z.strictObject({
    /** The key, as in the address of its picture. */
    id: z.string().regex(/^[a-z-]+$/),
    /** What makers call it. */
    title: z.string().min(1).max(40),
    /** What it does, where it goes and how strong it is, each in a sentence or two that a ten-year-old can read. */
    does: z.string().min(1).max(140),
    goes: z.string().min(1).max(100),
    strong: z.string().min(1).max(100),
    /** What it is found by: see `WANTS`. */
    ways: z.array(z.enum(WANTS.map(({ name }) => name))).min(1),
    /** The chapter that teaches it. */
    chapter: reference('chapters'),
    /** A card with it and nothing else that is not needed, and the mechanism on it that is measured. */
    design,
    subject: z.string(),
  }),
})

const faults = defineCollection({
  // By the keys that the trouble rows of chapters name.
  loader: file('content/faults.json'),
  schema: z.strictObject({
    /** The order in which the signs are shown, from 1. */
    number: z.int().min(1),
    /** What a maker sees, in a few words. */
    see: z.string().min(1).max(40),
    /** Other words for it, as somebody says it who looks for help. */
    also: z.array(z.string().min(1)).min(1),
    /** What helps at once, and what helps the next time. */
    now: z.string().min(1).max(200),
    next: z.string().min(1).max(200),
    /** The small picture of it; a question mark where there is none. */
    picture: faultPictureSchema.optional(),
  }),
})

const glossary = defineCollection({
  loader: file('content/glossary.json'),
  schema: z.strictObject({
    /** The key: the word itself, as the trade says it. */
    id: z.string(),
    /** One or two sentences that a ten-year-old can read. */
    says: z.string().min(1).max(200),
    /** Other forms of the word that may stand in the text. */
    forms: z.array(z.string()).default([]),
    /** The small picture beside it, drawn from a dummy: see `wordPicture`. */
    picture: wordPictureSchema,
  }),
})

/** Plans of a lesson, its questions and its words, for each range of ages. */
const lessons = defineCollection({
  loader: glob({ base: 'content/lessons', pattern: 'ages-*.json' }),
  schema: lessonSchema,
})

/** What every class pack says, whoever is taught. */
const pack = defineCollection({
  loader: glob({ base: 'content/lessons', pattern: 'pack.json' }),
  schema: packSchema,
})

export const collections = { chapters, choices, dummies, faults, glossary, lessons, pack, plans }
