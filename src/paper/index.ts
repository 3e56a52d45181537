export type { Aim, Aimed, Target } from './answers/aim.ts'

export { aim, aiming } from './answers/aim.ts'
export type { Tight } from './answers/care.ts'
export { tightest } from './answers/care.ts'
export type { Forgiveness, Forgiving, Slack } from './answers/forgives.ts'
export { forgives } from './answers/forgives.ts'
export type { Hand, Hands, Moved } from './answers/hands.ts'
export { hands } from './answers/hands.ts'
export type { Mended, Mending, Pins } from './answers/mend.ts'
export { mend } from './answers/mend.ts'
export type { Explanation } from './answers/read-back.ts'
export { readBack } from './answers/read-back.ts'
export type { Facts } from './answers/seek/facts.ts'
export type { Find, Missed } from './answers/seek/find.ts'
export { bestOf, find, finding, sought } from './answers/seek/find.ts'
export type { Free, FreeRoom, Sight } from './answers/seek/free.ts'
export { room } from './answers/seek/free.ts'
export type { Ask, NoOffer, Offer } from './answers/seek/offers.ts'
export { noOffer, offers } from './answers/seek/offers.ts'
export type { Mark } from './answers/seek/reach.ts'
export type { Origin, Wish } from './answers/seek/wish.ts'
export type { Slip } from './answers/slips.ts'
export { likelyPointSlips, likelySlips } from './answers/slips.ts'
export { tipTowards } from './answers/tip.ts'
export type { Reading } from './answers/trials.ts'

export type { CheckOptions } from './checks/check.ts'

export { check } from './checks/check.ts'

export type { Stop, Stops } from './checks/stops.ts'

export { openingStops } from './checks/stops.ts'

export type { Check, CheckName, Repair } from './checks/verdict.ts'

export type { Art, PaperColour, Papers } from './design/art.ts'

export { MOST_ART_POINTS, MOST_SHAPES, PAPER_COLOURS } from './design/art.ts'

export { assign, change, held, read, settable, settingOf, settled } from './design/change.ts'
export type { Card, Design } from './design/design.ts'
export { COVER_RIM } from './design/design.ts'
export { mirrored, mirroredMechanism } from './design/mirror.ts'
export { nameOf, ownerOf } from './design/name.ts'
export { cardFields, MOST_MECHANISMS, parseDesign } from './design/parse.ts'
export { DesignError } from './design/read.ts'
export type { Stretch } from './design/room.ts'
export { runOf, shiftedAlong, sizedBy, stretchOf, wayToRoom } from './design/room.ts'
export { fieldsFor } from './design/setting.ts'
export { sharedSlits } from './design/slits.ts'
export { tabbed } from './design/tabs.ts'

export { plainText, visibleText } from './design/text.ts'

export {
  CARD_NAMES,
  freeId,
  hostsFirst,
  otherSide,
  renamed,
  withGuests,
  without,
} from './design/tree.ts'

export { thickest } from './measure/layers.ts'

export type { Gape, Measure, TipMeasure } from './measure/measure.ts'
export { highest, isRead, measure, riseOf, shutMargin, tipAt } from './measure/measure.ts'
export type { PagePoint } from './measure/page-point.ts'
export { pagePoint } from './measure/page-point.ts'
export { opensTo, partMargin } from './measure/readings.ts'
export { swing } from './measure/swing.ts'
export { topOf } from './measure/top.ts'

export type { Way } from './measure/way.ts'

export { wayOf } from './measure/way.ts'
export type { Fold, LineKind, PieceLine, Side } from './mechanisms/build.ts'
export { helpOn } from './mechanisms/help.ts'

export type { Change, Choice, Derived, Field, Handle, Placed, Said } from './mechanisms/kind.ts'

export type { AnyKind, Mechanism } from './mechanisms/registry.ts'
export { kindNamed, kindOf, kinds } from './mechanisms/registry.ts'
export { isUneven } from './mechanisms/uneven.ts'
export type { CoverHalf } from './model/cover.ts'
export { coverHalves, rimOf } from './model/cover.ts'
export type { SheetHandle } from './model/handles.ts'
export { dragHandle, handlesOf } from './model/handles.ts'

export type { Joint, JointSide } from './model/joints.ts'

export { jointsOf, threaded } from './model/joints.ts'

export type { Model, ModelBuild, ModelCrease, ModelPanel } from './model/model.ts'
export { modelOf, ridgeFold, ridgeOf } from './model/model.ts'
export type { Patch } from './model/patches.ts'
export { patchesOf } from './model/patches.ts'

export type { FlatCrease, FlatPart, Piece } from './model/pieces.ts'
export { flatCreases, flatParts, pieces } from './model/pieces.ts'
export { withTabs } from './model/threading.ts'
export type { Pose, Poser } from './motion/pose.ts'
export { compile, keep, poseAt, SHUT } from './motion/pose.ts'
export { broughtIn, openingRange, toldEnd } from './motion/range.ts'
export type { Surface } from './motion/surface.ts'
export { surfaces } from './motion/surface.ts'

export type { Flat } from './plane/lay.ts'

export type { Vec3 } from './plane/vector.ts'

export { glueArea } from './stuck/glue-area.ts'
export type { Cut, Stuck, Unstuck } from './stuck/stick.ts'
export { pieceOn, stick } from './stuck/stick.ts'
export type { Trim } from './stuck/trim.ts'
export { trim, trimToFace } from './stuck/trim.ts'
export { trimHits } from './stuck/trim-hits.ts'
export type { Upright } from './stuck/upright.ts'
export { placedOn, seenUpright, uprightOn } from './stuck/upright.ts'
