/** Templates that are ready to print. */

/* Papers, as a link to a template calls them. */

export const a4 = 'A4'

export const usLetter = 'US Letter'
