import type { Frame } from '../../plane/frame.ts'
import { DEGREES, RADIANS } from '../../plane/vector.ts'

/**
 * The closure of two pages and two facets round a host crease, spherical (they meet at an apex) or
 * planar (they run along the crease). Both are four-bars: page, facet, facet, page.
 *
 *            R  ridge                 sides  b1 = host to right joint, a1 = right joint to ridge
 *        a2 / \ a1                           b2 = host to left joint,  a2 = left joint to ridge
 *          /   \                      spherical: angles at the apex, radians
 *    left G2-g--G1 right joint        planar: lengths across the crease, mm
 *          \   /
 *        b2 \ / b1                    g is the diagonal from joint to joint
 *            E  host crease, angle w between the pages on the side where the piece stands
 *
 * Sources: spherical law of cosines in half-angle form (Todhunter, Spherical Trigonometry, art. 49)
 * and its planar twin; every difference that vanishes when the card shuts is formed without
 * subtracting nearly equal numbers.
 */
export interface FourBar {
  readonly form: 'spherical' | 'planar'
  readonly b1: number
  readonly a1: number
  readonly b2: number
  readonly a2: number
  /** (b1 - b2), (a1 - a2), (b1 + a1) - (b2 + a2) and (b1 - a1) - (b2 - a2), each formed from the numbers in the file. */
  readonly db: number
  readonly da: number
  readonly dUp: number
  readonly dDown: number
  /** sin and half-angle sine of b1 - b2, or it and its half in the planar form. */
  readonly plainDb: number
  readonly halfDb: number
  /** The stop is exactly flat: both facets together are as wide as both bases, or all four make up one whole sheet. */
  readonly full: boolean
  /** Both joints lie in one straight line when the card is flat. */
  readonly straight: boolean
  /** 1 popped, -1 lying back in the crease. */
  readonly branch: 1 | -1
  /** True if the piece stands on the outside of the host's fold. */
  readonly outside: boolean
  /**
   * Why it closes at no opening: `short`, its facets together do not span its joints even where these are nearest;
   * `unlike`, they differ by more than the joints ever come apart. Null: it closes somewhere.
   */
  readonly misfit: 'short' | 'unlike' | null
  /** Sine and cosine of b and a; 1 and 0 in the planar form, where joints run along the crease. */
  readonly right: JointTurn
  readonly left: JointTurn
}

interface JointTurn {
  /** sin b, or b itself in the planar form. */
  readonly plainB: number
  /** cos b, or 1 in the planar form. */
  readonly slopeB: number
  readonly sinB: number
  readonly cosB: number
  readonly sinA: number
  readonly cosA: number
}

/** Lengths in mm, or angles in degrees, as they stand in the file. */
export function fourBar(
  form: FourBar['form'],
  right: { base: number; facet: number },
  left: { base: number; facet: number },
  branch: 1 | -1,
  outside: boolean,
): FourBar {
  const k = form === 'spherical' ? RADIANS : 1
  // Sums that differ by rounding alone are equal.
  const difference = (x: number) => (Math.abs(x) < 1e-9 ? 0 : x * k)
  const turnOf = ({ base, facet }: { base: number; facet: number }): JointTurn =>
    form === 'planar'
      ? { plainB: base, slopeB: 1, sinB: 1, cosB: 0, sinA: 1, cosA: 0 }
      : {
          plainB: Math.sin(base * k),
          slopeB: Math.cos(base * k),
          sinB: Math.sin(base * k),
          cosB: Math.cos(base * k),
          sinA: Math.sin(facet * k),
          cosA: Math.cos(facet * k),
        }
  const db = difference(right.base - left.base)
  // As far as two sides of a triangle reach: on the sphere the way round the other side may be the shorter one.
  const reach = (sum: number): number => (form === 'spherical' ? Math.min(sum, 360 - sum) : sum)
  const isLess = (x: number, y: number): boolean => difference(x - y) < 0
  const misfit = isLess(reach(right.facet + left.facet), Math.abs(right.base - left.base))
    ? 'short'
    : isLess(reach(right.base + left.base), Math.abs(right.facet - left.facet))
      ? 'unlike'
      : null
  return {
    form,
    b1: right.base * k,
    a1: right.facet * k,
    b2: left.base * k,
    a2: left.facet * k,
    db,
    da: difference(right.facet - left.facet),
    dUp: difference(right.base + right.facet - (left.base + left.facet)),
    dDown: difference(right.base - right.facet - (left.base - left.facet)),
    plainDb: form === 'spherical' ? Math.sin(db) : db,
    halfDb: form === 'spherical' ? Math.sin(db / 2) : db / 2,
    full:
      difference(right.facet + left.facet - (right.base + left.base)) === 0 ||
      (form === 'spherical' && difference(right.facet + left.facet + (right.base + left.base) - 360) === 0),
    straight: form === 'spherical' && difference(right.base + left.base - 180) === 0,
    branch,
    outside,
    misfit,
    right: turnOf(right),
    left: turnOf(left),
  }
}

