import type { Design } from '../paper/index.ts'

/** What an option holds: its text, true for a switch that is set, undefined when left out. */
export type Options = Readonly<Record<string, string | boolean | undefined>>

/** One word of the command line, as in `dummy check FILE`. */
export interface Command {
  readonly name: string
  /** What follows the file name. */
  readonly usage: string
  /** One sentence. */
  readonly help: string
  readonly options: Readonly<Record<string, { readonly type: 'string' | 'boolean' }>>
  /**
   * Does the work and writes the answer to standard output.
   * @param place turns a path as the reader wrote it into one that this process can open
   * @returns the exit code
   */
  run(design: Design, options: Options, place: (path: string) => string): Promise<number> | number
}
