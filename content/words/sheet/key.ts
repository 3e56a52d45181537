/** The key of a sheet: what a line or a sign is called, and what it asks for. */
export const cut = 'Cut'
export const cutDoes = 'through the paper, along every solid line'

export const valley = 'Valley'
export const valleyDoes = 'fold both sides towards you'

export const mountain = 'Mountain'
export const mountainDoes = 'fold both sides away from you'

export const oldFold = 'Old fold'
export const oldFoldDoes = 'press it flat again'

export const glue = 'Glue'
export const glueDoes = 'here, on this face'

export const tape = 'Tape'
export const tapeDoes = 'along this line, on both faces'

export const behind = 'Glue behind'
/** `hasTape`: something is taped, and some of that there. */
export const behindDoes = (hasTape: boolean): string =>
  `here, but on the other face${hasTape ? ' (tape too)' : ''}`

export const place = 'Place'
export const placeDoes = 'where another piece goes: no cut, no fold'

export const care = 'Care'

/** `most`: how far it may not be off, a length, an angle or both. */
export const careDoes = (most: readonly string[]): string =>
  `cut or glue this one with care: ${most.join(' or ')} off is too much`

export const grain = 'Grain'

/** Which way fibres best run; where no arrow is printed, and where the card’s own fold lies across them in most paper. */
export const grainDoes = (isUnmarked: boolean, isAcross: boolean): string =>
  `best along ${isUnmarked ? 'each longest fold' : 'the arrow'}; where it runs across${
    isAcross ? ', as in most paper' : ''
  }, score well`

export const picture = 'Picture'
export const pictureDoes = 'fine grey dots: colour it in while the paper lies flat'
