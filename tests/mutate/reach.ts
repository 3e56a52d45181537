import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { basename, dirname, join, normalize } from 'node:path/posix'
import { importsOf } from '../house/layers.ts'
import { ROOT, textOf, treeFiles } from '../house/tree.ts'

/** The test files that reach a source file by imports, and over how many of them. */
export type Reach = ReadonlyMap<string, ReadonlyMap<string, number>>

const TEST = /^tests\/(paper|making|drawing|sheet|cutter|booklet|class|sources|site|widgets)\/.*\.test\.tsx?$/

/** Files that read all of a folder instead of naming what they import. */
const READS: ReadonlyMap<string, string> = new Map([['tests/drawing/gallery.ts', 'tests/drawing/pictures/']])

/** From each source file to the tests that touch it. */
export function reachOf(): Reach {
  const files = treeFiles().filter((file) => /^(src|tests)\/.*\.tsx?$/.test(file))
  const known = new Set(files)
  const imports = new Map(
    files.map((file) => [
      file,
      [
        ...importsOf(file, textOf(file))
          .filter((name) => name.startsWith('.'))
          .map((name) => normalize(join(dirname(file), name)))
          .filter((path) => known.has(path)),
        ...files.filter((other) => other.startsWith(READS.get(file) ?? ' ')),
      ],
    ]),
  )
  const reach = new Map<string, Map<string, number>>()
  for (const test of files.filter((file) => TEST.test(file))) {
    const steps = new Map([[test, 0]])
    for (const file of steps.keys())
      for (const next of imports.get(file) ?? [])
        if (!steps.has(next)) steps.set(next, (steps.get(file) ?? 0) + 1)
    for (const [file, far] of steps) {
      if (!file.startsWith('src/')) continue
      const tests = reach.get(file) ?? new Map<string, number>()
      reach.set(file, tests.set(test, far))
    }
  }
  return reach
}

const KEPT = join(ROOT, '.cache/mutate.json')

/** What each test file took of a processor when it was run for this, seconds. */
export function secondsKept(): ReadonlyMap<string, number> {
  try {
    return new Map(Object.entries(JSON.parse(readFileSync(KEPT, 'utf8')) as Record<string, number>))
  } catch {
    return new Map()
  }
}

export function keepSeconds(seconds: ReadonlyMap<string, number>): void {
  mkdirSync(dirname(KEPT), { recursive: true })
  writeFileSync(KEPT, JSON.stringify(Object.fromEntries(seconds), null, 2))
}

/** A test that was never timed is taken to last so long, seconds. */
const UNTIMED = 4

/** What it takes to begin with a test file, seconds. */
const BEGIN = 0.7

/** How long a test takes with all that it takes to begin with it, seconds. */
export const timeOf = (test: string, seconds: ReadonlyMap<string, number>): number =>
  BEGIN + (seconds.get(test) ?? UNTIMED)

/**
 * The tests for a source file, the quickest first. One that is named like it counts as a quarter as long, one that
 * imports it itself or is of its room as half as long, and all others as some seconds longer: most of them reach it,
 * and do not come by a change.
 */
export function ordered(
  file: string,
  tests: ReadonlyMap<string, number>,
  seconds: ReadonlyMap<string, number>,
): string[] {
  const room = dirname(file).replace('src/', 'tests/')
  const stem = basename(file).replace(/\.tsx?$/, '')
  const isNamesake = (test: string): boolean => {
    const name = basename(test).replace(/\.test\.tsx?$/, '')
    return name === stem || name.startsWith(`${stem}-`)
  }
  const rank = (test: string, far: number): number => {
    const takes = timeOf(test, seconds)
    if (isNamesake(test)) return takes / 4
    return far === 1 || room.startsWith(dirname(test)) ? takes / 2 : takes + 2 + far / 5
  }
  return [...tests].sort((a, b) => rank(...a) - rank(...b)).map(([test]) => test)
}
