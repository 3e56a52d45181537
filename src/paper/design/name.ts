/** A part's id as a reader would say it: `left-reed` is a left reed. */
export const nameOf = (id: string): string => id.replaceAll('-', ' ')
