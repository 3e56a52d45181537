import type { Change, Design } from '../../paper/index.ts'
import { assign } from '../../paper/index.ts'
import { kept } from './state.ts'

/** Every number of the design to a thousandth, so that a link gives the very same design. */
export const keptFields = <T extends Readonly<Record<string, unknown>>>(fields: T): T =>
  Object.fromEntries(
    Object.entries(fields).map(([name, value]) => [name, typeof value === 'number' ? kept(value) : value]),
  ) as T

/** One mechanism's fields set, and nothing else moved along: what a file or a link says. */
export function withFields(design: Design, id: string, fields: Change): Design {
  return {
    ...design,
    mechanisms: design.mechanisms.map((m) => (m.id === id ? assign(m, keptFields(fields)) : m)),
  }
}
