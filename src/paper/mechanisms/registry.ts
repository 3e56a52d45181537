import { cutLayer } from './cut-layer.ts'
import { cutTrapezoid } from './cut-trapezoid.ts'
import { cutVFold } from './cut-v-fold.ts'
import { floatingLayer } from './floating-layer.ts'
import { gluedTent } from './glued-tent.ts'
import { gluedVFold } from './glued-v-fold.ts'
import type { Kind, Placed } from './kind.ts'
import { rider } from './rider.ts'

/** Every kind of mechanism there is. */
const registry = [cutVFold, cutLayer, cutTrapezoid, gluedVFold, gluedTent, floatingLayer, rider] as const

type MechanismOf<K> = K extends Kind<infer M> ? M : never

/** A mechanism of any kind, as it stands in a design file. */
export type Mechanism = MechanismOf<(typeof registry)[number]>

/** Any kind, seen without its own parameters: callers hand each kind only its own mechanisms. */
export type AnyKind = Kind<Placed>

/** The kinds, in the order in which the site presents them. */
export const kinds: readonly AnyKind[] = registry as unknown as readonly AnyKind[]

const byName = new Map(kinds.map((kind) => [kind.kind, kind]))

/** The kind of that name, or undefined. */
export const kindNamed = (name: string): AnyKind | undefined => byName.get(name)

/** The kind of a mechanism. Throws a RangeError if there is none: a parsed design never does. */
export function kindOf(mechanism: Placed): AnyKind {
  const kind = byName.get(mechanism.kind)
  if (!kind) throw new RangeError(`there is no kind ${mechanism.kind}`)
  return kind
}
