import type { Mutant } from './mutants.ts'

/** A change that no test can notice, since what the program does stays the same; and why. */
interface Equivalent {
  readonly file: string
  /** The line it stands on, without the space before it. */
  readonly line: string
  readonly was: string
  readonly now: string
  readonly why: string
}

const EQUIVALENTS: readonly Equivalent[] = []

export const equivalentTo = (mutant: Mutant, line: string): boolean =>
  EQUIVALENTS.some(
    (one) =>
      one.file === mutant.file && one.line === line && one.was === mutant.was && one.now === mutant.now,
  )

/** Entries of the given files whose line is no longer there. */
export const stale = (texts: ReadonlyMap<string, string>): string[] =>
  EQUIVALENTS.filter(({ file, line }) => {
    const text = texts.get(file)
    return text !== undefined && !text.split('\n').some((one) => one.trim() === line)
  }).map(({ file, line, was, now }) => `${file}: ${line} (${was} -> ${now})`)
