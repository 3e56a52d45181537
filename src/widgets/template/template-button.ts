/** The id of the button that prints the template of a bench: what a link to it is made of. */
export const templateButton = (slug: string): string => `print-${slug}`
