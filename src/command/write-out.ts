import { mkdirSync, writeFileSync } from 'node:fs'
import { dirname } from 'node:path'
import { Refusal } from './refusal.ts'

/**
 * Writes a file that `--out` names, with the folders on the way to it. Throws a Refusal that says why it cannot be.
 * @param path where it is for this process
 */
export function writeOut(out: string, path: string, content: Uint8Array | string): void {
  try {
    mkdirSync(dirname(path), { recursive: true })
    writeFileSync(path, content)
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : ''
    throw new Refusal(`--out ${out}: the file cannot be written (${code}).`)
  }
}

/** What was given in place of what is allowed, at the end of a sentence. */
export const given = (text: string | boolean | undefined): string =>
  text === undefined ? ', and it was left out' : `, not ${text}`
