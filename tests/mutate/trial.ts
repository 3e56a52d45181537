// Tries mutants one by one in a vitest of its own: told a number and tests, it answers whether one fails.
// A process by itself, since a mutant may never come to an end: whoever started this one stops it then.
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { createVitest } from 'vitest/node'
import { ROOT } from '../house/tree.ts'
import type { Mutant } from './mutants.ts'
import { keyOf, switched } from './mutants.ts'
import type {} from './switch.ts'

/** First message: all mutants, the first of which is number 1. */
export type Told = { readonly mutants: readonly Mutant[] } | Task

export interface Task {
  /** 0: the sources as they are. */
  readonly number: number
  /** Paths from the root, in order. */
  readonly tests: readonly string[]
}

export interface Answer {
  /** The test file that failed first; null: all pass. */
  readonly killer: string | null
  /** How long each test file took, seconds. */
  readonly seconds: Readonly<Record<string, number>>
}

/** The file of each mutant by its number, and those that were loaded with their mutants in them. */
let fileOf: readonly string[] = []
const loaded = new Set<string>()

function instrument(mutants: readonly Mutant[]): void {
  const numbers = new Map(mutants.map((mutant, k) => [keyOf(mutant), k + 1]))
  fileOf = ['', ...mutants.map(({ file }) => file)]
  const files = new Map(mutants.map(({ file }) => [join(ROOT, file), file]))
  Object.assign(globalThis, {
    inPlaceOf: (path: string): string | null => {
      const file = files.get(path)
      if (file === undefined) return null
      loaded.add(file)
      return switched(file, readFileSync(path, 'utf8'), numbers)
    },
  })
}

const vitest = await createVitest('test', {
  config: join(ROOT, 'tests/mutate/vitest.config.ts'),
  watch: false,
  reporters: [{}],
})
await vitest.standalone()
const project = vitest.getRootProject()

/** One file after the other, until one fails: to have vitest stop at a failure can stop the next run as well. */
async function answer({ number, tests }: Task): Promise<Answer> {
  project.provide('mutant', number)
  const seconds: Record<string, number> = {}
  for (const test of tests) {
    const path = join(ROOT, test)
    const { testModules } = await vitest.runTestSpecifications([project.createSpecification(path)])
    // Modules of earlier runs are told too. Errors outside tests are not counted: one of them may come in late.
    const module = testModules.find(({ moduleId }) => moduleId === path)
    if (!module) throw new Error(`${test} was not run`)
    const { duration, collectDuration, prepareDuration, environmentSetupDuration } = module.diagnostic()
    seconds[test] = (duration + collectDuration + prepareDuration + environmentSetupDuration) / 1000
    if (module.state() === 'failed') return { killer: test, seconds }
  }
  const file = fileOf[number]
  if (file && !loaded.has(file)) throw new Error(`${file} was never loaded: nothing was tried`)
  return { killer: null, seconds }
}

process.on('message', (told: Told) => {
  if ('mutants' in told) instrument(told.mutants)
  else void answer(told).then((done) => process.send?.(done))
})
process.send?.({ killer: null, seconds: {} } satisfies Answer)
