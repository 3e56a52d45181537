// Finds a browser for the tests: Playwright's own, else the system's, else installs one.
// A headless shell comes first: a whole Chromium without a screen now and then stops drawing frames for
// good (some two visits in five hundred here; the shell none in eleven hundred), and then nothing wakes.
// Plain JavaScript, because the outer Node may be 20.
import { execFileSync, spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { delimiter, join } from 'node:path'

/** Names under which a system may hold a Chromium, best first. */
const SHELLS = ['chromium-headless-shell', 'chrome-headless-shell']
const WHOLE = ['chromium', 'chromium-browser', 'google-chrome']

/**
 * A browser that is here.
 * @typedef {{ executablePath?: string }} Browser executablePath: where it is; left out: where Playwright keeps its own
 */

/** No sandbox, since tests also run as root; and nothing that would phone another host. */
export const BROWSER_ARGS = [
  '--no-sandbox',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-quic',
  '--no-first-run',
]

/**
 * @param {readonly string[]} names
 * @returns {Browser | undefined} the first of these programs that the system has
 */
export function systemBrowser(names = [...SHELLS, ...WHOLE]) {
  const folders = (process.env.PATH ?? '').split(delimiter)
  for (const name of names) {
    for (const folder of folders) {
      const executablePath = join(folder, name)
      if (existsSync(executablePath)) return { executablePath }
    }
  }
  return undefined
}

/** @returns {Promise<Browser | undefined>} the browser which Playwright downloaded earlier, shell and all */
async function playwrightBrowser() {
  const { chromium } = await import('@playwright/test')
  return existsSync(chromium.executablePath()) ? {} : undefined
}

/** @returns {Promise<Browser | undefined>} a browser that is already here */
export async function presentBrowser() {
  return (await playwrightBrowser()) ?? systemBrowser()
}

/**
 * Finds a browser, or installs one; a headless shell if it can.
 * @param {(line: string) => void} say receives one line before each slow step
 * @returns {Promise<Browser | undefined>} undefined when nothing worked
 */
export async function findBrowser(say) {
  const best = (await playwrightBrowser()) ?? systemBrowser(SHELLS)
  if (best) return best
  if (process.platform === 'linux' && process.getuid?.() === 0 && hasApt()) {
    say('No headless browser yet: installing one, and tools to measure PDFs, with apt-get …')
    const quiet = { stdio: 'ignore', env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } }
    const install = (/** @type {string[]} */ ...names) =>
      spawnSync('apt-get', ['install', '-y', ...names], /** @type {object} */ (quiet)).status === 0
    spawnSync('apt-get', ['update'], /** @type {object} */ (quiet))
    install('poppler-utils')
    if (!install('chromium-headless-shell') && !systemBrowser()) install('chromium')
  }
  const present = systemBrowser()
  if (present) return present
  say('No browser yet: asking Playwright for Chromium …')
  spawnSync('npm', ['exec', '--', 'playwright', 'install', 'chromium'], {
    stdio: 'inherit',
    shell: process.platform === 'win32',
  })
  return playwrightBrowser()
}

function hasApt() {
  try {
    execFileSync('apt-get', ['--version'], { stdio: 'ignore' })
    return true
  } catch {
    return false
  }
}
