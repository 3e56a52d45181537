import { ModuleKind, ScriptTarget, transpileModule } from 'typescript'
import { expect, test } from 'vitest'
import { stale } from '../mutate/equivalents.ts'
import { keyOf, mutantsOf, switched } from '../mutate/mutants.ts'
import { textOf, treeFiles } from './tree.ts'

const SOURCE = `
import type { Flat } from './lay.ts'
interface Box { size: 4 }
const ways = { 1: 'up', 2: 'down' } as const
let sum = 0
export function least(a: number, b: number, box: Box): number {
  sum += a
  if (a < b && !(b === 0)) return -a
  while (b > 10) b /= 2
  return Math.min(a, b - 1e-9) * (sum > 3 ? 1 : 2) + ('x' + 'y').length
}
`

const mutants = mutantsOf('box.ts', SOURCE)

test('signs, bounds, comparisons, branches and constants are turned; types, names and text are not', () => {
  const all = mutants.map(({ kind, was, now }) => `${kind} ${was} ${now}`)
  for (const one of [
    'sign += -=',
    'sign /= *=',
    'sign -a (a)',
    'sign * /',
    'bound < <=',
    'bound > >=',
    'comparison < >=',
    'comparison === !==',
    'branch && ||',
    'branch !(b === 0) !!((b === 0))',
    'branch a < b && !(b === 0) true',
    'branch a < b && !(b === 0) false',
    'branch b > 10 false',
    'bound Math.min Math.max',
    'constant 1e-9 0.00001',
    'constant 3 4',
  ])
    expect(all).toContain(one)
  // Neither the type `4`, nor the names 1 and 2, nor the sum of two words.
  expect(all.filter((one) => one.startsWith('constant 4'))).toEqual([])
  expect(all.filter((one) => one === 'constant 1 2')).toHaveLength(1)
  expect(all.filter((one) => one === 'sign + -')).toHaveLength(1)
  expect(mutants.find(({ was }) => was === '+=')?.line).toBe(7)
})

/** The function of the source with the mutant of that number on; 0: none. */
function leastWith(number: number): (a: number, b: number) => number {
  const numbers = new Map(mutants.map((mutant, k) => [keyOf(mutant), k + 1]))
  const { outputText } = transpileModule(switched('box.ts', SOURCE, numbers), {
    compilerOptions: { module: ModuleKind.CommonJS, target: ScriptTarget.ESNext },
  })
  const made: { least?: (a: number, b: number) => number } = {}
  new Function('globalThis', 'exports', outputText)({ __mutant: number }, made)
  return made.least ?? (() => Number.NaN)
}

test('all stand in one file, and only the one that is asked for is on', () => {
  const plain = leastWith(0)
  expect(plain(2, 5)).toBe(-2)
  expect(plain(20, 4)).toBeCloseTo(6, 6)
  const numberOf = (was: string, now: string) =>
    1 + mutants.findIndex((mutant) => mutant.was === was && mutant.now === now)
  expect(leastWith(numberOf('-a', '(a)'))(2, 5)).toBe(2)
  expect(leastWith(numberOf('Math.min', 'Math.max'))(20, 4)).toBeCloseTo(22, 6)
  expect(leastWith(numberOf('<', '<='))(5, 5)).toBe(-5)
  expect(leastWith(numberOf('+=', '-='))(20, 4)).toBeCloseTo(10, 6)
})

test('what is named as a change that no test can notice is still there to be changed', () => {
  const files = treeFiles().filter((path) => /^src\/.*\.tsx?$/.test(path))
  expect(stale(new Map(files.map((path) => [path, textOf(path)])))).toEqual([])
})
