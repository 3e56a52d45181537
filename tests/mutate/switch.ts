import { writeFileSync } from 'node:fs'
import fc from 'fast-check'
import { afterAll, beforeEach, inject } from 'vitest'

declare module 'vitest' {
  interface ProvidedContext {
    /** Number of the mutant that is on; 0: none. */
    mutant: number
    /** File to write the numbers of the mutants to that the tests come by, when none is on. */
    seen: string
  }
}

const mutant = inject('mutant')
const seen = new Set<number>()

const see = (number: number): boolean => {
  seen.add(number)
  return false
}

Object.assign(globalThis, { __mutant: mutant, __seen: mutant === 0 ? see : undefined })

// A counterexample is enough here; the smallest one is not asked for.
fc.configureGlobal({ ...fc.readConfigureGlobal(), endOnFailure: true })

// One failed test is enough too: the rest of its file need not run.
let failed = false
beforeEach((context) => {
  if (failed) context.skip()
  context.onTestFailed(() => {
    failed = true
  })
})

afterAll(() => {
  if (mutant === 0) writeFileSync(inject('seen'), JSON.stringify([...seen]))
})
