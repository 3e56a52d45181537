// The steps that every command of the house shares. Plain JavaScript, because the outer Node may be 20.
import { spawn } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { delimiter, dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

export const ROOT = fileURLToPath(new URL('../..', import.meta.url))

/** What a second install or build would change nothing for. */
const INSTALL_INPUTS = ['package.json', 'package-lock.json', '.npmrc']
const BUILD_INPUTS = [...INSTALL_INPUTS, 'astro.config.mjs', 'tsconfig.json', 'src', 'content', 'public']

/** Stamps live inside what they vouch for: whoever deletes or rebuilds the folder deletes the stamp. */
const INSTALL_STAMP = join(ROOT, 'node_modules', '.hingebook-installed')
const BUILD_STAMP = join(ROOT, 'dist', '.hingebook-built')

/** Tools of this project first (among them its own Node), and none that reports home. */
export const ENVIRONMENT = {
  ...process.env,
  PATH: `${join(ROOT, 'node_modules', '.bin')}${delimiter}${process.env.PATH ?? ''}`,
  ASTRO_TELEMETRY_DISABLED: '1',
  ASTRO_DISABLE_UPDATE_CHECK: 'true',
  // Node keeps what it has compiled: commands that read many small files start three times as fast.
  NODE_COMPILE_CACHE: join(ROOT, '.cache', 'compiled'),
}

/**
 * Runs a program in the project's root, with the project's tools first on its path.
 * @param {string} command
 * @param {readonly string[]} args
 * @param {{ calm?: boolean }} [how] calm: keep the output back and return it
 * @returns {Promise<{ code: number, output: string }>} output is empty unless calm
 */
export function run(command, args, { calm = false } = {}) {
  return new Promise((resolve) => {
    const child = spawn(command, args, {
      cwd: ROOT,
      env: ENVIRONMENT,
      shell: process.platform === 'win32',
      stdio: calm ? ['ignore', 'pipe', 'pipe'] : 'inherit',
    })
    let output = ''
    child.stdout?.on('data', (chunk) => (output += chunk))
    child.stderr?.on('data', (chunk) => (output += chunk))
    child.on('error', (error) => resolve({ code: 127, output: `${output}${error.message}\n` }))
    child.on('close', (code) => resolve({ code: code ?? 1, output }))
  })
}

/** Ends the command with one sentence when the outer Node is too old to go on. */
export function requireNode() {
  const major = Number(process.versions.node.split('.')[0])
  if (major >= 20) return
  console.error(`Hingebook needs Node 20 or newer; this is Node ${process.versions.node}.`)
  process.exit(1)
}

/**
 * Installs the packages, unless they are there already.
 * @param {(line: string) => void} say receives one line before each slow step
 * @returns {Promise<boolean>} false when it failed; the reason has been said
 */
export async function install(say) {
  const wanted = digest(INSTALL_INPUTS)
  if (stamp(INSTALL_STAMP) === wanted) return true
  say('Installing the packages …')
  const fresh = !existsSync(join(ROOT, 'node_modules'))
  const { code, output } = await run('npm', fresh ? ['ci'] : ['install', '--no-save'], { calm: true })
  if (code !== 0) {
    say(`${output.trim()}\nThe packages could not be installed: npm ended with code ${code}.`)
    return false
  }
  writeFileSync(INSTALL_STAMP, wanted)
  return true
}

/**
 * Builds the site into dist/, unless it is there already from the same sources.
 * @param {(line: string) => void} say receives one line before each slow step
 * @returns {Promise<boolean>} false when it failed; the reason has been said
 */
export async function build(say) {
  const wanted = digest(BUILD_INPUTS) + (process.env.HINGEBOOK_SITE ?? '')
  if (stamp(BUILD_STAMP) === wanted) return true
  say('Building the site …')
  const { code, output } = await run('astro', ['build'], { calm: true })
  if (code !== 0) {
    say(`${output.trim()}\nThe site could not be built; the reason stands above.`)
    return false
  }
  mkdirSync(dirname(BUILD_STAMP), { recursive: true })
  writeFileSync(BUILD_STAMP, wanted)
  return true
}

/** @param {string} path */
function stamp(path) {
  return existsSync(path) ? readFileSync(path, 'utf8') : undefined
}

/** @param {readonly string[]} names files and folders of the root; those that are absent count as empty */
function digest(names) {
  const hash = createHash('sha256')
  for (const name of names) addTo(hash, name)
  return hash.digest('hex')
}

/**
 * @param {import('node:crypto').Hash} hash
 * @param {string} name path from the root
 */
function addTo(hash, name) {
  const path = join(ROOT, name)
  if (!existsSync(path)) return
  const entries = folderEntries(path)
  if (entries) {
    for (const entry of entries) addTo(hash, join(name, entry))
  } else {
    hash.update(`${name}\0`).update(readFileSync(path)).update('\0')
  }
}

/** @param {string} path */
function folderEntries(path) {
  try {
    return readdirSync(path).sort()
  } catch {
    return undefined
  }
}
