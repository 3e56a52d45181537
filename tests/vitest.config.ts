import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    include: ['tests/{paper,drawing,sheet,sources,site,house,widgets}/**/*.test.{ts,tsx}'],
    environment: 'node',
    maxWorkers: 2,
    reporters: ['default', 'json'],
    outputFile: { json: '.cache/reports/unit.json' },
  },
})
