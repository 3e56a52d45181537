import { given } from './options.ts'

export const usage = '--opening DEGREES [--json]'

export const help = 'Say how high each tip stands at an opening from 0 (shut) to 180 (flat).'

export const notOpening = (got: string | boolean | undefined): string =>
  `--opening must be a number of degrees from 0 (shut) to 180 (flat)${given(got)}.`

export const openAt = (title: string, opening: string): string => `${title}, open at ${opening}`

export const tip = (
  id: string,
  rise: string,
  standOff: string,
  reach: string,
  highest: string,
  at: string,
): string => `${id}: ${rise}, stand-off ${standOff}, reach ${reach} (highest ${highest}, at ${at})`

export const rise = (length: string): string => `rise ${length}`

export const behindPage = (length: string): string => `${length} behind the page`

export const gape = (between: readonly string[], length: string): string =>
  `${between.join(' and ')}: gape ${length}`

export const margin = (length: string): string => `margin when shut: ${length}`

export const cannotOpen = (ids: readonly string[]): string => `cannot open this far: ${ids.join(', ')}`
