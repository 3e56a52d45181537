/** A part's id as a reader would say it: `left-reed` is a left reed. */
export const nameOf = (id: string): string => id.replaceAll('-', ' ')

/** The first part of the name of a crease or panel: the id of the mechanism it belongs to, `page` or `gutter`. */
export const ownerOf = (place: string): string => place.split('/')[0] ?? ''
