import * as says from '../../content/words/command/pose.ts'
import { highest, measure, openingStops, poseAt } from '../paper/index.ts'
import type { Command } from './command.ts'
import { Refusal } from './refusal.ts'

/** Where every panel and crease is at one opening. */
export const pose: Command = {
  name: 'pose',
  usage: says.usage,
  help: says.help,
  options: { opening: { type: 'string' }, json: { type: 'boolean' } },
  run(design, options) {
    const opening = openingOf(options.opening)
    if (options.json) {
      console.log(JSON.stringify(poseAt(design, opening), null, 2))
      return 0
    }
    const { opening: at, tips, gapes, margin } = measure(design, opening)
    const { least, most } = openingStops(design)
    const stop = at < opening ? most : at > opening ? least : null
    if (stop) console.log(stop.sentence)
    console.log(says.openAt(design.title, `${Number(at.toFixed(1))}°`))
    for (const [id, tip] of Object.entries(tips)) {
      const top = highest(design, id)
      const [standOff, reach] = [mm(tip.standOff), mm(tip.reach)]
      const highestRise = top.rise < -0.05 ? rise(top.rise) : mm(top.rise)
      console.log(says.tip(id, rise(tip.rise), standOff, reach, highestRise, `${top.opening.toFixed(1)}°`))
    }
    for (const { between, gape } of gapes) console.log(says.gape(between, mm(gape)))
    console.log(says.margin(mm(margin)))
    const { stopped } = poseAt(design, opening)
    if (stopped.length > 0) console.log(says.cannotOpen(stopped))
    return 0
  },
}

function openingOf(text: string | boolean | undefined): number {
  const opening = typeof text === 'string' && text.trim() !== '' ? Number(text) : Number.NaN
  if (opening >= 0 && opening <= 180) return opening
  throw new Refusal(says.notOpening(text))
}

/** No ruler reads less than nothing: what lies behind its page is told so. */
const rise = (length: number): string =>
  length < -0.05 ? says.behindPage(mm(-length)) : says.rise(mm(Math.max(0, length)))

const mm = (length: number): string => `${length.toFixed(1)} mm`
