// Published spherical triangles, with where each was printed and how exact it is. See README.md.

/** `found`: read in a published copy. `memory`: recalled. `computed`: worked out again by another method. */
export type Mark = 'found' | 'memory' | 'computed'

export interface Triangle {
  readonly name: string
  readonly source: string
  /** How the numbers came here. */
  readonly mark: Mark
  /** Sides a, b, c and the opposite angles A, B, C, degrees; those that were not printed are left out. */
  readonly a: number
  readonly b: number
  readonly c: number
  readonly A: number
  readonly B?: number
  readonly C?: number
  /** How far the printed numbers may lie from the true ones, degrees. */
  readonly within: number
}

/** Degrees, minutes and seconds as degrees. */
export const dms = (degrees: number, minutes = 0, seconds = 0): number =>
  degrees + minutes / 60 + seconds / 3600

/** Hours, minutes and seconds of right ascension as degrees. */
const hms = (hours: number, minutes: number, seconds: number): number => 15 * dms(hours, minutes, seconds)

/** Printed to the second of arc, worked with log tables that may be a second or two off. */
const SECOND = 0.001

const OLNEY = 'Olney, Elements of Trigonometry, Plane and Spherical, pp. 81-82'

const BOOK = 'a 19th-century textbook, Google Books L9sGAAAAQAAJ, title not seen'

const STARS = 'College of St Benedict and St John’s University, Physics 364, class solution 1'

const TODHUNTER = 'Todhunter, Spherical Trigonometry, chapter on numerical solution'

const dubhe = { ra: hms(11, 3, 43.67), dec: dms(61, 45, 3.72) }

const merak = { ra: hms(11, 1, 50.48), dec: dms(56, 22, 56.73) }

const polaris = { ra: hms(2, 31, 49.09), dec: dms(89, 15, 50.79) }

/** Two stars and the celestial pole: A at the pole, the printed separation opposite it. */
const fromPole = (
  p: { ra: number; dec: number },
  q: { ra: number; dec: number },
  separation: number,
): Pick<Triangle, 'a' | 'b' | 'c' | 'A'> => ({
  a: separation,
  b: 90 - p.dec,
  c: 90 - q.dec,
  A: Math.abs(p.ra - q.ra),
})

export const triangles: readonly Triangle[] = [
  {
    name: 'right-angled, an obtuse side',
    source: OLNEY,
    mark: 'found',
    a: dms(105, 34),
    b: 71.909271, // not printed: computed from the rest
    c: dms(149, 47, 37),
    A: 90,
    B: dms(80, 40),
    within: SECOND,
  },
  {
    name: 'right-angled, one leg over 90',
    source: `${BOOK}, exercise 5`,
    mark: 'found',
    // B of the book is A here: the right angle lies between the legs.
    a: dms(147, 16, 51),
    b: dms(151, 23, 9),
    c: dms(16, 35, 14),
    A: 90,
    B: dms(117, 37, 21),
    C: dms(31, 52, 50),
    within: SECOND,
  },
  {
    name: 'right-angled, hypotenuse and leg given',
    source: `${BOOK}, exercise 7`,
    mark: 'found',
    a: dms(118, 32, 12),
    b: dms(47, 26, 35),
    c: dms(134, 56, 20),
    A: 90,
    B: dms(56, 58, 44),
    C: dms(126, 19, 2),
    within: SECOND,
  },
  {
    name: 'a side of exactly 90',
    source: 'surveying lecture sheet ‘Solving quadrantal spherical triangle’, docobook.com',
    mark: 'found',
    a: dms(115, 25),
    b: dms(63, 24, 59),
    c: 90,
    A: dms(118, 40, 52),
    B: dms(60, 18),
    C: dms(76, 14, 38),
    within: SECOND,
  },
  {
    name: 'Dubhe and Merak',
    source: STARS,
    mark: 'found',
    ...fromPole(dubhe, merak, 5.374041950116754),
    within: 1e-11,
  },
  {
    name: 'Dubhe and Polaris',
    source: STARS,
    mark: 'found',
    ...fromPole(dubhe, polaris, 28.70717600821549),
    within: 1e-11,
  },
  {
    name: 'Merak and Polaris',
    source: STARS,
    mark: 'found',
    ...fromPole(merak, polaris, 34.07002986367971),
    within: 1e-11,
  },
  {
    name: 'Dubhe, Merak and Polaris: an angle all but straight',
    source: STARS,
    mark: 'found',
    a: 34.07002986367971,
    b: 5.374041950116754,
    c: 28.70717600821549,
    A: 176.0032638800045,
    within: 1e-11,
  },
  {
    name: 'three sides given',
    source: TODHUNTER,
    mark: 'memory',
    a: dms(70, 14, 20),
    b: dms(49, 24, 10),
    c: dms(38, 46, 10),
    A: dms(110, 51, 16),
    B: dms(48, 56, 4),
    C: dms(38, 26, 48),
    within: SECOND,
  },
  {
    name: 'two sides and the angle between them given',
    source: TODHUNTER,
    mark: 'memory',
    a: dms(96, 20, 44),
    b: dms(68, 20, 25),
    c: dms(52, 18, 15),
    A: dms(117, 12, 20),
    B: dms(56, 16, 15),
    C: dms(45, 4, 41),
    within: SECOND,
  },
  {
    name: 'right-angled, two legs given',
    source: TODHUNTER,
    mark: 'memory',
    a: dms(66, 32, 6),
    b: dms(37, 48, 12),
    c: dms(59, 44, 16),
    A: 90,
    B: dms(41, 55, 45),
    C: dms(70, 19, 15),
    within: SECOND,
  },
  {
    name: 'Los Angeles to New York by air',
    source: 'E. Williams, Aviation Formulary V1.46, worked examples',
    mark: 'memory',
    a: (0.623585 * 180) / Math.PI,
    b: 90 - dms(33, 57),
    c: 90 - dms(40, 38),
    A: dms(118, 24) - dms(73, 47),
    within: 0.00005,
  },
  {
    name: 'Arcturus and Spica',
    source: 'J. Meeus, Astronomical Algorithms, 2nd ed. 1998, ch. 17',
    mark: 'memory',
    a: 32.793,
    b: 90 - 19.1825,
    c: 90 + 11.1614,
    A: 213.9154 - 201.2983,
    within: 0.00006,
  },
  {
    name: 'round numbers, 60 and 30 round 45',
    source: 'problem of math-principles.com, May 2013 (its answers are pictures)',
    mark: 'computed',
    a: 42.33678,
    b: 60,
    c: 30,
    A: 45,
    within: 5e-7,
  },
  {
    name: 'round numbers, 45 and 30 round 120',
    source: 'problem of math-principles.com, May 2013 (its answers are pictures)',
    mark: 'computed',
    a: 64.176792,
    b: 45,
    c: 30,
    A: 120,
    within: 5e-7,
  },
]

/** Angles between faces of the regular solids, from the corners of their faces: exact. */
export const solids = [
  { name: 'tetrahedron', sides: [60, 60, 60], angle: Math.acos(1 / 3), printed: 70.528779366 },
  { name: 'cube', sides: [90, 90, 90], angle: Math.PI / 2, printed: 90 },
  { name: 'octahedron', sides: [90, 60, 60], angle: Math.acos(-1 / 3), printed: 109.471220634 },
  {
    name: 'dodecahedron',
    sides: [108, 108, 108],
    angle: Math.acos(-1 / Math.sqrt(5)),
    printed: 116.565051177,
  },
  { name: 'icosahedron', sides: [108, 60, 60], angle: Math.acos(-Math.sqrt(5) / 3), printed: 138.189685104 },
] as const
