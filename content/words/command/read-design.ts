/** Why a design file cannot be read. */

export const noFile = (file: string): string => `${file}: there is no such file.`

export const isFolder = (file: string): string => `${file}: this is a folder, not a design file.`

export const unreadable = (file: string, code: string): string =>
  `${file}: the file cannot be read (${code}).`

/** `sentence`: what is wrong with it. */
export const wrongIn = (file: string, sentence: string): string => `${file}: ${sentence}`

export const wrongButNear = (file: string, sentence: string, nearest: number): string =>
  `${file}: ${sentence} The nearest that works is ${nearest}.`
