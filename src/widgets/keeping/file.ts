/** Dummies as files: saved, opened by a button, dropped or pasted. What cannot be read is told by its line. */
import * as says from '../../../content/words/keeping/file.ts'
import { textOf } from '../../file/bytes.ts'
import { parseJson, pathNames, placeIn, walk } from '../../file/json.ts'
import type { Design } from '../../paper/index.ts'
import { DesignError, parseDesign, visibleText } from '../../paper/index.ts'
import { large } from '../state/format.ts'
import { save } from '../template/save.ts'
import { FILE_ENDING, fileName, fileText } from './file-text.ts'
import { readLink } from './link.ts'
import { faultWords } from './words.ts'

export type FileRead =
  | { readonly read: true; readonly design: Design }
  | {
      readonly read: false
      readonly sentence: string
      /** Where it goes wrong, counted from 1. */
      readonly line?: number
      readonly column?: number
    }

/** No design makes a larger file, bytes. */
export const MOST_FILE_BYTES = 1024 * 1024

const TOO_LARGE = says.tooLarge(MOST_FILE_BYTES / 1024 / 1024)

/** What is of a later version is no damage. */
function laterVersion(value: unknown): string | null {
  const version =
    typeof value === 'object' && value !== null ? (value as { hingebook?: unknown }).hingebook : null
  return typeof version === 'number' && Number.isInteger(version) && version > 1
    ? says.laterVersion(version)
    : null
}

/** The text of a design file as a design, or what is wrong with it and where. It never throws. */
export function readFileText(text: string): FileRead {
  if (text.length > MOST_FILE_BYTES) return { read: false, sentence: TOO_LARGE }
  const plain = text.replace(/^\ufeff/, '')
  const json = parseJson(plain)
  if (!json.ok) return { read: false, sentence: large(visibleText(json.sentence)), ...json.place }
  const later = laterVersion(json.value)
  if (later !== null) return { read: false, sentence: later }
  try {
    return { read: true, design: parseDesign(json.value) }
  } catch (error) {
    if (!(error instanceof DesignError)) return { read: false, sentence: says.notAsDesign }
    const place = placeIn(plain, walk(plain, pathNames(error.path)).at)
    return { read: false, sentence: says.onLine(place.line, faultWords(error, json.value)), ...place }
  }
}

/** A file as it lies on the device, in any of the encodings that editors write. */
export async function readFile(file: Blob): Promise<FileRead> {
  if (file.size > MOST_FILE_BYTES) return { read: false, sentence: TOO_LARGE }
  try {
    return readFileText(textOf(new Uint8Array(await file.arrayBuffer())))
  } catch {
    return { read: false, sentence: says.cannotOpen }
  }
}

/** What was pasted: the text of a file, or a link to a design. */
export async function readPasted(text: string): Promise<FileRead> {
  const link = /#(d=[^\s#]*)\s*$/.exec(text.slice(0, MOST_FILE_BYTES))
  return link && !text.trimStart().startsWith('{') ? readLink(link[1] ?? '') : readFileText(text)
}

/** Gives the design to the maker as a file. */
export function saveFile(design: Design): void {
  save([fileText(design)], 'application/json', fileName(design.title))
}

/** Lets the maker choose a file; null if none was chosen. */
export function chooseFile(): Promise<File | null> {
  const input = document.createElement('input')
  input.type = 'file'
  input.accept = `${FILE_ENDING},.json,application/json`
  return new Promise((resolve) => {
    input.addEventListener('change', () => resolve(input.files?.[0] ?? null))
    input.addEventListener('cancel', () => resolve(null))
    input.click()
  })
}

/** Whether what is dragged over the page is a file. */
const carriesFile = ({ dataTransfer }: DragEvent): boolean => dataTransfer?.types.includes('Files') ?? false

/**
 * Opens what is dropped anywhere on the page. Returns what ends it.
 * @param over told while a file hangs over the page
 */
export function openDropped(
  page: HTMLElement | Document,
  opened: (read: FileRead) => void,
  over: (isOver: boolean) => void = () => {},
): () => void {
  const drag = (event: Event): void => {
    if (!(event instanceof DragEvent) || !carriesFile(event)) return
    // Else the browser leaves the page for the file, and the work with it.
    event.preventDefault()
    over(true)
  }
  const leave = (event: Event): void => {
    if (event instanceof DragEvent && event.relatedTarget === null) over(false)
  }
  const drop = (event: Event): void => {
    if (!(event instanceof DragEvent) || !carriesFile(event)) return
    event.preventDefault()
    over(false)
    const file = event.dataTransfer?.files[0]
    if (file) void readFile(file).then(opened)
  }
  const listeners = [
    ['dragenter', drag],
    ['dragover', drag],
    ['dragleave', leave],
    ['drop', drop],
  ] as const
  for (const [type, listen] of listeners) page.addEventListener(type, listen)
  return () => {
    for (const [type, listen] of listeners) page.removeEventListener(type, listen)
  }
}

/** Whether somebody writes in a field: what is pasted there is theirs. */
const isWriting = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  (target.isContentEditable || /^(INPUT|TEXTAREA|SELECT)$/.test(target.tagName))

/** Whether a text could be meant as a design: other things that are pasted are left alone. */
export const looksLikeDesign = (text: string): boolean =>
  /^\s*\ufeff?\s*\{/.test(text) || /#d=\d+\.[\w-]*\s*$/.test(text.slice(-MOST_FILE_BYTES))

/** Opens what is pasted on the page: a file, its text, or a link. Returns what ends it. */
export function openPasted(page: Document, opened: (read: FileRead) => void): () => void {
  const paste = (event: ClipboardEvent): void => {
    if (isWriting(event.target)) return
    const file = event.clipboardData?.files[0]
    const text = event.clipboardData?.getData('text/plain') ?? ''
    if (!file && !looksLikeDesign(text)) return
    event.preventDefault()
    void (file ? readFile(file) : readPasted(text)).then(opened)
  }
  page.addEventListener('paste', paste)
  return () => page.removeEventListener('paste', paste)
}
