// Finds a browser for the tests: Playwright's own, else the system's, else installs one.
// Plain JavaScript, because the outer Node may be 20.
import { execFileSync, spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { delimiter, join } from 'node:path'

/** Names under which a system may hold a Chromium. */
const NAMES = ['chromium', 'chromium-browser', 'google-chrome']

/** No sandbox, since tests also run as root; and nothing that would phone another host. */
export const BROWSER_ARGS = [
  '--no-sandbox',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-quic',
  '--no-first-run',
]

/** @returns {string | undefined} path of a system Chromium */
export function systemBrowser() {
  const folders = (process.env.PATH ?? '').split(delimiter)
  for (const name of NAMES) {
    for (const folder of folders) {
      const path = join(folder, name)
      if (existsSync(path)) return path
    }
  }
  return undefined
}

/** @returns {Promise<string | undefined>} path of the browser which Playwright downloaded earlier */
async function playwrightBrowser() {
  const { chromium } = await import('@playwright/test')
  const path = chromium.executablePath()
  return existsSync(path) ? path : undefined
}

/** @returns {Promise<string | undefined>} path of a browser that is already here */
export async function presentBrowser() {
  return (await playwrightBrowser()) ?? systemBrowser()
}

/**
 * Finds a browser or installs one.
 * @param {(line: string) => void} say receives one line before each slow step
 * @returns {Promise<string | undefined>} its path; undefined when nothing worked
 */
export async function findBrowser(say) {
  const present = await presentBrowser()
  if (present) return present
  if (process.platform === 'linux' && process.getuid?.() === 0 && hasApt()) {
    say('No browser yet: installing Chromium, and tools to measure PDFs, with apt-get …')
    const quiet = { stdio: 'ignore', env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } }
    spawnSync('apt-get', ['update'], quiet)
    spawnSync('apt-get', ['install', '-y', 'chromium', 'poppler-utils'], quiet)
    const path = systemBrowser()
    if (path) return path
  }
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
