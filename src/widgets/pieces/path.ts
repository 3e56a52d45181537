/** An outline from the path data of an SVG. Only numbers are read: nothing of it is ever put on the page. */
import { svgPathProperties } from 'svg-path-properties'
import * as says from '../../../content/words/pieces.ts'
import type { Flat } from '../../paper/index.ts'
import { areaOf, simplified } from './outline.ts'

/** More than this of path data, or of a file, is not read. */
const LONGEST_PATH = 20_000

const LONGEST_FILE = 2_000_000

/** Numbers in it at most: what is longer is no outline for scissors. */
const MOST_NUMBERS = 2400

/** No number of it may be larger. */
const LARGEST = 100_000

/** An end and a start nearer than this are one, as a share. */
const JOINED = 1e-6

/** Points on each bend. */
const BENDS = 12

/** Of the outline's longest way across: so far its corners may lie from the path. */
const NEAR = 1 / 400

/** Nothing but commands and numbers. */
const DATA = /^[\sMmLlHhVvCcSsQqTtAaZz0-9.,+\-eE]+$/

/** An outline right and up of its middle, 1 across at its longest, or why there is none. */
export type PathRead =
  | { readonly done: true; readonly outline: readonly Flat[] }
  | { readonly done: false; readonly sentence: string }

const not = (sentence: string): PathRead => ({ done: false, sentence })

/** The path data in a text that may be a whole SVG: that of its longest path. */
export function dataIn(text: string): string | null {
  if (!text.includes('<')) return text.trim()
  const found = [
    ...text.slice(0, LONGEST_FILE).matchAll(/<path\b[^<>]{0,40000}?\sd\s*=\s*(?:"([^"<>]*)"|'([^'<>]*)')/gi),
  ]
  const paths = found.map(([, one, two]) => (one ?? two ?? '').trim())
  return paths.toSorted((one, two) => two.length - one.length)[0] ?? null
}

/** The rings of a path, right and up, each begun by a move; empty where a number is none. */
function ringsOf(data: string): readonly (readonly Flat[])[] {
  const rings: Flat[][] = []
  let [end, fresh] = [[Number.NaN, Number.NaN], true]
  for (const part of new svgPathProperties(data).getParts()) {
    const kind = part.details[0]
    const { start, end: stop } = part
    if (
      fresh ||
      Math.hypot(start.x - (end[0] as number), start.y - (end[1] as number)) >
        JOINED * (1 + Math.abs(start.x) + Math.abs(start.y))
    )
      rings.push([[start.x, -start.y]])
    const ring = rings.at(-1) as Flat[]
    const steps = kind === 'C' || kind === 'Q' || kind === 'A' ? BENDS : 1
    for (let k = 1; k < steps; k++) {
      const { x, y } = part.getPointAtLength((part.length * k) / steps)
      ring.push([x, -y])
    }
    if (kind !== 'Z') ring.push([stop.x, -stop.y])
    end = [stop.x, stop.y]
    fresh = kind === 'Z'
  }
  return rings.flat(2).every(Number.isFinite) ? rings : []
}

/**
 * Reads pasted text: path data, or an SVG with a path in it. The largest ring of the path is the outline; what is inside
 * it is not cut out. Commands as in the SVG standard (SVG 2, chapter 9).
 */
export function readPath(text: string): PathRead {
  if (text.length > LONGEST_FILE) return not(says.textTooLong)
  const data = dataIn(text)
  if (data === null || data === '') return not(says.noPath)
  if (data.length > LONGEST_PATH) return not(says.pathTooLong(data.length, LONGEST_PATH))
  if (!DATA.test(data) || !/^[Mm]/.test(data)) return not(says.notPath)
  const numbers = data.match(/[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?/g) ?? []
  if (numbers.length > MOST_NUMBERS) return not(says.tooManyNumbers(numbers.length, MOST_NUMBERS))
  if (numbers.some((number) => Math.abs(Number(number)) > LARGEST)) return not(says.numberTooLarge(LARGEST))
  let rings: readonly (readonly Flat[])[]
  try {
    rings = ringsOf(data)
  } catch {
    return not(says.pathUnread)
  }
  const ring = rings.toSorted((one, two) => Math.abs(areaOf(two)) - Math.abs(areaOf(one)))[0] ?? []
  const [xs, ys] = [ring.map(([x]) => x), ring.map(([, y]) => y)]
  const box = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)] as const
  const size = Math.max(box[1] - box[0], box[3] - box[2])
  if (ring.length < 3 || !Number.isFinite(size) || !(size > 0) || Math.abs(areaOf(ring)) < 1e-6 * size * size)
    return not(says.enclosesNothing)
  const middle = [(box[0] + box[1]) / 2, (box[2] + box[3]) / 2] as const
  const unit = ring.map(([x, y]): Flat => [(x - middle[0]) / size, (y - middle[1]) / size])
  return { done: true, outline: simplified(unit, NEAR, true) }
}
