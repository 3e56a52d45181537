/** The dummies that the browser keeps, for pages that ask for a card. */
import type { Design } from '../../paper/index.ts'
import { present } from './history.ts'
import { browserOutside } from './outside.ts'
import type { Entry } from './shelf.ts'
import type { Store } from './store.ts'
import { openStore } from './store.ts'

/** In front of the id of a dummy that the browser keeps. */
const OWN = 'own:'

/** By what a page calls it where it stands beside the book's cards. */
export const ownKey = ({ id }: Entry): string => `${OWN}${id}`

export const isOwn = (key: string): boolean => key.startsWith(OWN)

let store: Promise<Store> | null = null

const opened = (): Promise<Store> => {
  store ??= openStore(browserOutside())
  return store
}

/** A reader's own dummies, last changed first; none where the browser keeps nothing. */
export async function ownCards(): Promise<readonly Entry[]> {
  const told = await (await opened()).list()
  return told.ok ? told.value : []
}

/** One of them as it was left; a sentence where it cannot be read. */
export async function ownCard(key: string): Promise<Design | string> {
  const work = await (await opened()).open(key.slice(OWN.length))
  return work.ok ? present(work.history).design : work.sentence
}
