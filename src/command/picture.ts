import { readFileSync } from 'node:fs'
import { extname } from 'node:path'
import { notFile } from '../../content/words/command/options.ts'
import * as says from '../../content/words/command/picture.ts'
import { toSvg } from '../drawing/pen/svg.ts'
import type { Stand } from '../drawing/view/camera.ts'
import { view } from '../drawing/view/view.ts'
import type { Command, Options } from './command.ts'
import { Refusal } from './refusal.ts'
import { writeOut } from './write-out.ts'

const CSS = new URL('../drawing/pen/marks.css', import.meta.url)

/** Numbers the command takes, with their ranges and what they are when left out. */
const numbers = {
  opening: { min: 0, max: 180, usual: 100, unit: says.degrees },
  turn: { min: -180, max: 180, usual: -20, unit: says.degrees },
  tilt: { min: 0, max: 90, usual: 34, unit: says.degrees },
  far: { min: 1, max: 10, usual: 1.6, unit: says.cardDiagonals },
  width: { min: 100, max: 4000, usual: 960, unit: says.pixels },
  height: { min: 100, max: 4000, usual: 600, unit: says.pixels },
} as const

/** How far round the opening the framing has room, degrees. */
const ROOM = 4

/** The standing card as a picture that stands alone. */
export const picture: Command = {
  name: 'picture',
  usage: says.usage,
  help: says.help,
  options: {
    out: { type: 'string' },
    upright: { type: 'boolean' },
    ...Object.fromEntries(Object.keys(numbers).map((name) => [name, { type: 'string' as const }])),
  },
  run(design, options, place) {
    const { out } = options
    if (typeof out !== 'string' || extname(out).toLowerCase() !== '.svg')
      throw new Refusal(notFile('out', ['.svg'], out))
    const [opening, turn, tilt, far, width, height] = (Object.keys(numbers) as (keyof typeof numbers)[]).map(
      (name) => numberOf(options, name),
    ) as [number, number, number, number, number, number]
    const stand: Stand = options.upright ? 'edge' : 'gutter'
    const frame = [Math.max(0, opening - ROOM), Math.min(180, opening + ROOM)]
    const drawing = view(design, opening, { turn, tilt, far }, { width, height }, { stand, frame })
    const css = readFileSync(CSS, 'utf8').replace(/\/\*[\s\S]*?\*\//g, '')
    writeOut(out, place(out), toSvg(drawing, { digits: 1, css }))
    console.log(`${out}: ${drawing.says}`)
    return 0
  },
}

function numberOf(options: Options, name: keyof typeof numbers): number {
  const { min, max, usual, unit } = numbers[name]
  const text = options[name]
  if (text === undefined) return usual
  const value = typeof text === 'string' && text.trim() !== '' ? Number(text) : Number.NaN
  if (value >= min && value <= max) return value
  throw new Refusal(says.notNumberIn(name, min, max, unit, text))
}
