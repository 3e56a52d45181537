/** Why a piece cannot be stuck on a face, or cut to what stays inside. */

export const noRoom = (panel: string, wide: number, glue: number): string =>
  `There is no room on ${panel}: a piece needs a place ${wide} mm wide, and glue ${glue} mm wide.`

export const noGlueLeft = 'No glue would be left of it. Move the piece inwards first.'

export const noStraightCut = 'No straight cut clears it: move the piece, or draw it anew.'

export const faceHasDents = 'The face has dents: draw the outline by hand.'
