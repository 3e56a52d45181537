import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    include: [
      'tests/{paper,making,drawing,sheet,cutter,booklet,class,export,sources,site,house,widgets}/**/*.test.{ts,tsx}',
    ],
    environment: 'node',
    setupFiles: ['tests/chance.ts'],
    maxWorkers: 2,
    // Files share what a worker has loaded: loading it anew for each takes a third of the time.
    isolate: false,
    // A machine that is busy with something else is slow, not wrong.
    testTimeout: 60_000,
    allowOnly: false,
    reporters: ['default', 'json'],
    outputFile: { json: '.cache/reports/unit.json' },
  },
})
