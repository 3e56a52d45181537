import { createServer } from 'node:net'
import { fileURLToPath } from 'node:url'
import { defineConfig } from '@playwright/test'
import { BROWSER_ARGS, presentBrowser } from '../src/house/browser.mjs'

const root = fileURLToPath(new URL('..', import.meta.url))

const browser = await presentBrowser()

// Workers load this file again: they must get the port that the first process chose.
process.env.HINGEBOOK_TEST_PORT ??= String(await freePort())

const port = process.env.HINGEBOOK_TEST_PORT

export default defineConfig({
  testDir: 'browser',
  projects: [
    { name: 'together', testMatch: '**/*.spec.ts' },
    // What takes time into account has the machine to itself.
    { name: 'alone', testMatch: '**/*.alone.ts', dependencies: ['together'], fullyParallel: false },
  ],
  outputDir: '../.cache/browser',
  reporter: [['list'], ['json', { outputFile: '../.cache/reports/browser.json' }]],
  fullyParallel: true,
  forbidOnly: true,
  // Once more for what a stalled browser spoils. What passes only then is named at the end.
  retries: 1,
  workers: 2,
  // A machine that is busy with something else is slow, not wrong.
  timeout: 60_000,
  expect: { timeout: 10_000 },
  use: {
    baseURL: `http://localhost:${port}`,
    browserName: 'chromium',
    // Only where it is asked for: else each test would keep the whole site.
    serviceWorkers: 'block',
    launchOptions: { args: [...BROWSER_ARGS], ...browser },
  },
  webServer: {
    command: `node src/house/serve.mjs ${port}`,
    cwd: root,
    url: `http://localhost:${port}/`,
    reuseExistingServer: false,
  },
})

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer()
    probe.once('error', reject)
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address()
      probe.close(() => (typeof address === 'object' && address ? resolve(address.port) : reject(address)))
    })
  })
}
