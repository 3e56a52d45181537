/** What is stuck to what, in the list of joints. */
export const taped = (piece: string, host: string): string => `${piece} taped to ${host}`
export const throughSlits = (piece: string, host: string): string =>
  `${piece} through slits, glued behind ${host}`
export const glued = (piece: string, host: string): string => `${piece} glued to ${host}`