/** True if the facets shut against the parts of the pages beyond the joints, false: against the inner parts. */
export const shutsOuter = (bar: Pick<FourBar, 'branch' | 'outside'>): boolean =>
  bar.branch > 0 !== bar.outside

/**
 * True for the piece whose facets keep to their pages all the way: just as wide as its bases, with the host
 * crease itself for a ridge, on the inside or off the back; or making up half a turn with them, so that its
 * ridge is the host crease again, behind the apex.
 */
export const liesInHost = ({ form, b1, a1, b2, a2, ...bar }: FourBar): boolean => {
  if (!shutsOuter(bar)) return a1 === b1 && a2 === b2
  const straight = (b: number, a: number): boolean => Math.abs(b + a - Math.PI) < 1e-12
  return form === 'spherical' && straight(b1, a1) && straight(b2, a2)
}

/** How far the four-bar is from shutting flat, in degrees or mm: 0 means it shuts flat. */
export function shutGap(bar: FourBar): { gap: number; unit: 'deg' | 'mm' } {
  const gap = shutsOuter(bar) ? bar.dUp : bar.dDown
  return bar.form === 'spherical' ? { gap: gap * DEGREES, unit: 'deg' } : { gap, unit: 'mm' }
}

/**
 * sin(x/2) for angles, x/2 for lengths: with it the law of cosines reads
 * h(g)^2 = h(b1 - b2)^2 + weight * S^2 in both geometries.
 */
const half = (bar: FourBar, x: number): number => (bar.form === 'spherical' ? Math.sin(x / 2) : x / 2)

const plain = (bar: FourBar, x: number): number => (bar.form === 'spherical' ? Math.sin(x) : x)

const weightOf = ({ right, left }: FourBar): number => right.plainB * left.plainB

/**
 * The openings of the host crease (degrees) at which the four-bar closes: the diagonal may not be
 * longer than both facets together nor shorter than their difference. Empty, its least beyond its most,
 * where no diagonal that the pages allow is so (triangle inequality, on the sphere as in the plane).
 * Symmetric: sin^2(w/2) = sin^2 a / sin^2 b, which is cos^2(w/2) = (cos^2 a - cos^2 b) / sin^2 b.
 */
export function rangeOf(bar: FourBar): [least: number, most: number] {
  if (bar.misfit) return [180, 0]
  const weight = weightOf(bar)
  if (weight <= 0) return [0, 180]
  const square = (x: number) => {
    const h = half(bar, x)
    const d = bar.halfDb
    return (h - d) * (h + d)
  }
  const at = (s2: number) => 2 * DEGREES * Math.asin(Math.sqrt(Math.min(1, Math.max(0, s2))))
  const least = bar.dUp === 0 || bar.dDown === 0 ? 0 : at(square(Math.abs(bar.da)) / weight)
  const most = bar.full ? 1 : square(bar.a1 + bar.a2) / weight
  return [least, most >= 1 ? 180 : at(most)]
}

/**
 * The openings of the host crease (degrees) at which a joint's angle may change its sign, at most one for
 * either joint. There the facet comes into the plane of its own page, with the ridge at q from the host
 * crease (q = b + a beyond the joint, b - a within), and the law of cosines about the host crease,
 * cos a' = cos b' cos q + sin b' sin q cos w, has one root in cos w, whose half-angle form keeps its digits:
 *
 *   sin^2(w/2) = (h(a')^2 - h(b' - q)^2) / (sin b' sin q)        a', b' of the other side
 *
 * (Todhunter, art. 49, and the planar twin.) A piece that shuts flat has that root at w = 0, so its joints
 * keep their signs all the way. Between two such openings, and between its stops, a joint turns one way
 * only: it stands still where the other facet is in line with its page, which is such an opening.
 */
export function alignments(bar: FourBar): number[] {
  const outer = shutsOuter(bar) ? 1 : -1
  if (shutGap(bar).gap === 0) return []
  const at = (own: number, facet: number, b: number, a: number): number[] => {
    const q = own + outer * facet
    const s2 =
      ((half(bar, a) - half(bar, b - q)) * (half(bar, a) + half(bar, b - q))) /
      (plain(bar, b) * plain(bar, q))
    return s2 > 0 && s2 < 1 ? [2 * DEGREES * Math.asin(Math.sqrt(s2))] : []
  }
  return [...at(bar.b1, bar.a1, bar.b2, bar.a2), ...at(bar.b2, bar.a2, bar.b1, bar.a1)]
}

