/** Choosing a mechanism: all of them side by side. */

export const openAndShut = 'Open and shut them'

export const stop = 'Stop'

export const opening = 'Opening'

export const openingOfAll = 'Opening of all cards'

/* What is told of each: a head, and its words. */

export const way = 'Way'

export const height = 'Height'

/** At a right angle. */
export const heightIs = (height: string): string => `${height} at 90°`

export const heightIsAndAlong = (height: string, along: string): string =>
  `${heightIs(height)}, and ${along} along its fold`

export const room = 'Room'

export const roomIs = (fromGutter: string): string => `${fromGutter} from the gutter when shut`

export const layers = 'Layers'

export const layersAre = (count: number): string => `${count} when shut`

export const strength = 'Strength'

export const work = 'Work'

export const easy = 'easy'

export const someCare = 'some care'

export const patientHands = 'patient hands'

/** How hard it is, and what there is to do. */
export const workIs = (level: string | undefined, counts: readonly string[]): string =>
  `${level}: ${counts.join(', ')}`

/* What somebody may look for: my part … */

export const myPart = 'My part'

export const anything = 'may do anything'

export const rises = 'rises'

export const swings = 'swings to you or away'

export const sweeps = 'sweeps'

export const turns = 'nods and turns'

export const mouth = 'opens like a mouth'

export const platform = 'makes a platform'

export const guest = 'sits on another part'

export const uncut = 'needs no glue'
