/** Why a picture made of dots cannot be used. The last ones follow the name of a field, as those of `design.ts`. */

export const noPicture = 'That is no picture: a PNG or a JPEG can be read.'

export const noDots = 'That picture has no dots.'

/** `most`: millions of dots. */
export const tooLarge = (width: number, height: number, most: number): string =>
  `That picture is too large: ${width} by ${height} dots. At most ${most} million can be read.`

export const notAddress = (got: string): string =>
  `must be a PNG or JPEG as data:image/png;base64, or data:image/jpeg;base64, and its letters, not ${got}`

export const tooManyLetters = (most: number, got: number): string =>
  `must have at most ${most} letters, not ${got}`

export const notBase64 = 'must go on in base 64 after the comma'

export const wrongPicture = (type: 'png' | 'jpeg', most: number): string =>
  `must hold a ${type === 'png' ? 'PNG' : 'JPEG'} of at most ${most} million dots`
