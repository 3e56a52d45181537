import { extname } from 'node:path'
import { stepsText } from '../booklet/index.ts'
import { visibleText } from '../paper/index.ts'
import type { Command } from './command.ts'
import { Refusal } from './refusal.ts'
import { writeOut } from './write-out.ts'

/** How a card is made, in words. */
export const steps: Command = {
  name: 'steps',
  usage: '[--out FILE.txt]',
  help: 'Tell how the card is made, step by step: what to cut, fold, push through and glue, with cautions and with heights to check by ruler. To a file, or here.',
  options: { out: { type: 'string' } },
  run(design, { out }, place) {
    const text = stepsText(design)
    if (out === undefined) {
      console.log(text.trimEnd())
      return 0
    }
    if (typeof out !== 'string' || extname(out).toLowerCase() !== '.txt')
      throw new Refusal(`--out must name a file that ends in .txt, not ${out}.`)
    writeOut(out, place(out), text)
    console.log(`${visibleText(out)}: the steps in words.`)
    return 0
  },
}
