import * as says from '../../../content/words/keeping/garden.ts'
import { fetched, reasonOf } from '../model/loading.ts'
import { placed } from '../model/place.ts'
import type { FileRead } from './file.ts'
import { readFileText } from './file.ts'
import { wayBack } from './take.ts'

/** A design that an address asks for, and where the maker can go back to. */
export interface Asked {
  readonly read: FileRead
  readonly back: string | null
}

/** The names that the site gives its dummies. */
const NAME = /^[a-z][a-z0-9-]{0,60}$/

/** A dummy of this site by its name in the address, as in `?from=owl`; null: the address names none. It never throws. */
export async function fromGarden(search: string): Promise<Asked | null> {
  const name = new URLSearchParams(search).get('from')
  if (name === null) return null
  const back = wayBack(search.replace(/^\?/, ''))
  if (!NAME.test(name)) return { read: { read: false, sentence: says.noSuchDummy }, back }
  try {
    const answer = await fetched(placed(`/dummies/${name}.json`))
    return { read: readFileText(await answer.text()), back }
  } catch (error) {
    const sentence = says.notTaken(name, reasonOf(error))
    return { read: { read: false, sentence }, back }
  }
}
