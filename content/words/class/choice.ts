/** What a teacher chose that cannot be; `given`: what was written instead. */
export const pupils = (most: number, given: string): string =>
  `Pupils must be a whole number from 1 to ${most}, not “${given}”.`

export const groups = (most: number, given: string): string =>
  `Groups must be a whole number from 1 to ${most}, not “${given}”.`

export const ages = (all: readonly string[], given: string): string =>
  `Ages must be one of ${all.join(', ')}, not “${given}”.`

export const minutes = (all: readonly number[], given: string): string =>
  `Minutes must be one of ${all.join(', ')}, not “${given}”.`

export const paper = (all: readonly string[], given: string): string =>
  `Paper must be one of ${all.join(', ')}, not “${given}”.`
