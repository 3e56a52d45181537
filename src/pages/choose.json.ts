import type { APIRoute } from 'astro'
import { allChoices } from '../site/all-choices.ts'

/** The cards of the page that helps to choose, as they were read and checked when the site was built. */
export const GET: APIRoute = async () =>
  new Response(
    JSON.stringify(Object.fromEntries((await allChoices()).map(({ id, design }) => [id, design]))),
    {
      headers: { 'Content-Type': 'application/json' },
    },
  )
