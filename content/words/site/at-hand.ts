/** Said of a ready template. */

export const saved = (file: string): string => `${file} is saved. Print it at 100 %.`

export const theTemplate = 'The template'
