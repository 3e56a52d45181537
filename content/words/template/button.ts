/** The button that prints a template. */

export const printTemplate = 'Print the template'

export const theTemplate = 'The template'
