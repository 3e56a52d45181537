/** How the sentences of the checks call what they speak of. */
import { nameOf } from '../design/name.ts'

/** A part by its id: `left-reed` is the left reed. */
export const the = (id: string): string => `the ${nameOf(id)}`

export const The = (id: string): string => `T${the(id).slice(1)}`

/** A crease or panel as a reader would call it. */
export function place(name: string): string {
  if (name === 'gutter') return 'the gutter'
  const [id = '', part = ''] = name.split('/')
  if (id === 'page') return `the ${part} page`
  return `${the(id)}’s ${part}`
}

/** A panel as a reader would call it: a page, or a mechanism's left or right side. */
export const side = (name: string): string =>
  /^page\//.test(name) ? place(name) : /\/(left|right)$/.test(name) ? `${place(name)} side` : place(name)
