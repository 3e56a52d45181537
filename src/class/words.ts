/** What a lesson is made of in words. All of it is written in content/; here is its shape. */

/** Who is taught. */
export const AGES = ['7-9', '10-13', '14-up', 'adults'] as const

export type Ages = (typeof AGES)[number]

/** Lessons are planned for so many minutes. */
export const MINUTES = [20, 45, 90] as const

export type Minutes = (typeof MINUTES)[number]

/** One part of a lesson: what happens, for how long. */
export interface Part {
  /** One of the parts that the page knows what to show for. */
  readonly name: 'show' | 'guess' | 'make' | 'measure' | 'say'
  readonly minutes: number
  /** What teacher and class do. */
  readonly does: string
}

export interface Question {
  readonly asks: string
  readonly answer: string
}

export interface Mistake {
  readonly sign: string
  readonly cure: string
}

/** How one aim is judged: not yet, met, more. */
export interface Judged {
  readonly aim: string
  readonly levels: readonly string[]
}

/** A lesson for one range of ages. In its texts {size}, {reading}, {opening} and the like are filled in. */
export interface Lesson {
  readonly ages: Ages
  readonly label: string
  readonly aims: readonly string[]
  /** Words of the glossary. */
  readonly vocabulary: readonly string[]
  readonly plans: Readonly<Record<`${Minutes}`, readonly Part[]>>
  readonly questions: readonly Question[]
  readonly slips: readonly Mistake[]
  readonly rubric: readonly Judged[]
  /** What is particular with these ages. */
  readonly notes: readonly string[]
  /** On the worksheet: what is asked beside the reading. */
  readonly worksheet: readonly string[]
  /** What stands in place of the same above where all sheets are alike. */
  readonly alike: Alike
}

/** Of a lesson, what is said otherwise where all sheets are alike; of its plans, what is done in a part. */
export interface Alike {
  readonly aims?: Lesson['aims'] | undefined
  readonly plans?:
    | { readonly [M in `${Minutes}`]?: { readonly [N in Part['name']]?: string | undefined } | undefined }
    | undefined
  readonly questions?: Lesson['questions'] | undefined
  readonly slips?: Lesson['slips'] | undefined
  readonly rubric?: Lesson['rubric'] | undefined
  readonly notes?: Lesson['notes'] | undefined
  readonly worksheet?: Lesson['worksheet'] | undefined
}

/** The lesson for sheets that differ, or for sheets that are alike: nothing is asked about sizes that nobody has. */
export function lessonFor(lesson: Lesson, differs: boolean): Lesson {
  if (differs) return lesson
  const { alike } = lesson
  const plan = (minutes: `${Minutes}`): readonly Part[] =>
    lesson.plans[minutes].map((part) => ({ ...part, does: alike.plans?.[minutes]?.[part.name] ?? part.does }))
  return {
    ...lesson,
    aims: alike.aims ?? lesson.aims,
    plans: { '20': plan('20'), '45': plan('45'), '90': plan('90') },
    questions: alike.questions ?? lesson.questions,
    slips: alike.slips ?? lesson.slips,
    rubric: alike.rubric ?? lesson.rubric,
    notes: alike.notes ?? lesson.notes,
    worksheet: alike.worksheet ?? lesson.worksheet,
  }
}

/** What one chapter gives a lesson: its own words, read from it when the lesson is made. */
export interface ChapterWords {
  readonly title: string
  /** What the parts of the chapter's own card are called: its words speak of them. */
  readonly parts: readonly string[]
  /** The guess for a class in a few words. */
  readonly ask: { readonly asks: string; readonly answer: string } | null
  /** The answers that the chapter's guess offers. */
  readonly guesses: readonly { readonly says: string; readonly right: boolean }[]
  /** From memory: each with the answer that is right. */
  readonly recall: readonly (Question & { readonly choices: readonly string[]; readonly right: string })[]
  readonly slips: readonly Mistake[]
  readonly misconceptions: readonly string[]
  /** As in `4.MD.C.6: measure the wedge angle`. */
  readonly standards: readonly { readonly code: string; readonly says: string }[]
  readonly safety: string
}

/** What every pack says, whoever is taught. */
export interface PackWords {
  readonly levels: readonly string[]
  readonly parts: Readonly<Record<Part['name'], string>>
  readonly labels: Readonly<Record<string, string>>
  readonly safety: readonly string[]
  readonly hands: readonly string[]
  readonly printing: readonly string[]
  readonly materials: Readonly<Record<string, string>>
  readonly curriculum: string
  readonly reading: Readonly<Record<'rise' | 'gap', string>>
  readonly worksheet: Readonly<Record<string, string>>
  readonly answers: Readonly<Record<string, string>>
  readonly certificate: Readonly<Record<string, string>>
  /** The model by hand, by the kind of what is read. */
  readonly formulas: Readonly<Record<string, string>>
  readonly glossary: Readonly<Record<string, string>>
  readonly standards: readonly { readonly codes: string; readonly name: string }[]
}

/** A text in which a name in braces stands for something that is not given. */
export class UnfilledError extends Error {}

/**
 * A text with its names in braces filled in, as in `Your {size} is {value}`; by a number the word that goes with it, as
 * in `{n} {n|book|books}`: the first for one. Throws an `UnfilledError` that names what is not given.
 */
export const filled = (text: string, values: Readonly<Record<string, string | number>>): string =>
  text.replace(/\{(\w+)(?:\|([^|}]*)\|([^|}]*))?\}/g, (_, name: string, one?: string, more?: string) => {
    const value = values[name]
    if (value === undefined) throw new UnfilledError(`“${text}” asks for {${name}}, which is not given.`)
    return (Number(value) === 1 ? one : more) ?? String(value)
  })

/** The full name of the standard that a code belongs to; the code alone where none is known. */
export function standardName(code: string, { standards }: Pick<PackWords, 'standards'>): string {
  const found = standards.find(({ codes }) => new RegExp(codes).test(code))
  return found ? `${found.name}: ${code.replace(/^NGSS /, '')}` : code
}
