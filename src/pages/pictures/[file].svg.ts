import type { APIRoute, GetStaticPaths } from 'astro'
import type { Drawing } from '../../drawing/pen/marks.ts'
import { SIDE_BY_SIDE, sideBySide } from '../../drawing/view/side-by-side.ts'
import { allChoices } from '../../site/all-choices.ts'
import { allChapters, dummyNamed } from '../../site/chapters.ts'
import { besideChapters, STANDING, USUAL } from '../../site/gallery.ts'
import {
  chapterPicture,
  GARDEN,
  gardenPicture,
  partPicture,
  pictureFile,
  smallPicture,
} from '../../site/pictures.ts'
import { allPlans } from '../../site/plans.ts'
import { faultPictures, troublePictures } from '../../site/troubles.ts'

interface Props {
  readonly drawing: Drawing
  readonly dark: boolean
}

/** The garden, its dummies, each chapter's card, and the garden with that chapter's part lit: made when the site is built. */
export const getStaticPaths: GetStaticPaths = async () => {
  const garden = await dummyNamed('garden')
  const chapters = await allChapters()
  const pictures: [string, Drawing][] = [
    ['garden', gardenPicture(garden, GARDEN.from)],
    ...(await besideChapters()).map(({ name, design }): [string, Drawing] => [
      name,
      smallPicture(design, STANDING[name] ?? USUAL),
    ]),
    ...(await allPlans()).map(({ slug, design, data }): [string, Drawing] => [
      `plan-${slug}`,
      smallPicture(design, { opening: data.opening, camera: { turn: -20, tilt: 36 } }),
    ]),
    ...(await allChoices()).map(({ id, design }): [string, Drawing] => [
      `choose-${id}`,
      sideBySide(design, SIDE_BY_SIDE.from),
    ]),
    ...chapters.map((chapter): [string, Drawing] => [chapter.slug, chapterPicture(chapter)]),
    ...[...troublePictures(chapters), ...(await faultPictures())].map(
      ([file, drawing]): [string, Drawing] => [file, drawing],
    ),
    ...chapters.flatMap(({ slug, data }): [string, Drawing][] =>
      data.part.length > 0 ? [[`garden-${slug}`, partPicture(garden, data.part)]] : [],
    ),
  ]
  return pictures.map(([file, drawing]) => ({
    params: { file },
    props: { drawing, dark: file.startsWith('garden-') } satisfies Props,
  }))
}

export const GET: APIRoute<Record<string, unknown>> = ({ props }) => {
  const { drawing, dark } = props as unknown as Props
  return new Response(pictureFile(drawing, dark), { headers: { 'Content-Type': 'image/svg+xml' } })
}
