import { getCollection } from 'astro:content'
import type { APIRoute } from 'astro'
import { dummyNamed } from '../site/chapters.ts'
import { plain } from '../site/word-picture.ts'

/** The cards of the pictures beside words, by the names of their files, as they were read and checked at build. */
export const GET: APIRoute = async () => {
  const names = new Set((await getCollection('glossary')).map(({ data }) => data.picture.dummy))
  const cards = await Promise.all([...names].map(async (name) => [name, plain(await dummyNamed(name))]))
  return new Response(JSON.stringify(Object.fromEntries(cards)), {
    headers: { 'Content-Type': 'application/json' },
  })
}
