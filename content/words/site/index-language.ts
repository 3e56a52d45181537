/** What the index has to know of the language. */

/** `dry ball pen or a spoon` is two things; what a thing is for, or how many of it, does not belong to its name. */
export const thingsIn = (material: string): readonly string[] =>
  material.split(' or ').map((one) => one.replace(/^an? /, '').replace(/ (?:for|in|to|with) .*$/, ''))

/** What a name is sorted by. */
export const sortedBy = (name: string): string => name.replace(/^(?:An?|The) /i, '')

/** A sign of a fault as an entry: `It jams` stands under J. */
export const signNamed = (sign: string): string => sign.replace(/^(?:Its?|Something) /, '')

/** Whether a form of a word is only that there are more of it than one. */
export const isPlural = (form: string, forms: readonly string[]): boolean =>
  form.endsWith('s') && forms.includes(form.slice(0, -1))
