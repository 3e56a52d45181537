// Tries mutants one by one in a vitest of its own: told a number and a test file, it answers whether it fails.
// A process by itself, since a mutant may never come to an end: whoever started this one stops it then.
import { readFileSync, rmSync } from 'node:fs'
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
  /** Path from the root. */
  readonly test: string
}

export interface Answer {
  readonly failed: boolean
  /** What the test file took of a processor. */
  readonly seconds: number
  /** Without a mutant: the numbers of those that it comes by. */
  readonly seen: readonly number[]
}

function instrument(mutants: readonly Mutant[]): void {
  const numbers = new Map(mutants.map((mutant, k) => [keyOf(mutant), k + 1]))
  const files = new Map(mutants.map(({ file }) => [join(ROOT, file), file]))
  Object.assign(globalThis, {
    inPlaceOf: (path: string): string | null => {
      const file = files.get(path)
      return file === undefined ? null : switched(file, readFileSync(path, 'utf8'), numbers)
    },
  })
}

const SEEN = join(ROOT, '.cache/mutate-seen.json')

const vitest = await createVitest('test', {
  config: join(ROOT, 'tests/mutate/vitest.config.ts'),
  watch: false,
  reporters: [{}],
})
await vitest.standalone()
const project = vitest.getRootProject()

async function answer({ number, test }: Task): Promise<Answer> {
  project.provide('mutant', number)
  project.provide('seen', SEEN)
  if (number === 0) rmSync(SEEN, { force: true })
  const path = join(ROOT, test)
  // What the machine does beside does not count.
  const before = process.cpuUsage()
  const { testModules } = await vitest.runTestSpecifications([project.createSpecification(path)])
  // Modules of earlier runs are told too. Errors outside tests are not counted: one of them may come in late.
  const module = testModules.find(({ moduleId }) => moduleId === path)
  if (!module) throw new Error(`${test} was not run`)
  const { user, system } = process.cpuUsage(before)
  const seconds = (user + system) / 1e6
  const failed = module.state() === 'failed'
  const seen = number === 0 && !failed ? (JSON.parse(readFileSync(SEEN, 'utf8')) as number[]) : []
  return { failed, seconds, seen }
}

process.on('message', (told: Told) => {
  if ('mutants' in told) instrument(told.mutants)
  else void answer(told).then((done) => process.send?.(done))
})
process.send?.({ failed: false, seconds: 0, seen: [] } satisfies Answer)
