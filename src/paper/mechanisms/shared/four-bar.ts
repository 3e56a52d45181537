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
  /** The stop is exactly flat: both facets together are as wide as both bases, or all four make up one whole sheet. */
  readonly full: boolean
  /** Both joints lie in one straight line when the card is flat. */
  readonly straight: boolean
  /** 1 popped, -1 lying back in the crease. */
  readonly branch: 1 | -1
  /** True if the piece stands on the outside of the host's fold. */
  readonly outside: boolean
  /** Sine and cosine of b and a; 1 and 0 in the planar form, where joints run along the crease. */
  readonly right: JointTurn
  readonly left: JointTurn
}

interface JointTurn {
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
      ? { sinB: 1, cosB: 0, sinA: 1, cosA: 0 }
      : {
          sinB: Math.sin(base * k),
          cosB: Math.cos(base * k),
          sinA: Math.sin(facet * k),
          cosA: Math.cos(facet * k),
        }
  return {
    form,
    b1: right.base * k,
    a1: right.facet * k,
    b2: left.base * k,
    a2: left.facet * k,
    db: difference(right.base - left.base),
    da: difference(right.facet - left.facet),
    dUp: difference(right.base + right.facet - (left.base + left.facet)),
    dDown: difference(right.base - right.facet - (left.base - left.facet)),
    full:
      difference(right.facet + left.facet - (right.base + left.base)) === 0 ||
      (form === 'spherical' && difference(right.facet + left.facet + (right.base + left.base) - 360) === 0),
    straight: form === 'spherical' && difference(right.base + left.base - 180) === 0,
    branch,
    outside,
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

const weightOf = (bar: FourBar): number => plain(bar, bar.b1) * plain(bar, bar.b2)

/**
 * The openings of the host crease (degrees) at which the four-bar closes: the diagonal may not be
 * longer than both facets together nor shorter than their difference.
 * Symmetric: sin^2(w/2) = sin^2 a / sin^2 b, which is cos^2(w/2) = (cos^2 a - cos^2 b) / sin^2 b.
 */
export function rangeOf(bar: FourBar): [least: number, most: number] {
  const weight = weightOf(bar)
  if (weight <= 0) return [0, 180]
  const square = (x: number) => {
    const h = half(bar, x)
    const d = half(bar, bar.db)
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

/** What the closure gives at one opening; reused, so that nothing is allocated. */
interface Closure {
  /** Angle at the right joint from the inner page to the facet, through the side where the piece stands; sine and cosine of its half. */
  rightSine: number
  rightCosine: number
  leftSine: number
  leftCosine: number
  /** Half the angle between the facets on the side that shuts. */
  ridgeSine: number
  ridgeCosine: number
  /** Sine and cosine of the host's half angle at which it was solved: its own, or that of the stop. */
  hostSine: number
  hostCosine: number
  /** False: the opening is out of range and the closure is that of the stop. */
  reached: boolean
}

const solved: Closure = {
  rightSine: 0,
  rightCosine: 1,
  leftSine: 0,
  leftCosine: 1,
  ridgeSine: 0,
  ridgeCosine: 1,
  hostSine: 0,
  hostCosine: 1,
  reached: true,
}

/** Sine and cosine of a half angle given its tangent's square as a ratio p / q, both >= 0. */
const ratio = { sine: 0, cosine: 1 }

function halfFrom(p: number, q: number): void {
  const P = Math.max(p, 0)
  const Q = Math.max(q, 0)
  const sum = P + Q
  // 0 / 0 is the shut symmetric case: the two circles coincide and the limit is a right angle.
  ratio.sine = sum === 0 ? Math.SQRT1_2 : Math.sqrt(P / sum)
  ratio.cosine = sum === 0 ? Math.SQRT1_2 : Math.sqrt(Q / sum)
}

/**
 * Angle at a joint between host and diagonal, halved, as a vector; `own` and `other` are the b on
 * either side and `diff` own - other. w is the angle between the pages; S, C its half's sine, cosine
 * (C < 0 beyond 180: the outside).
 */
function innerHalf(
  bar: FourBar,
  own: number,
  other: number,
  diff: number,
  S: number,
  C: number,
): [number, number] {
  const spherical = bar.form === 'spherical'
  const y = 2 * S * C * plain(bar, other)
  const x = plain(bar, diff) + 2 * S * S * plain(bar, other) * (spherical ? Math.cos(own) : 1)
  // Divided by 2 |C| sin(own), which both parts vanish with: joints in one line lose their diagonal at flat.
  const angle =
    bar.straight && S !== 0
      ? Math.atan2(C < 0 || Object.is(C, -0) ? -S : S, -Math.abs(C) * Math.cos(own))
      : S === 0 && diff === 0
        ? C < 0
          ? -Math.PI / 2
          : Math.PI / 2
        : Math.atan2(y, x)
  return [Math.sin(angle / 2), Math.cos(angle / 2)]
}

/**
 * Solves the closure for the host's half angle. If the opening is out of range, it is solved at the
 * nearest opening within, and `reached` is false.
 */
function close(
  bar: FourBar,
  hostS: number,
  hostC: number,
  range: readonly [number, number],
  to: Closure,
): void {
  const opening = 2 * DEGREES * Math.atan2(hostS, hostC)
  // Rounding may bend a shut host the other way by a whisker, or give -0: it is shut.
  let S = opening <= 0 ? 0 : hostS
  let C = opening <= 0 ? 1 : hostC
  to.reached = true
  // A whisker of rounding at the stop itself does not count as out of range.
  if (opening < range[0] - 1e-9 || opening > range[1] + 1e-9) {
    to.reached = false
    const w = (opening < range[0] ? range[0] : range[1]) * RADIANS * 0.5
    S = Math.sin(w)
    C = Math.cos(w)
  }
  to.hostSine = S
  to.hostCosine = C
  if (bar.outside) C = -C
  const weight = weightOf(bar)
  const hd = half(bar, bar.db)
  const hg = Math.sqrt(hd * hd + weight * S * S)
  const spherical = bar.form === 'spherical'
  // cos^2(g/2) = C^2 cos^2(db/2) + S^2 cos^2((b1 + b2)/2): with it g keeps its digits near 180 degrees.
  const g = spherical
    ? 2 * Math.atan2(hg, Math.hypot(C * Math.cos(bar.db / 2), S * Math.cos((bar.b1 + bar.b2) / 2)))
    : 2 * hg
  // (g - |db|) without cancellation: h(g) - h(db) = weight S^2 / (h(g) + h(db)).
  const rise = hg + Math.abs(hd) === 0 ? 0 : (weight * S * S) / (hg + Math.abs(hd))
  const excess = spherical ? 4 * Math.asin(rise / (2 * Math.cos((g + Math.abs(bar.db)) / 4))) : 2 * rise
  // s - a1, s - a2, s - g, s of the triangle of facets and diagonal; differences that vanish at shut
  // are |db| +- da (0 if it shuts flat) plus the excess.
  // dUp = db + da, dDown = db - da: with db's sign they give |db| + da and |db| - da exactly.
  const plus = bar.db >= 0 ? bar.dUp : -bar.dDown
  const minus = bar.db >= 0 ? bar.dDown : -bar.dUp
  const s1 = plain(bar, (excess + minus) / 2) // s - a1
  const s2 = plain(bar, (excess + plus) / 2) // s - a2
  let s0 = plain(bar, (bar.a1 + bar.a2 + g) / 2) // s
  let s3 = plain(bar, (bar.a1 + bar.a2 - g) / 2) // s - g
  // Where one of the two vanishes exactly at flat, sin(s - g) sin(s) = weight C^2 gives its digits.
  const over = spherical && bar.full ? bar.a1 + bar.a2 - Math.PI : -1
  const even = Math.abs(over) < 1e-12
  if (bar.full) {
    if (even) s0 = s3 = Math.sqrt(weight) * Math.abs(C)
    else if (over < 0) s3 = (weight * C * C) / s0
    else s0 = (weight * C * C) / s3
  }
  halfFrom(s1 * s2, s0 * s3)
  to.ridgeSine = ratio.sine
  to.ridgeCosine = ratio.cosine
  joint(bar, bar.b1, bar.b2, bar.db, S, C, even ? s1 : s1 * s3, even ? s2 : s0 * s2, to, 'right')
  joint(bar, bar.b2, bar.b1, -bar.db, S, C, even ? s2 : s2 * s3, even ? s1 : s0 * s1, to, 'left')
}

function joint(
  bar: FourBar,
  own: number,
  other: number,
  diff: number,
  S: number,
  C: number,
  p: number,
  q: number,
  to: Closure,
  side: 'left' | 'right',
): void {
  const [us, uc] = innerHalf(bar, own, other, diff, S, C)
  halfFrom(p, q)
  const vs = bar.branch * ratio.sine
  const vc = ratio.cosine
  const sine = us * vc + uc * vs
  const cosine = uc * vc - us * vs
  if (side === 'right') {
    to.rightSine = sine
    to.rightCosine = cosine
  } else {
    to.leftSine = sine
    to.leftCosine = cosine
  }
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
  close(bar, host[12] as number, host[13] as number, range, solved)
  const S = solved.hostSine
  const C = solved.hostCosine
  const spherical = bar.form === 'spherical'
  const outer = shutsOuter(bar)
  const o = bar.outside ? -1 : 1
  const ridge = out[0] as Frame
  ridge[12] = solved.ridgeSine
  ridge[13] = solved.ridgeCosine
  for (let side = 1; side >= -1; side -= 2) {
    const joint = out[side > 0 ? 2 : 1] as Frame
    const b = side > 0 ? bar.b1 : bar.b2
    const a = side > 0 ? bar.a1 : bar.a2
    const s = side > 0 ? solved.rightSine : solved.leftSine
    const c = side > 0 ? solved.rightCosine : solved.leftCosine
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
      ridge[9 + k] = solved.ridgeCosine * toJoint + solved.ridgeSine * k1
      ridge[3 + k] = solved.ridgeSine * toJoint - solved.ridgeCosine * k1
    }
  }
  return solved.reached
}
