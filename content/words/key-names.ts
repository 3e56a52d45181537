/** Keys, as they stand on a keyboard. */

export const pageDown = 'Page Down'

export const pageUp = 'Page Up'

export const home = 'Home'

export const end = 'End'

export const space = 'Space'

export const escapeKey = 'Escape'
