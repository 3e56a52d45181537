import type { CollectionEntry } from 'astro:content'
import { getCollection, getEntry } from 'astro:content'
import * as says from '../../content/words/site/templates.ts'
import type { Design } from '../paper/index.ts'
import { DesignError, parseDesign } from '../paper/index.ts'
import type { SheetArt, SheetLines } from '../sheet/index.ts'
import { artWays, usualArt } from '../sheet/index.ts'
import type { BenchConfig } from '../widgets/state/config.ts'
import { benchConfig } from './bench.ts'
import type { RawDesign } from './fault-picture.ts'

/** A chapter with everything its page and its cells need. */
export interface Chapter {
  readonly slug: string
  readonly data: CollectionEntry<'chapters'>['data']
  readonly entry: CollectionEntry<'chapters'>
  readonly design: Design
  /** The same as its file has it. */
  readonly raw: RawDesign
  readonly config: BenchConfig
}

export const chapterPath = (slug: string): string => `/chapters/${slug}/`

/** Paper sizes of the templates that are made when the site is built. */
export const TEMPLATE_PAPERS = [
  { paper: 'a4', label: says.a4 },
  { paper: 'letter', label: says.usLetter },
] as const

export type TemplatePaper = (typeof TEMPLATE_PAPERS)[number]['paper']

/** How the address of a template says in which way its picture is printed. */
const ART_IN_PATH: Readonly<Record<SheetArt, string>> = { colour: '-colour', lines: '', none: '-plain' }

/** Where a template is found; as it is usually printed unless said. */
export const templatePath = (slug: string, paper: string, art?: SheetArt): string =>
  `/sheets/${slug}-${paper}${art ? ART_IN_PATH[art] : ''}.pdf`

/** The ways in which the picture of a template can be had ready-made, the usual one first. */
export function templateArts(
  design: Design,
): readonly { readonly art: SheetArt; readonly path?: SheetArt }[] {
  const usual = usualArt(design)
  return [{ art: usual }, ...artWays(design).flatMap((art) => (art === usual ? [] : [{ art, path: art }]))]
}

/** The lines on a template: in colour it is for a good copy, and its folds have ticks at their ends alone. */
export const templateLines = (art: SheetArt): SheetLines => (art === 'colour' ? 'ticks' : 'front')

/** A dummy as its file has it. Throws an Error that names the file. */
async function rawDummy(name: string): Promise<RawDesign> {
  const entry = await getEntry('dummies', name)
  if (entry) return entry.data
  const names = (await getCollection('dummies')).map(({ id }) => id)
  throw new Error(`There is no ${fileOf(name)}; the dummies are ${names.join(', ')}.`)
}

const fileOf = (name: string): string => `content/dummies/${name}.hingebook.json`

/** A design of content/dummies by its file's name. Throws an Error that names the file. */
export async function dummyNamed(name: string): Promise<Design> {
  const raw = await rawDummy(name)
  try {
    return parseDesign(raw)
  } catch (error) {
    if (error instanceof DesignError) throw new Error(`${fileOf(name)}: ${error.message}`)
    throw error
  }
}

async function chapterOf(entry: CollectionEntry<'chapters'>): Promise<Chapter> {
  const { id: slug, data } = entry
  const { id } = data.dummy
  return {
    ...{ slug, data, entry, design: await dummyNamed(id), raw: await rawDummy(id) },
    config: benchConfig(data),
  }
}

/** All chapters in reading order. Throws an Error if two have one number. */
export async function allChapters(): Promise<Chapter[]> {
  const entries = (await getCollection('chapters')).sort((a, b) => a.data.number - b.data.number)
  for (const [k, entry] of entries.entries()) {
    const next = entries[k + 1]
    if (next && next.data.number === entry.data.number)
      throw new Error(
        `content/chapters/${entry.id}.mdx and content/chapters/${next.id}.mdx both have the number ${entry.data.number}; each place on the path has one chapter.`,
      )
  }
  return Promise.all(entries.map(chapterOf))
}

/** Designs that chapters show on a bench of their own beside the first one, by file name. */
export const sideDummies = (chapters: readonly Chapter[]): readonly string[] =>
  chapters.flatMap(({ entry }) =>
    [...(entry.body ?? '').matchAll(/<SideBench\s[^>]*dummy="([^"]+)"/g)].map(([, name]) => name ?? ''),
  )

/** The chapter that a cell stands in. Throws an Error for a cell outside of every chapter. */
export function chapterIn({ chapter }: App.Locals, place: string): Chapter {
  if (!chapter) throw new Error(`${place} stands outside of every chapter.`)
  return chapter
}
