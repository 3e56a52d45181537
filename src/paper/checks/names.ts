/** How the sentences of the checks call what they speak of. */
import { nameOf } from '../design/name.ts'
import * as says from '../words/names.ts'

/** A part by its id: `left-reed` is the left reed. */
export const the = (id: string): string => says.the(nameOf(id))

export const The = (id: string): string => says.The(nameOf(id))

/** A crease or panel as a reader would call it. */
export function place(name: string): string {
  if (name === 'gutter') return says.gutter
  const [id = '', part = ''] = name.split('/')
  if (id === 'page') return says.page(part)
  return says.partOf(nameOf(id), part)
}

/** A panel as a reader would call it: a page, or a mechanism's left or right side. */
export const side = (name: string): string =>
  /^page\//.test(name) ? place(name) : /\/(left|right)$/.test(name) ? says.sideOf(place(name)) : place(name)
