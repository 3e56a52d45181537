/** At the bench: the challenge that it meets just now, by its name. */

export const met = 'Challenge met:'
