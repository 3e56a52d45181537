import type { APIRoute, GetStaticPaths } from 'astro'
import type { Design } from '../../paper/index.ts'
import { fontOnDisk } from '../../sheet/files/font-on-disk.ts'
import type { SheetArt } from '../../sheet/index.ts'
import { sheetPdf } from '../../sheet/index.ts'
import type { TemplatePaper } from '../../site/chapters.ts'
import {
  allChapters,
  dummyNamed,
  sideDummies,
  TEMPLATE_PAPERS,
  templateArts,
  templateLines,
  templatePath,
} from '../../site/chapters.ts'
import { besideChapters } from '../../site/gallery.ts'

interface Props {
  readonly design: Design
  /** The file that names the design. */
  readonly file: string
  readonly paper: TemplatePaper
  readonly art: SheetArt
}

/**
 * The template of every chapter, of the garden and of its dummies on every paper, made when the site is built: `/sheets/<slug>-a4.pdf` to
 * colour in, `/sheets/<slug>-a4-colour.pdf`, and `/sheets/<slug>-a4-plain.pdf` without a picture.
 */
export const getStaticPaths: GetStaticPaths = async () => {
  const garden = {
    slug: 'garden',
    design: await dummyNamed('garden'),
    file: 'content/dummies/garden.hingebook.json',
  }
  const all = await allChapters()
  const shown = sideDummies(all)
  const beside = (await besideChapters()).map(({ name }) => name).filter((name) => !shown.includes(name))
  const sides = await Promise.all(
    [...shown, ...beside].map(async (slug) => ({
      slug,
      design: await dummyNamed(slug),
      file: `content/dummies/${slug}.hingebook.json`,
    })),
  )
  const chapters = all.map(({ slug, design }) => ({
    slug,
    design,
    file: `content/chapters/${slug}.mdx`,
  }))
  return [...chapters, ...sides, garden].flatMap(({ slug, design, file }) =>
    TEMPLATE_PAPERS.flatMap(({ paper }) =>
      // Of what no chapter shows there is the sheet to colour in alone.
      (beside.includes(slug) ? templateArts(design).slice(0, 1) : templateArts(design)).map(
        ({ art, path }) => ({
          params: { file: templatePath(slug, paper, path).replace('/sheets/', '') },
          props: { design, file, paper, art } satisfies Props,
        }),
      ),
    ),
  )
}

export const GET: APIRoute<Record<string, unknown>> = async ({ props }) => {
  const { design, file, paper, art } = props as unknown as Props
  try {
    const bytes = await sheetPdf(design, { paper, art, lines: templateLines(art) }, await fontOnDisk())
    return new Response(new Uint8Array(bytes), { headers: { 'Content-Type': 'application/pdf' } })
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error)
    throw new Error(`${file}: no template on ${paper} paper. ${reason}`)
  }
}
