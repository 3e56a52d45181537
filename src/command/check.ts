import * as says from '../../content/words/command/check.ts'
import { check as checksOf } from '../paper/index.ts'
import type { Command } from './command.ts'

/** Ends with this code when the file is sound and the design is not. */
const UNSOUND = 2

/** What works and what goes wrong, with the nearest repair. */
export const check: Command = {
  name: 'check',
  usage: says.usage,
  help: says.help,
  options: { json: { type: 'boolean' } },
  run(design, options) {
    const checks = checksOf(design)
    const ok = checks.every((one) => one.ok)
    if (options.json) {
      console.log(JSON.stringify({ title: design.title, ok, checks }, null, 2))
    } else {
      for (const one of checks) {
        console.log((one.ok ? says.holds : says.fails)(one.name, one.sentence))
        if (one.repair) {
          const { id, label, from, to, unit } = one.repair
          console.log(says.repair(id, label, round(from), round(to), unit))
        }
      }
    }
    return ok ? 0 : UNSOUND
  },
}

/** As many digits as a ruler could ever need, none for show. */
const round = (value: number): string => String(Number(value.toFixed(2)))