/**
 * What the closure gives at one opening: sine and cosine of half of each angle, in one memory, so that nothing is
 * allocated where a card is posed sixty times a second.
 */
const solved = new Float64Array(8)

/** At the joints: the angle from the inner page to the facet, through the side where the piece stands. */
const RIGHT = 0
const LEFT = 2
/** Between the facets, on the side that shuts. */
const RIDGE = 4
/** The host's, at which it was solved: its own, or that of the stop. */
const HOST = 6

/** Sine and cosine of a half angle given its tangent's square as a ratio p / q, both >= 0; written to `solved`. */
function halfFrom(p: number, q: number, at: number): void {
  const P = Math.max(p, 0)
  const Q = Math.max(q, 0)
  const sum = P + Q
  // 0 / 0 is the shut symmetric case: the two circles coincide and the limit is a right angle.
  solved[at] = sum === 0 ? Math.SQRT1_2 : Math.sqrt(P / sum)
  solved[at + 1] = sum === 0 ? Math.SQRT1_2 : Math.sqrt(Q / sum)
}

/**
 * The angle at a joint from the inner page to the facet: from the page to the diagonal, and from there on to the
 * facet, by half the angle that `solved` holds, to the side that the branch says. w is the angle between the pages; S,
 * C its half's sine, cosine (C < 0 beyond 180: the outside).
 */
function joint(bar: FourBar, at: typeof RIGHT | typeof LEFT): void {
  const S = solved[HOST] as number
  const C = bar.outside ? -(solved[HOST + 1] as number) : (solved[HOST + 1] as number)
  const own = at === RIGHT ? bar.right : bar.left
  const other = at === RIGHT ? bar.left : bar.right
  const y = 2 * S * C * other.plainB
  const x = (at === RIGHT ? bar.plainDb : -bar.plainDb) + 2 * S * S * other.plainB * own.slopeB
  // Divided by 2 |C| sin(own), which both parts vanish with: joints in one line lose their diagonal at flat.
  const angle =
    bar.straight && S !== 0
      ? Math.atan2(C < 0 || Object.is(C, -0) ? -S : S, -Math.abs(C) * own.cosB)
      : S === 0 && bar.db === 0
        ? C < 0
          ? -Math.PI / 2
          : Math.PI / 2
        : Math.atan2(y, x)
  const us = Math.sin(angle / 2)
  const uc = Math.cos(angle / 2)
  const vs = bar.branch * (solved[at] as number)
  const vc = solved[at + 1] as number
  solved[at] = us * vc + uc * vs
  solved[at + 1] = uc * vc - us * vs
}

/**
 * Solves the closure for the host's half angle. If the opening is out of range, it is solved at the
 * nearest opening within, and the answer is false.
 */
function close(bar: FourBar, host: Frame, range: readonly [number, number]): boolean {
  const hostS = host[12] as number
  const hostC = host[13] as number
  const opening = 2 * DEGREES * Math.atan2(hostS, hostC)
  // Rounding may bend a shut host the other way by a whisker, or give -0: it is shut.
  let S = opening <= 0 ? 0 : hostS
  let C = opening <= 0 ? 1 : hostC
  // A whisker of rounding at the stop itself does not count as out of range.
  const reached = bar.misfit === null && !(opening < range[0] - 1e-9 || opening > range[1] + 1e-9)
  if (!reached) {
    // What closes nowhere is held where it comes nearest to it.
    const isLow = bar.misfit === null ? opening < range[0] : bar.misfit === 'unlike'
    const w = (isLow ? range[0] : range[1]) * RADIANS * 0.5
    S = Math.sin(w)
    C = Math.cos(w)
  }
  solved[HOST] = S
  solved[HOST + 1] = C
  if (bar.outside) C = -C
  const weight = weightOf(bar)
  const hd = bar.halfDb
  const hg = Math.sqrt(hd * hd + weight * S * S)
  const spherical = bar.form === 'spherical'
  // cos^2(g/2) = C^2 cos^2(db/2) + S^2 cos^2((b1 + b2)/2): with it g keeps its digits near 180 degrees.
  const p = C * Math.cos(bar.db / 2)
  const q = S * Math.cos((bar.b1 + bar.b2) / 2)
  const g = spherical ? 2 * Math.atan2(hg, Math.sqrt(p * p + q * q)) : 2 * hg
  // (g - |db|) without cancellation: h(g) - h(db) = weight S^2 / (h(g) + h(db)).
  const rise = hg + Math.abs(hd) === 0 ? 0 : (weight * S * S) / (hg + Math.abs(hd))
  const excess = spherical ? 4 * Math.asin(rise / (2 * Math.cos((g + Math.abs(bar.db)) / 4))) : 2 * rise
  // s - a1, s - a2, s - g, s of the triangle of facets and diagonal; differences that vanish at shut
  // are |db| +- da (0 if it shuts flat) plus the excess.
  // dUp = db + da, dDown = db - da: with db's sign they give |db| + da and |db| - da exactly.
  const plus = bar.db >= 0 ? bar.dUp : -bar.dDown
  const minus = bar.db >= 0 ? bar.dDown : -bar.dUp
  const half1 = (excess + minus) / 2 // s - a1
  const half2 = (excess + plus) / 2 // s - a2
  const half0 = (bar.a1 + bar.a2 + g) / 2 // s
  const half3 = (bar.a1 + bar.a2 - g) / 2 // s - g
  // Written out: a function that is not merged in here would put each number it gives into memory.
  const s1 = spherical ? Math.sin(half1) : half1
  const s2 = spherical ? Math.sin(half2) : half2
  let s0 = spherical ? Math.sin(half0) : half0
  let s3 = spherical ? Math.sin(half3) : half3
  // Where one of the two vanishes exactly at flat, sin(s - g) sin(s) = weight C^2 gives its digits.
  const over = spherical && bar.full ? bar.a1 + bar.a2 - Math.PI : -1
  const even = Math.abs(over) < 1e-12
  if (bar.full) {
    if (even) s0 = s3 = Math.sqrt(weight) * Math.abs(C)
    else if (over < 0) s3 = (weight * C * C) / s0
    else s0 = (weight * C * C) / s3
  }
  halfFrom(s1 * s2, s0 * s3, RIDGE)
  halfFrom(even ? s1 : s1 * s3, even ? s2 : s0 * s2, RIGHT)
  halfFrom(even ? s2 : s2 * s3, even ? s1 : s0 * s1, LEFT)
  joint(bar, RIGHT)
  joint(bar, LEFT)
  return reached
}

