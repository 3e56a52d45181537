import fc from 'fast-check'
import { inject } from 'vitest'

declare module 'vitest' {
  interface ProvidedContext {
    /** Number of the mutant that is on; 0: none. */
    mutant: number
  }
}

Object.assign(globalThis, { __mutant: inject('mutant') })

// A counterexample is enough here; the smallest one is not asked for.
fc.configureGlobal({ ...fc.readConfigureGlobal(), endOnFailure: true })
