import type { Design } from '../design/design.ts'
import { nameOf } from '../design/name.ts'
import type { Poser } from '../motion/pose.ts'
import { compile } from '../motion/pose.ts'
import { broughtIn, openingRange } from '../motion/range.ts'
import type { Frame } from '../plane/frame.ts'
import type { Vec3 } from '../plane/vector.ts'
import * as says from '../words/measure.ts'
import { riseOf, tipAt } from './measure.ts'

/** Which way a mechanism's tip goes while the card opens, seen from the crease it sits on. */
export interface Way {
  /** Further off the page beneath than the place on the crease where its ridge begins, mm; below 0: nearer to it. */
  readonly up: number
  /** Along its host crease, away from that crease's start, mm; below 0: back towards it. */
  readonly outward: number
  /** How far off the page beneath it the tip is then, mm. */
  readonly off: number
  /** The larger of the two in a word. */
  readonly word: 'up' | 'down' | 'outward' | 'back' | 'nowhere'
  /** One plain sentence. */
  readonly sentence: string
}

/** Less than this is no way to speak of, mm. */
const LEAST = 0.5

const mm = (length: number): string => `${length.toFixed(1)} mm`

/** The tip as seen from its host crease: above the place where its own ridge begins, and along the crease. */
function seen(poser: Poser, index: number, opening: number): { up: number; along: number; off: number } {
  poser(opening)
  const { host, tipCrease } = poser.model.builds[index] as Poser['model']['builds'][number]
  const tip = tipAt(poser, index)
  const [own, crease] = [poser.frames[tipCrease], poser.frames[host]] as [Frame, Frame]
  const alongOf = (p: ArrayLike<number>) =>
    [0, 1, 2].reduce(
      (sum, k) => sum + ((p[k] as number) - (crease[k] as number)) * (crease[6 + k] as number),
      0,
    )
  const from = alongOf(own)
  const foot = [0, 1, 2].map((k) => (crease[k] as number) + from * (crease[6 + k] as number)) as Vec3
  const off = riseOf(tip, opening)
  return { up: off - riseOf(foot, opening), along: alongOf(tip), off }
}

/**
 * Which way a mechanism goes as the card opens from shut to an opening (degrees), both brought into the
 * card's range: up off the page or down to it, outward along its host crease or back, from the swing of its
 * tip. Throws a RangeError for an unknown mechanism.
 */
export function wayOf(design: Design, id: string, asked = 90): Way {
  const index = design.mechanisms.findIndex((m) => m.id === id)
  if (index < 0) throw new RangeError(`there is no mechanism ${id}`)
  const poser = compile(design)
  const opening = broughtIn(design, asked)
  const shut = seen(poser, index, openingRange(design)[0])
  const open = seen(poser, index, opening)
  const up = open.up - shut.up
  const outward = open.along - shut.along
  const { off } = open
  const name = nameOf(id)
  const [high, long] = [Math.abs(up), Math.abs(outward)]
  if (Math.max(high, long) < LEAST) return { up, outward, off, word: 'nowhere', sentence: says.stays(name) }
  const vertical = up > 0 ? 'up' : 'down'
  const lengthwise = outward > 0 ? 'outward' : 'back'
  const ways = [
    { far: high, told: up > 0 ? says.up(mm(high)) : says.down(mm(high)) },
    { far: long, told: outward > 0 ? says.outward(mm(long)) : says.back(mm(long)) },
  ].filter(({ far }) => far >= LEAST)
  if (long > high) ways.reverse()
  const sentence = says.goes(
    name,
    `${Number(opening.toFixed(1))}°`,
    ways.map(({ told }) => told),
  )
  // Down is seen from its own fold, which may stand high itself.
  const stillOff = up <= -LEAST && off >= LEAST
  return {
    up,
    outward,
    off,
    word: high >= long ? vertical : lengthwise,
    sentence: stillOff ? says.tipStillOff(sentence, mm(off)) : sentence,
  }
}
