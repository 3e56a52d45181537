import { getCollection } from 'astro:content'
import type { APIRoute, GetStaticPaths } from 'astro'
import { dummyNamed } from '../../site/chapters.ts'

const WRITTEN = import.meta.glob<string>('../../../content/dummies/*.hingebook.json', {
  query: '?raw',
  import: 'default',
  eager: true,
})

/** A dummy's file, to keep. */
const ENDING = '.hingebook'

/** Every dummy twice: as it was read and checked when the site was built, and as the file that it was written in. */
export const getStaticPaths: GetStaticPaths = async () =>
  (await getCollection('dummies')).flatMap(({ id }) =>
    [id, `${id}${ENDING}`].map((file) => ({ params: { file } })),
  )

export const GET: APIRoute = async ({ params }) => {
  const file = params.file ?? ''
  const text = file.endsWith(ENDING)
    ? WRITTEN[`../../../content/dummies/${file}.json`]
    : JSON.stringify(await dummyNamed(file))
  return new Response(text, { headers: { 'Content-Type': 'application/json' } })
}
