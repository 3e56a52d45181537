/** What must be on the tables: paper by weight, tape and glue by the card's own joints, tools. */
import type { Design } from '../paper/index.ts'
import { jointsOf } from '../paper/index.ts'

/** A pound, g: exact since the international yard and pound agreement of 1959. */
const POUND = 453.59237

/** A square inch, m²: exact. */
const SQUARE_INCH = 0.0254 ** 2

/** The sheet by whose weight a grade of US paper is named, inches, and how many of them weigh that. */
export const BASIS = {
  bond: [17, 22],
  text: [25, 38],
  cover: [20, 26],
  index: [25.5, 30.5],
  tag: [24, 36],
  bristol: [22.5, 28.5],
} as const

export type Grade = keyof typeof BASIS

const REAM = 500

/** What one pound of a grade is, g/m². */
export function perPound(grade: Grade): number {
  const [wide, high] = BASIS[grade]
  return POUND / (REAM * wide * high * SQUARE_INCH)
}

/** US weight in g/m². */
export const grammage = (pounds: number, grade: Grade): number => pounds * perPound(grade)

/** A paper as it is bought: in g/m², and the nearest usual one in the US. */
export interface Stock {
  readonly grams: number
  readonly us: { readonly pounds: number; readonly grade: Grade }
}

/** Weights that US shops have. Common practice, no source. */
export const SHELF: readonly Stock['us'][] = [
  { pounds: 20, grade: 'bond' },
  { pounds: 24, grade: 'bond' },
  { pounds: 90, grade: 'index' },
  { pounds: 110, grade: 'index' },
  { pounds: 140, grade: 'index' },
]

/** The stock of so many g/m² with the US paper nearest to it. */
export function stockOf(grams: number): Stock {
  const off = ({ pounds, grade }: Stock['us']): number => Math.abs(grammage(pounds, grade) - grams)
  const us = SHELF.reduce((best, one) => (off(one) < off(best) ? one : best))
  return { grams, us }
}

/** Plain paper of any copier. */
export const COPY = stockOf(80)

/** Card by its thickness, mm: the lightest usual one that is as thick. Thicknesses from trade charts; makers vary. */
export const BY_THICKNESS: readonly { readonly upTo: number; readonly grams: number }[] = [
  { upTo: 0.12, grams: 80 },
  { upTo: 0.205, grams: 160 },
  { upTo: 0.26, grams: 200 },
  { upTo: Number.POSITIVE_INFINITY, grams: 250 },
]

/** The card that a design is meant for. */
export const cardFor = ({ card }: Pick<Design, 'card'>): Stock =>
  stockOf(BY_THICKNESS.find(({ upTo }) => card.caliper <= upTo)?.grams ?? 200)

/** Mass of sheets, g: ISO 536, mass by area. */
export const massOf = (
  sheets: number,
  { width, height }: { width: number; height: number },
  grams: number,
): number => (sheets * width * height * grams) / 1e6

type Spot = readonly [number, number]

const long = (points: readonly Spot[]): number =>
  points.slice(1).reduce((sum, [x, y], k) => {
    const [u, v] = points[k] as Spot
    return sum + Math.hypot(x - u, y - v)
  }, 0)

const areaOf = (points: readonly Spot[]): number =>
  Math.abs(
    points.reduce((sum, [x, y], k) => {
      const [u, v] = points[(k + 1) % points.length] as Spot
      return sum + x * v - u * y
    }, 0),
  ) / 2

/** What one card is stuck with. */
export interface Sticking {
  /** Joints that are taped, and how long they are together, mm. */
  readonly taped: number
  readonly tape: number
  /** Places that are glued, and how large they are together, mm². */
  readonly glued: number
  readonly glue: number
}

/** Tape and glue of one card, from its joints. */
export function stickingOf(design: Design): Sticking {
  let [taped, tape, glued, glue] = [0, 0, 0, 0]
  for (const { isTaped, own } of jointsOf(design)) {
    if (isTaped) {
      taped += 1
      tape += long(own.points)
    } else {
      glued += 1
      glue += areaOf(own.points)
    }
  }
  return { taped, tape, glued, glue }
}

/** More tape than joints are long: for overlaps and mistakes. Common practice, no source. */
const SPARE = 1.25

/** A roll of school tape, mm. Common practice, no source. */
const ROLL = 10_000

/** So many pupils share a glue stick. Common practice, no source. */
const TO_A_STICK = 3

/** Of so many, one is left-handed. Common practice, no source. */
const LEFT_HANDED = 10

/** One line of the list. */
export interface Item {
  readonly count: string
  readonly what: string
}

export interface Shopping {
  /** Of the class, whole numbers. */
  readonly cardSheets: number
  readonly paperSheets: number
  readonly card: Stock
  readonly sticking: Sticking
  /** Tape for all cards with some to spare, m, and in rolls of 10 m. */
  readonly tapeMetres: number
  readonly rolls: number
  readonly glueSticks: number
  readonly scissors: number
  readonly leftScissors: number
  readonly rulers: number
  readonly pens: number
  readonly corners: number
}

/** What a class needs. `cardSheets` and `paperSheets` are counted from the pages. */
export function shoppingFor(
  design: Design,
  { pupils, groups }: { readonly pupils: number; readonly groups: number },
  { cardSheets, paperSheets }: { readonly cardSheets: number; readonly paperSheets: number },
): Shopping {
  const sticking = stickingOf(design)
  const tape = sticking.tape * pupils * SPARE
  const leftScissors = Math.ceil(pupils / LEFT_HANDED)
  return {
    ...{ cardSheets, paperSheets, sticking, leftScissors },
    card: cardFor(design),
    tapeMetres: Math.ceil(tape / 100) / 10,
    rolls: Math.ceil(tape / ROLL),
    glueSticks: sticking.glued > 0 ? Math.ceil(pupils / TO_A_STICK) : 0,
    scissors: Math.max(0, pupils - leftScissors),
    rulers: pupils,
    pens: pupils,
    corners: groups,
  }
}
