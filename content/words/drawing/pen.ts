/** How far a tip is from the page beneath it, where it is behind that. */
export const behindPage = (far: string): string => `${far} behind the page`

/** A part and its rise, in a sentence without its end. */
export const rises = (part: string, rise: string, isBehind: boolean): string =>
  `${part} ${isBehind ? 'lies' : 'rises'} ${rise}`
