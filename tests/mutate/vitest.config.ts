import { mergeConfig } from 'vitest/config'
import plain from '../vitest.config.ts'

/** What is tested in the place of a file, or null; set by `trial.ts`, in whose process this runs. */
const inPlaceOf = (path: string): string | null =>
  (globalThis as { inPlaceOf?: (path: string) => string | null }).inPlaceOf?.(path) ?? null

export default mergeConfig(plain, {
  test: {
    setupFiles: ['tests/mutate/switch.ts'],
    pool: 'threads',
    maxWorkers: 1,
    // A file kept from an earlier run would be tested in the place of the changed one.
    fsModuleCache: false,
  },
  plugins: [
    {
      name: 'mutants',
      enforce: 'pre',
      load: (id: string) => inPlaceOf(id.split('?')[0] ?? id),
    },
  ],
})
