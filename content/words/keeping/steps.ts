/** What was done to a dummy, as its list of steps says it. Names come small, as they stand within a sentence. */

/** Places on the card. */
export const gutter = 'the gutter'

export const page = (side: string): string => `the ${side} page`

/** `owl, left`. */
export const placeOn = (owner: string, part: string): string => `${owner}, ${part}`

const several = (names: readonly string[]): string =>
  names.length > 2 ? `${names.slice(0, 1).join(', ')} and ${names.length - 1} more` : names.join(' and ')

/** A dummy's first step: begun here, or opened without its earlier steps. */
export const begun = 'begun'

export const opened = 'opened'

/** The whole dummy. */
export const dummyCopied = 'copied'

/** The title of a copy. */
export const copyOf = (title: string): string => `${title}, copy`

/** `slit 38 to 41`. */
export const changed = (label: string, from: string, to: string): string => `${label} ${from} to ${to}`

/** `wing: slit 38 to 41, lean 4 to 5`. */
export const changes = (name: string, all: readonly string[]): string => `${name}: ${all.join(', ')}`

export const manyChanged = (name: string, count: number): string => `${name}: ${count} sizes`

/** Another part was changed with it, or several. */
export const andMore = (step: string, count: number): string => `${step}, and ${count} more`

export const movedTo = (name: string, place: string): string => `${name} moved to ${place}`

export const copied = (name: string): string => `${name} copied`

export const mirrored = (name: string): string => `${name} mirrored`

export const renamed = (from: string, to: string): string => `${from} renamed ${to}`

export const added = (names: readonly string[]): string => `${several(names)} added`

export const removed = (names: readonly string[]): string => `${several(names)} removed`

/** A part, with so many on it. */
export const removedWith = (name: string, guests: number): string =>
  `${name} removed${guests > 0 ? `, and ${guests} on it` : ''}`

export const exchanged = (gone: readonly string[], come: readonly string[]): string =>
  `${several(gone)} for ${several(come)}`

export const cardChanged = (all: readonly string[]): string => `card: ${all.join(', ')}`

export const withCover = 'with a cover'

export const withoutCover = 'without a cover'

export const titleChanged = (from: string, to: string): string => `title: “${from}” to “${to}”`

export const shapesAdded = (count: number): string => `drawing: ${count} added`

export const shapesRemoved = (count: number): string => `drawing: ${count} removed`

export const drawingChanged = 'drawing changed'

export const papersChanged = 'papers changed'

export const orderChanged = 'order changed'

export const nothingChanged = 'nothing changed'

const sizes = (count: number): string => `${count} ${count === 1 ? 'size' : 'sizes'}`

export const hidden = (names: readonly string[]): string => `${several(names)} hidden`

export const shownAgain = (names: readonly string[]): string => `${several(names)} shown again`

export const locked = (names: readonly string[]): string => `${several(names)} locked`

export const unlocked = (names: readonly string[]): string => `${several(names)} unlocked`

export const keptWhenMended = (names: readonly string[], count: number): string =>
  `${several(names)}: ${sizes(count)} kept when mended`

export const letGo = (names: readonly string[], count: number): string =>
  `${several(names)}: ${sizes(count)} let go of`
