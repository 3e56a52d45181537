import { readFileSync } from 'node:fs'
import { parse } from '@humanwhocodes/momoa'
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
  const json = parseJson(readText(file, path), file)
  try {
    return parseDesign(json)
  } catch (error) {
    if (!(error instanceof DesignError)) throw error
    const nearest = error.nearest === undefined ? '' : ` The nearest that works is ${error.nearest}.`
    throw new Refusal(`${file}: ${error.message}${nearest}`)
  }
}

/** Byte order marks (Unicode 16, 23.8), and how a text is read that begins with one. */
const MARKS: readonly (readonly [encoding: string, mark: readonly number[]])[] = [
  ['utf-8', [0xef, 0xbb, 0xbf]],
  ['utf-16le', [0xff, 0xfe]],
  ['utf-16be', [0xfe, 0xff]],
]

/** A file's bytes as text. Some editors write a mark at its beginning that says how; it is no part of the text. */
function textOf(bytes: Uint8Array): string {
  const [encoding] = MARKS.find(([, mark]) => mark.every((byte, k) => bytes[k] === byte)) ?? ['utf-8']
  return new TextDecoder(encoding).decode(bytes)
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

function parseJson(text: string, file: string): unknown {
  if (text.trim() === '') throw new Refusal(`${file}: line 1 is empty, and so is the rest of the file.`)
  try {
    return JSON.parse(text)
  } catch (error) {
    const { line, column } = faultOf(text, error)
    const there = text.split('\n')[line - 1]?.trim() ?? ''
    const shown = there === '' ? 'the text ends too early' : there.slice(0, 60)
    throw new Refusal(`${file}: line ${line} is not JSON from character ${column} on: ${shown}`)
  }
}

/** Where the JSON goes wrong, counted from 1. The engine does not always say; then the slower parser does. */
function faultOf(text: string, error: unknown): { line: number; column: number } {
  const told = /line (\d+) column (\d+)/.exec(error instanceof Error ? error.message : '')
  if (told) return { line: Number(told[1]), column: Number(told[2]) }
  try {
    parse(text)
  } catch (fault) {
    if (fault instanceof Error && 'line' in fault && 'column' in fault)
      return { line: Number(fault.line), column: Number(fault.column) }
  }
  const lines = text.split('\n')
  return { line: lines.length, column: (lines.at(-1)?.length ?? 0) + 1 }
}
