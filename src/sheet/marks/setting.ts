/** Setting words: runs of words into lines, lines into blocks, blocks into stacks. All lengths in mm. */
import type { Drawing, PathMark, Point, Role, WordMark } from '../../drawing/pen/marks.ts'
import { plainText } from '../../paper/index.ts'
import { CAPITAL, TAIL, wordWidth } from './letters.ts'

/** What marks are part of, for who has the page read out: marks with one and the same of these belong together. */
export interface Told {
  readonly as: 'H1' | 'H2' | 'P' | 'Figure' | 'Artifact'
  /** What a figure shows, in a sentence. */
  readonly alt?: string
  /** It comes after all else on its page. */
  readonly isLast?: true
}

interface Tellable {
  readonly told?: Told
}

/**
 * A path on a sheet; with a picture it is the frame that this fills, by two opposite corners. A fold may keep clear,
 * at its start and at its end, of what it meets there (`clear`, mm): by its dashes alone, its points stay.
 */
export type SheetPath = PathMark &
  Tellable & { readonly picture?: Drawing; readonly clear?: readonly [start: number, end: number] }

/** What a sheet is made of. */
export type SheetMark = SheetPath | (WordMark & Tellable)

/** Marks with their top left corner at 0, 0. */
export interface Block {
  readonly width: number
  readonly height: number
  readonly marks: readonly SheetMark[]
}

/** Words of one look. */
export interface Run {
  readonly text: string
  readonly bold?: boolean
  readonly role?: Role
}

export interface Type {
  readonly size: number
  /** From line to line. */
  readonly leading: number
}

/** Moves a mark. */
export function moved<M extends SheetMark>(mark: M, dx: number, dy: number): M {
  const move = ([x, y]: Point): Point => [x + dx, y + dy]
  return mark.mark === 'path'
    ? { ...mark, runs: mark.runs.map((run) => run.map(move)) }
    : { ...mark, at: move(mark.at) }
}

interface Word extends Run {
  readonly width: number
  /** Whether a space parts it from the word before. */
  readonly spaced: boolean
}

/** Cuts a word that is wider than a whole line into parts that are not. */
function broken(word: string, size: number, bold: boolean, width: number): string[] {
  if (wordWidth(word, size, bold) <= width) return [word]
  const parts: string[] = []
  let part = ''
  for (const letter of word) {
    if (part !== '' && wordWidth(part + letter, size, bold) > width) {
      parts.push(part)
      part = ''
    }
    part += letter
  }
  return [...parts, part]
}

/** A no-break space keeps a number with its unit; on paper it is a plain space. What cannot be shown is not set. */
const printed = (text: string): string => plainText(text).replaceAll('\u00a0', ' ')

/** What no-break spaces hold together and no line is wide enough for is parted at them, before any word is. */
function parted(word: string, size: number, bold: boolean, width: number): readonly string[] {
  return wordWidth(printed(word), size, bold) > width ? word.split('\u00a0') : [word]
}

function wordsOf(runs: readonly Run[], size: number, width: number): Word[] {
  return runs.flatMap((run, place) => {
    const { text: all, bold = false } = run
    const isApart = all.startsWith(' ') || (runs[place - 1]?.text ?? '').endsWith(' ')
    const words = all
      .normalize('NFC')
      .split(' ')
      .flatMap((word) => parted(word, size, bold, width))
    return words.flatMap((word, k) =>
      word === ''
        ? []
        : broken(printed(word), size, bold, width).map(
            (text, part): Word => ({
              ...run,
              text,
              width: wordWidth(text, size, bold),
              spaced: part === 0 && (k > 0 || isApart),
            }),
          ),
    )
  })
}

/** The space before a word: within bold words it is bold too, and wider. */
const spaceBefore = (word: Word, last: Word | undefined, size: number): number =>
  word.spaced && last ? wordWidth(' ', size, (word.bold ?? false) && (last.bold ?? false)) : 0

/** Titles are larger than this, mm. */
const TITLE = 4.3

/** By its looks: a title is bold and large, a label bold and red; all else is a paragraph. */
function toldBy(runs: readonly Run[], { size }: Type): Told {
  if (!runs.every((run) => run.bold)) return { as: 'P' }
  const isLabel = runs.every(({ role, text }) => role === 'dimension' && !/^\d+$/.test(text))
  return { as: isLabel ? 'H2' : size > TITLE && runs.every(({ role }) => role === undefined) ? 'H1' : 'P' }
}

/** The same block as another part of its page. */
export function toldAs<B extends Block>(block: B, as: Told['as']): B {
  const told: Told = { as }
  return { ...block, marks: block.marks.map((mark) => ({ ...mark, told })) }
}

