import { getCollection } from 'astro:content'
import type { APIRoute, GetStaticPaths } from 'astro'
import { dummyNamed } from '../../site/chapters.ts'

/** Every dummy of the garden as it was read and checked when the site was built. */
export const getStaticPaths: GetStaticPaths = async () =>
  (await getCollection('dummies')).map(({ id }) => ({ params: { file: id } }))

export const GET: APIRoute = async ({ params }) =>
  new Response(JSON.stringify(await dummyNamed(params.file ?? '')), {
    headers: { 'Content-Type': 'application/json' },
  })
