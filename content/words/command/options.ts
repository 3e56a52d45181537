/** What all commands of the command line say of their options. */

type Given = string | boolean | undefined

/** What was given in place of what is allowed, at the end of a sentence; undefined: nothing was. */
export const given = (got: Given): string => (got === undefined ? ', and it was left out' : `, not ${got}`)

export const notOneOf = (option: string, allowed: readonly (string | number)[], got: Given): string =>
  `--${option} must be one of ${allowed.join(', ')}${given(got)}.`

export const notFile = (option: string, endings: readonly string[], got: Given): string =>
  `--${option} must name a file that ends in ${endings.join(' or ')}${given(got)}.`

export const notNumber = (option: string, got: Given): string => `--${option} must be a number${given(got)}.`

export const cannotWrite = (file: string, code: string): string =>
  `--out ${file}: the file cannot be written (${code}).`

export const written = (file: string): string => `Written: ${file}`

export const tabsHelp =
  'TABS: all tabs glued on the card (flat) or pushed through slits in it and glued behind (slit), narrower where one would cover the next one’s slit; as the file has them, unless said.'
