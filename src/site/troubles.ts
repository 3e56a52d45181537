/** What goes wrong, gathered from all chapters: the page that finds faults shows it, each with its small picture. */
import { getCollection, getEntry } from 'astro:content'
import type { Drawing } from '../drawing/pen/marks.ts'
import type { Fault, Trouble } from '../widgets/fault/trouble.ts'
import { anchorOf } from './anchor.ts'
import { ownNumbers } from './cells/chapter-tree.ts'
import type { Chapter } from './chapters.ts'
import { chapterPath } from './chapters.ts'
import { faultPicture } from './fault-picture.ts'
import { isPictured, troubleFigure } from './trouble-figure.ts'
import type { TroubleRow } from './trouble-rows.ts'
import { rowsOf } from './trouble-rows.ts'

const rowsIn = ({ entry, design, slug }: Chapter): readonly TroubleRow[] =>
  rowsOf(entry.body ?? '', ownNumbers(design, slug, 'Slip'))

const pictureName = (slug: string, sign: string): string => `trouble-${slug}-${anchorOf(sign)}`

/** The pictures of all trouble rows, by the names of their files. */
export const troublePictures = (chapters: readonly Chapter[]): readonly (readonly [string, Drawing])[] =>
  chapters.flatMap((chapter) => {
    const { slug, raw, config } = chapter
    return rowsIn(chapter)
      .filter(({ picture }) => isPictured(picture))
      .map(({ sign, picture }) => {
        const place = `content/chapters/${slug}.mdx “${sign}”`
        return [pictureName(slug, sign), troubleFigure(raw, picture, { point: config.point, place })] as const
      })
  })

/** Every trouble row of every chapter. */
export const allTroubles = (chapters: readonly Chapter[]): readonly Trouble[] =>
  chapters.flatMap((chapter) =>
    rowsIn(chapter).map(({ sign, fault, cure, picture }): Trouble => {
      const { slug, data } = chapter
      return {
        sign,
        fault,
        cure,
        card: data.dummy.id,
        chapter: { number: data.number, title: data.title },
        href: `${chapterPath(slug)}#${anchorOf(sign)}`,
        ...(isPictured(picture) ? { picture: `/pictures/${pictureName(slug, sign)}.svg` } : {}),
      }
    }),
  )

/** The pictures of all signs, by the names of their files. */
export async function faultPictures(): Promise<readonly (readonly [string, Drawing])[]> {
  const pictures: [string, Drawing][] = []
  for (const { id, data } of await getCollection('faults')) {
    if (!data.picture) continue
    const dummy = await getEntry('dummies', data.picture.dummy)
    if (!dummy)
      throw new Error(`content/faults.json: there is no dummy ${data.picture.dummy}, which ${id} shows.`)
    pictures.push([`fault-${id}`, faultPicture(dummy.data, data.picture)])
  }
  return pictures
}

/** The signs by which a maker begins. */
export const allFaults = async (): Promise<readonly Fault[]> =>
  (await getCollection('faults'))
    .sort((a, b) => a.data.number - b.data.number)
    .map(({ id, data: { see, also, now, next, picture } }) => ({
      ...{ id, see, also, now, next },
      ...(picture ? { picture: `/pictures/fault-${id}.svg` } : {}),
    }))
