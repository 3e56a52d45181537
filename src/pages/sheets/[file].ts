import type { APIRoute, GetStaticPaths } from 'astro'
import { fontOnDisk } from '../../sheet/files/font-on-disk.ts'
import { sheetPdf } from '../../sheet/index.ts'
import type { Chapter, TemplatePaper } from '../../site/chapters.ts'
import { allChapters, TEMPLATE_PAPERS, templatePath } from '../../site/chapters.ts'

interface Props {
  readonly chapter: Chapter
  readonly paper: TemplatePaper
}

/** Every chapter's template on every paper, made when the site is built: `/sheets/<slug>-a4.pdf`. */
export const getStaticPaths: GetStaticPaths = async () =>
  (await allChapters()).flatMap((chapter) =>
    TEMPLATE_PAPERS.map(({ paper }) => ({
      params: { file: templatePath(chapter.slug, paper).replace('/sheets/', '') },
      props: { chapter, paper } satisfies Props,
    })),
  )

export const GET: APIRoute<Record<string, unknown>> = async ({ props }) => {
  const { chapter, paper } = props as unknown as Props
  try {
    const bytes = await sheetPdf(chapter.design, { paper }, await fontOnDisk())
    return new Response(new Uint8Array(bytes), { headers: { 'Content-Type': 'application/pdf' } })
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error)
    throw new Error(`content/chapters/${chapter.slug}.mdx: no template on ${paper} paper. ${reason}`)
  }
}
