/** Papers as they are called, and what of a print cannot be. Numbers are mm. */
export const letter = 'US Letter'
export const legal = 'US Legal'
export const tabloid = 'US Tabloid'

export const ownPaper = (short: number, long: number): string => `paper of ${short} × ${long} mm`

export const paperWidth = (least: number, most: number): string =>
  `The paper’s width must be ${least} to ${most} mm.`
export const paperHeight = (least: number, most: number): string =>
  `The paper’s height must be ${least} to ${most} mm.`

export const checkLine = (least: number, most: number): string =>
  `The 100 mm check line can measure ${least} to ${most} mm. If yours is further off, print at 100 %, “actual size”, first.`
