import { highest, measure, openingStops, poseAt } from '../paper/index.ts'
import type { Command } from './command.ts'
import { Refusal } from './refusal.ts'

/** Where every panel and crease is at one opening. */
export const pose: Command = {
  name: 'pose',
  usage: '--opening DEGREES [--json]',
  help: 'Say how high each tip stands at an opening from 0 (shut) to 180 (flat).',
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
    console.log(`${design.title}, open at ${Number(at.toFixed(1))}°`)
    for (const [id, tip] of Object.entries(tips)) {
      const top = highest(design, id)
      console.log(
        `${id}: ${rise(tip.rise)}, stand-off ${mm(tip.standOff)}, reach ${mm(tip.reach)} ` +
          `(highest ${top.rise < -0.05 ? rise(top.rise) : mm(top.rise)}, at ${top.opening.toFixed(1)}°)`,
      )
    }
    for (const { between, gape } of gapes) console.log(`${between.join(' and ')}: gape ${mm(gape)}`)
    console.log(`margin when shut: ${mm(margin)}`)
    const { stopped } = poseAt(design, opening)
    if (stopped.length > 0) console.log(`cannot open this far: ${stopped.join(', ')}`)
    return 0
  },
}

function openingOf(text: string | boolean | undefined): number {
  const opening = typeof text === 'string' && text.trim() !== '' ? Number(text) : Number.NaN
  if (opening >= 0 && opening <= 180) return opening
  const given = text === undefined ? ', and it was left out' : `, not ${text}`
  throw new Refusal(`--opening must be a number of degrees from 0 (shut) to 180 (flat)${given}.`)
}

/** No ruler reads less than nothing: what lies behind its page is told so. */
const rise = (length: number): string =>
  length < -0.05 ? `${mm(-length)} behind the page` : `rise ${mm(Math.max(0, length))}`

const mm = (length: number): string => `${length.toFixed(1)} mm`
