import { cutLayerFits } from './cut-layer.ts'
import { cutTrapezoidFits } from './cut-trapezoid.ts'
import { cutVFoldFits } from './cut-v-fold.ts'
import { floatingLayerFits } from './floating-layer.ts'
import { gluedTentFits } from './glued-tent.ts'
import { gluedVFoldFits } from './glued-v-fold.ts'
import type { Fits, Placed } from './kind.ts'
import type { AnyKind, Mechanism } from './registry.ts'
import { riderFits } from './rider.ts'

/** How a new one of each kind fits a room: apart from the kinds, for only what seeks new ones asks for it. */
const fits: { readonly [M in Mechanism as M['kind']]: Fits<M> } = {
  'cut-v-fold': cutVFoldFits,
  'cut-layer': cutLayerFits,
  'cut-trapezoid': cutTrapezoidFits,
  'glued-v-fold': gluedVFoldFits,
  'glued-tent': gluedTentFits,
  'floating-layer': floatingLayerFits,
  rider: riderFits,
}

/** How a new one of this kind fits a room. */
export const fitsOf = ({ kind }: AnyKind): Fits<Placed> => fits[kind as Mechanism['kind']] as Fits<Placed>
