import type { APIRoute, GetStaticPaths } from 'astro'
import type { Design } from '../../paper/index.ts'
import { fontOnDisk } from '../../sheet/files/font-on-disk.ts'
import { sheetPdf } from '../../sheet/index.ts'
import type { TemplatePaper } from '../../site/chapters.ts'
import { allChapters, dummyNamed, sideDummies, TEMPLATE_PAPERS, templatePath } from '../../site/chapters.ts'

interface Props {
  readonly design: Design
  /** The file that names the design. */
  readonly file: string
  readonly paper: TemplatePaper
}

/** Every chapter's template and the garden's on every paper, made when the site is built: `/sheets/<slug>-a4.pdf`. */
export const getStaticPaths: GetStaticPaths = async () => {
  const garden = {
    slug: 'garden',
    design: await dummyNamed('garden'),
    file: 'content/dummies/garden.hingebook.json',
  }
  const all = await allChapters()
  const sides = await Promise.all(
    sideDummies(all).map(async (slug) => ({
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
    TEMPLATE_PAPERS.map(({ paper }) => ({
      params: { file: templatePath(slug, paper).replace('/sheets/', '') },
      props: { design, file, paper } satisfies Props,
    })),
  )
}

export const GET: APIRoute<Record<string, unknown>> = async ({ props }) => {
  const { design, file, paper } = props as unknown as Props
  try {
    const bytes = await sheetPdf(design, { paper }, await fontOnDisk())
    return new Response(new Uint8Array(bytes), { headers: { 'Content-Type': 'application/pdf' } })
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error)
    throw new Error(`${file}: no template on ${paper} paper. ${reason}`)
  }
}