/**
 * The hosts' frame and the closure, written out as the frames of ridge, left and right joint. Past its stop
 * the piece stays as it is there, even in the middle between the two pages, which go on without it.
 */
export function placeFourBar(
  bar: FourBar,
  range: readonly [number, number],
  from: number,
  toward: 1 | -1,
  host: Frame,
  out: readonly Frame[],
): boolean {
  const reached = close(bar, host, range)
  const S = solved[HOST] as number
  const C = solved[HOST + 1] as number
  const spherical = bar.form === 'spherical'
  const outer = shutsOuter(bar)
  const o = bar.outside ? -1 : 1
  const ridge = out[0] as Frame
  const ridgeSine = solved[RIDGE] as number
  const ridgeCosine = solved[RIDGE + 1] as number
  ridge[12] = ridgeSine
  ridge[13] = ridgeCosine
  for (let side = 1; side >= -1; side -= 2) {
    const joint = out[side > 0 ? 2 : 1] as Frame
    const b = side > 0 ? bar.b1 : bar.b2
    const a = side > 0 ? bar.a1 : bar.a2
    const s = solved[side > 0 ? RIGHT : LEFT] as number
    const c = solved[(side > 0 ? RIGHT : LEFT) + 1] as number
    const sinT = 2 * s * c
    const cosT = c * c - s * s
    const { sinB, cosB, sinA, cosA } = side > 0 ? bar.right : bar.left
    // Lying still off the back, T runs from -360 to 0: counted from the other way round, the fold starts at 0, not 360.
    const flip = outer && bar.outside ? -1 : 1
    joint[12] = outer ? flip * c : s
    joint[13] = outer ? flip * s : c
    for (let k = 0; k < 3; k++) {
      const X = host[3 + k] as number
      const N = host[9 + k] as number
      const E = (host[6 + k] as number) * toward
      const O = (host[k] as number) + (host[6 + k] as number) * from
      const page = side * S * X + C * N
      const m = o * (S * N - side * C * X)
      const q = spherical ? sinB * E - cosB * page : -page
      const g = cosB * E + sinB * page
      const f = cosT * q + sinT * m
      const k1 = bar.branch * (sinT * q - cosT * m)
      joint[k] = spherical ? O : O + b * page
      joint[6 + k] = spherical ? g : E
      // The frame half-way between the facet and the part of the page it shuts against.
      joint[9 + k] = outer ? flip * (c * m - s * q) : c * q + s * m
      joint[3 + k] = side * (outer ? -flip * (c * q + s * m) : s * q - c * m)
      if (side < 0) continue
      const toJoint = spherical ? sinA * g - cosA * f : -f
      ridge[k] = spherical ? O : O + b * page + a * f
      ridge[6 + k] = spherical ? cosA * g + sinA * f : E
      ridge[9 + k] = ridgeCosine * toJoint + ridgeSine * k1
      ridge[3 + k] = ridgeSine * toJoint - ridgeCosine * k1
    }
  }
  return reached
}
