/** Which way a tip goes as the card opens. */
import { listed } from './grammar.ts'

export const stays = (name: string): string => `The ${name} stays where it lies.`

/** `ways`: each of those below that it goes. */
export const goes = (name: string, opening: string, ways: readonly string[]): string =>
  `As the card opens to ${opening}, the ${name} goes ${listed(ways)}.`

/** Said after `goes`. */
export const tipStillOff = (sentence: string, off: string): string =>
  `${sentence} Its tip is still ${off} off the page.`

export const up = (by: string): string => `up by ${by}`

export const down = (by: string): string => `down, ${by} lower than where its ridge starts`

export const outward = (by: string): string => `outward along its fold by ${by}`

export const back = (by: string): string => `back along its fold by ${by}`
