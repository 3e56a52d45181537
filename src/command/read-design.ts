import { readFileSync } from 'node:fs'
import * as says from '../../content/words/command/read-design.ts'
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
  if (!json.ok) throw new Refusal(says.wrongIn(file, json.sentence))
  try {
    return parseDesign(json.value)
  } catch (error) {
    if (!(error instanceof DesignError)) throw error
    const { message, nearest } = error
    throw new Refusal(
      nearest === undefined ? says.wrongIn(file, message) : says.wrongButNear(file, message, nearest),
    )
  }
}

function readText(file: string, path: string): string {
  try {
    return textOf(readFileSync(path))
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : ''
    if (code === 'ENOENT') throw new Refusal(says.noFile(file))
    if (code === 'EISDIR') throw new Refusal(says.isFolder(file))
    throw new Refusal(says.unreadable(file, code))
  }
}
