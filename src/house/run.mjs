// Runs TypeScript files, unbuilt, with the project's own Node: one file with its arguments, or a folder's files in turn.
// node src/house/run.mjs src/command/dummy.ts --help
// node src/house/run.mjs tests/bench/
import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { install, ROOT, requireNode, run } from './steps.mjs'

requireNode()
const [what = '', ...args] = process.argv.slice(2)
if (!(await install((line) => console.error(line)))) process.exit(1)

const files = what.endsWith('/') ? filesOf(what) : [what]
if (files.length === 0) console.error(`There is no .ts file in ${what}`)
let worst = files.length === 0 ? 1 : 0
for (const file of files) {
  const { code } = await run('node', [file, ...args])
  worst = Math.max(worst, code)
}
process.exit(worst)

/** @param {string} folder */
function filesOf(folder) {
  return readdirSync(join(ROOT, folder))
    .filter((name) => name.endsWith('.ts'))
    .sort()
    .map((name) => join(folder, name))
}
