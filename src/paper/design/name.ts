/** A part's id as a reader would say it: `left-reed` is a left reed. A V-fold keeps the spelling of the trade. */
export const nameOf = (id: string): string => id.replaceAll('-', ' ').replace(/\bv fold\b/, 'V-fold')

/** The first part of the name of a crease or panel: the id of the mechanism it belongs to, `page` or `gutter`. */
export const ownerOf = (place: string): string => place.split('/')[0] ?? ''
