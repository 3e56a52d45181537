import type { APIRoute, GetStaticPaths } from 'astro'
import sharp from 'sharp'
import { fontOnDisk } from '../../sheet/files/font-on-disk.ts'
import { outliner } from '../../site/preview/outlines.ts'
import { posterSvg } from '../../site/preview/poster.ts'
import type { NamedPoster } from '../../site/preview/posters.ts'
import { allPosters } from '../../site/preview/posters.ts'

/** The picture of each page for those who link to it, made when the site is built. */
export const getStaticPaths: GetStaticPaths = async () =>
  (await allPosters()).map((poster) => ({ params: { file: poster.name }, props: { poster } }))

const outlined = outliner(await fontOnDisk())

export const GET: APIRoute<Record<string, unknown>> = async ({ props }) => {
  const { title, over, draw } = props.poster as NamedPoster
  const svg = posterSvg({ title, over, drawing: await draw() }, outlined)
  const png = await sharp(Buffer.from(svg)).png({ compressionLevel: 9 }).toBuffer()
  return new Response(new Uint8Array(png), { headers: { 'Content-Type': 'image/png' } })
}
