/** A strip of pictures that is bound. */
export const fileTitle = (card: string): string => `${card}: flip book`

export const page = (
  number: number,
  all: number,
  paper: string,
  first: number,
  last: number,
  leaves: number,
): string => `Flip book, page ${number} of ${all} on ${paper}: leaves ${first} to ${last} of ${leaves}.`

export const how =
  'Print at 100 % and cut along the solid lines. Stack the leaves by their numbers, number 1 on top, tap the left edges level and hold them with a strong clip or two staples left of the dotted line. Bend the stack and let the leaves slip off your thumb.'
