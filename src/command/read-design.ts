import { readFileSync } from 'node:fs'
import { textOf } from '../file/bytes.ts'
import { parseJson } from '../file/json.ts'
import type { Design } from '../paper/index.ts'
import { DesignError, parseDesign } from '../paper/index.ts'
import { Refusal } from './refusal.ts'

/**
 * Reads a design file.
 * @param file as the reader wrote it, for the sentences
 * @param path where it lies
 * Throws a `Refusal` whose sentence names the file, and the line or the field at fault.
 */
export function readDesign(file: string, path: string): Design {
  const json = parseJson(readText(file, path))
  if (!json.ok) throw new Refusal(`${file}: ${json.sentence}`)
  try {
    return parseDesign(json.value)
  } catch (error) {
    if (!(error instanceof DesignError)) throw error
    const nearest = error.nearest === undefined ? '' : ` The nearest that works is ${error.nearest}.`
    throw new Refusal(`${file}: ${error.message}${nearest}`)
  }
}

function readText(file: string, path: string): string {
  try {
    return textOf(readFileSync(path))
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : ''
    if (code === 'ENOENT') throw new Refusal(`${file}: there is no such file.`)
    if (code === 'EISDIR') throw new Refusal(`${file}: this is a folder, not a design file.`)
    throw new Refusal(`${file}: the file cannot be read (${code}).`)
  }
}
