import { fileURLToPath } from 'node:url'
import { defineConfig } from '@playwright/test'
import { BROWSER_ARGS, presentBrowser } from '../src/house/browser.mjs'

const root = fileURLToPath(new URL('..', import.meta.url))
const port = Number(process.env['HINGEBOOK_TEST_PORT'] ?? 4399)
const executablePath = await presentBrowser()

export default defineConfig({
  testDir: 'browser',
  testMatch: '**/*.spec.ts',
  outputDir: '../.cache/playwright',
  fullyParallel: true,
  workers: 2,
  timeout: 30_000,
  use: {
    baseURL: `http://localhost:${port}`,
    browserName: 'chromium',
    launchOptions: { args: [...BROWSER_ARGS], ...(executablePath ? { executablePath } : {}) },
  },
  webServer: {
    command: `node src/house/serve.mjs ${port}`,
    cwd: root,
    url: `http://localhost:${port}/`,
    reuseExistingServer: false,
  },
})
