// npm test: every check there is, and one honest line at the end.
import { mkdirSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { findBrowser } from './browser.mjs'
import { browserCount, stageCount, unitCount } from './count.mjs'
import { build, install, ROOT, requireNode, run } from './steps.mjs'

const REPORTS = join(ROOT, '.cache', 'reports')
const say = (/** @type {string} */ line) => console.log(line)

requireNode()
if (!(await install(say))) end([stageCount('install', false)])
const browser = await findBrowser(say)
rmSync(REPORTS, { recursive: true, force: true })
mkdirSync(REPORTS, { recursive: true })

// Two cores: pairs that do not write to the same place go side by side; the browser, whose tests
// take time into account, has the machine to itself.
const [lint, built] = await Promise.all([stage('lint', ['run', '-s', 'lint']), builds()])
const [types, units] = await Promise.all([
  stage('types', ['run', '-s', 'check']),
  stage('unit tests', ['run', '-s', 'test:unit']),
])
const counts = [
  stageCount('lint', lint),
  stageCount('build', built),
  stageCount('types', types),
  unitCount(join(REPORTS, 'unit.json'), units),
]
if (!built) {
  say('\nThe browser tests need the built site, and there is none.')
  counts.push(stageCount('browser tests', false))
} else if (!browser) {
  say('\nNo browser was found and none could be installed: install Chromium and try again.')
  counts.push(stageCount('browser tests', false))
} else {
  say('\n— browser tests')
  const { code } = await run('npm', ['run', '-s', 'test:browser'])
  counts.push(browserCount(join(REPORTS, 'browser.json'), code === 0))
}
end(counts)

/**
 * Runs an npm script and shows its output when it is done, so that two at once do not mix.
 * @param {string} name
 * @param {readonly string[]} args
 */
async function stage(name, args) {
  const { code, output } = await run('npm', args, { calm: true })
  say(`\n— ${name}${code === 0 ? '' : ` failed (code ${code})`}\n${output.trim()}`)
  return code === 0
}

function builds() {
  return build((line) => say(`\n— build\n${line}`))
}

/**
 * Says what every stage counted, then the sum alone on the last line.
 * @param {readonly import('./count.mjs').Count[]} counts
 * @returns {never}
 */
function end(counts) {
  say('')
  for (const { name, passed, failed, skipped, retried = [] } of counts) {
    say(`${name}: ${passed} passed, ${failed} failed${skipped ? `, ${skipped} skipped` : ''}.`)
    for (const title of retried) say(`  passed only at the second try: ${title}`)
  }
  const passed = counts.reduce((sum, count) => sum + count.passed, 0)
  const failed = counts.reduce((sum, count) => sum + count.failed, 0)
  say(`${passed} passed, ${failed} failed`)
  process.exit(failed === 0 && passed > 0 ? 0 : 1)
}
