import { mkdirSync, writeFileSync } from 'node:fs'
import { dirname } from 'node:path'
import { cannotWrite } from '../../content/words/command/options.ts'
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
    const code = error instanceof Error && 'code' in error ? String(error.code) : ''
    throw new Refusal(cannotWrite(out, code))
  }
}