/** A paragraph, ragged right, the top of its capitals at y = 0. */
export function paragraph(runs: readonly Run[], type: Type, width: number, of?: string): Block {
  const { size, leading } = type
  const lines: { x: number; words: Word[] }[] = []
  for (const word of wordsOf(runs, size, width)) {
    const line = lines.at(-1)
    const gap = spaceBefore(word, line?.words.at(-1), size)
    if (line && line.x + gap + word.width <= width + 1e-9) {
      line.x += gap + word.width
      line.words.push(word)
    } else lines.push({ x: word.width, words: [word] })
  }
  const told = toldBy(runs, type)
  const marks = lines.flatMap(({ words }, row) =>
    setLine(words, size, CAPITAL * size + row * leading, of).map((mark) => ({ ...mark, told })),
  )
  const height = lines.length === 0 ? 0 : (CAPITAL + TAIL) * size + (lines.length - 1) * leading
  return { width: Math.max(0, ...lines.map((line) => line.x)), height, marks }
}

/** One line's words, joined where they look alike. */
function setLine(words: readonly Word[], size: number, y: number, of: string | undefined): WordMark[] {
  const marks: WordMark[] = []
  let x = 0
  let last: Word | undefined
  for (const word of words) {
    const gap = spaceBefore(word, last, size)
    const before = marks.at(-1)
    if (before && last && last.bold === word.bold && last.role === word.role)
      marks[marks.length - 1] = { ...before, text: `${before.text}${gap > 0 ? ' ' : ''}${word.text}` }
    else
      marks.push({
        mark: 'word',
        at: [x + gap, y],
        text: word.text,
        role: word.role ?? 'note',
        anchor: 'start',
        size,
        ...(word.bold ? { bold: true } : {}),
        ...(of === undefined ? {} : { of }),
      })
    x += gap + word.width
    last = word
  }
  return marks
}

/** Blocks one below another. */
export function stack(blocks: readonly Block[], gap: number): Block {
  const marks: SheetMark[] = []
  let y = 0
  for (const block of blocks) {
    marks.push(...block.marks.map((mark) => moved(mark, 0, y)))
    y += block.height + gap
  }
  return {
    width: Math.max(0, ...blocks.map((block) => block.width)),
    height: Math.max(0, y - gap),
    marks,
  }
}

/** A block with something in the space to its left: a number, a line's sample. */
export function hung(left: readonly SheetMark[], indent: number, block: Block): Block {
  return {
    width: indent + block.width,
    height: block.height,
    marks: [...left, ...block.marks.map((mark) => moved(mark, indent, 0))],
  }
}

/** The rectangle that a word or line covers: left, top, right, bottom. Turned words: quarter turns only. */
export function extent(mark: SheetMark): readonly [number, number, number, number] {
  if (mark.mark === 'path') {
    const points = mark.runs.flat()
    const xs = points.map((p) => p[0])
    const ys = points.map((p) => p[1])
    return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)]
  }
  const width = wordWidth(mark.text, mark.size, mark.bold)
  const start = mark.anchor === 'start' ? 0 : mark.anchor === 'middle' ? -width / 2 : -width
  const [x, y] = mark.at
  const turn = ((mark.turn ?? 0) * Math.PI) / 180
  const corners = [start, start + width].flatMap((dx) =>
    [-CAPITAL * mark.size, TAIL * mark.size].map(
      (dy): Point => [
        x + dx * Math.cos(turn) - dy * Math.sin(turn),
        y + dx * Math.sin(turn) + dy * Math.cos(turn),
      ],
    ),
  )
  const xs = corners.map((p) => p[0])
  const ys = corners.map((p) => p[1])
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)]
}

/** The frame of a picture, `width` wide, as a block. */
export function pictureBlock(picture: Drawing, width: number): Block {
  const [, , wide, high] = picture.box
  const height = (width * high) / wide
  const frame: SheetPath = {
    mark: 'path',
    runs: [
      [
        [0, 0],
        [width, height],
      ],
    ],
    closed: false,
    role: 'guide',
    of: 'picture',
    picture,
  }
  return { width, height, marks: [frame] }
}

/** The words of a picture where they stand on the page; none for any other mark. */
export function pictureWords(mark: SheetMark): readonly WordMark[] {
  if (mark.mark !== 'path' || !mark.picture) return []
  const { box, marks } = mark.picture
  const [[left, top] = [0, 0], [right] = [0, 0]] = mark.runs[0] ?? []
  const scale = (right - left) / box[2]
  return marks.flatMap((one) =>
    one.mark === 'word'
      ? [
          {
            ...one,
            at: [left + (one.at[0] - box[0]) * scale, top + (one.at[1] - box[1]) * scale] as const,
            size: one.size * scale,
          },
        ]
      : [],
  )
}
