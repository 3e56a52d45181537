/** What is said when a part of the site does not come. */
import * as says from '../../../content/words/loading.ts'

/** A file that the site did not give. */
export class NotLoadedError extends Error {}

/** Fetches one file of this site. Throws a NotLoadedError that says why it did not come. */
export async function fetched(address: string): Promise<Response> {
  let answer: Response
  try {
    answer = await fetch(address)
  } catch {
    throw new NotLoadedError(unreachable())
  }
  if (!answer.ok) throw new NotLoadedError(says.answeredWithError(answer.status))
  return answer
}

/** Why nothing comes: only what the device knows for sure is said. */
const unreachable = (): string => (navigator.onLine ? says.noAnswer : says.noNetwork)

/** A browser's own words for a module that does not come, and no others. */
const isNetwork = (error: unknown): boolean =>
  error instanceof TypeError && /fetch|dynamically imported|module script/i.test(error.message)

/**
 * Why something failed, for the end of a sentence: the network if it was the network, else the error's own
 * words.
 */
export function reasonOf(error: unknown): string {
  if (error instanceof NotLoadedError) return error.message
  if (isNetwork(error)) return unreachable()
  return error instanceof Error && error.message !== '' ? error.message.replace(/\.$/, '') : says.ownFault
}

/** `The checks could not be loaded: the site did not answer. Try again.` */
export const notLoaded = (what: string, error: unknown): string => says.notLoaded(what, reasonOf(error))
