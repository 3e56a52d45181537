/** The key of the flat drawing. */
export const cut = 'cut'
export const valley = 'valley'
export const mountain = 'mountain'
export const glue = 'glue'
export const glueBehind = 'glue behind'
export const pressedFlat = 'fold pressed flat'

/** A piece that is there several times. */
export const times = (piece: string, count: number): string => `${piece}, ${count} times`

/** What the flat drawing shows; `glued`: the names of the pieces to glue on. */
export const sheet = (
  title: string,
  wide: string,
  high: string,
  face: 'inside' | 'outside',
  glued: readonly string[],
): string =>
  `The flat sheet of “${title}”, ${wide} by ${high}, seen from ${face}.${
    glued.length > 0 ? ` With it the pieces to glue on: ${glued.join('; ')}.` : ''
  }`
