/**
 * The kernel: pure geometry of pop-up cards, no screen, no clock, no chance. Lengths in mm, angles in
 * degrees at this face.
 *
 * World: origin at the reader's end of the gutter; +y along the gutter, away from the reader; the
 * pages lie symmetric about x = 0; +z out of the open card. `opening` is the angle between the pages,
 * 0 shut to 180 flat.
 */

export type { Aim, Aimed, Target } from './aim.ts'
export { aim, aiming } from './aim.ts'
export { assign, change, fieldsFor, settable, settingOf } from './change.ts'
export type { CheckOptions } from './check.ts'
export { check } from './check.ts'
export { cardFields, DesignError, MOST_MECHANISMS, parseDesign } from './design.ts'
export type { Face } from './faces.ts'
export { faces } from './faces.ts'
export type { Loose } from './gluing.ts'
export { glueAreas, heldBy, loose } from './gluing.ts'
export type { SheetHandle } from './handles.ts'
export { dragHandle, handlesOf } from './handles.ts'
export type { Hand, Hands, Moved } from './hands.ts'
export { hands } from './hands.ts'
export type { GuestLine, Making } from './making.ts'
export { foldsTogether, guestLines, making } from './making.ts'
export type { Gape, Measure, TipMeasure } from './measure.ts'
export { highest, measure, riseOf, sharedSlits, shutMargin, swing, tipAt } from './measure.ts'
export type { Design, Model, ModelBuild, ModelCrease, ModelPanel } from './model.ts'
export { modelOf } from './model.ts'
export { nameOf } from './name.ts'
export type { FlatCrease, FlatPart } from './pieces.ts'
export { flatCreases, flatParts, pieces } from './pieces.ts'
export type { PagePoint } from './point.ts'
export { pagePoint } from './point.ts'
export type { Poser } from './pose.ts'
export { compile, keep, poseAt, SHUT } from './pose.ts'
export type { Explanation, Reading } from './read-back.ts'
export { readBack } from './read-back.ts'
export { opensTo, partMargin, topOf } from './readings.ts'
export type { AnyKind, Mechanism } from './registry.ts'
export { kindNamed, kindOf, kinds } from './registry.ts'
export type { Slip } from './slips.ts'
export { likelyPointSlips, likelySlips } from './slips.ts'
export type { Surface } from './surface.ts'
export { surfaces } from './surface.ts'
export { thickest } from './thickness.ts'
export type {
  Card,
  Change,
  Check,
  CheckName,
  Choice,
  Derived,
  Field,
  Flat,
  Fold,
  Handle,
  LineKind,
  Piece,
  PieceLine,
  Placed,
  Pose,
  Repair,
  Side,
  Vec3,
} from './types.ts'
export type { Way } from './way.ts'
export { wayOf } from './way.ts'
