/**
 * What is drawn on the paper. Art is data: it weighs nothing, no check knows it, it moves with its panel
 * and is clipped to it where it is drawn or printed. The format is told in content/design-file.md.
 */
import type { Field } from '../mechanisms/kind.ts'
import type { Flat } from '../plane/lay.ts'
import * as says from '../words/design.ts'
import { checkPicture, MOST_LETTERS_IN_ALL } from './picture.ts'
import type { Thing } from './read.ts'
import {
  checkFlag,
  checkNumber,
  checkPoints,
  checkWord,
  DesignError,
  onlyKeys,
  shown,
  thing,
} from './read.ts'

/** Papers and inks by name; what they look like is for drawings to say. */
export const PAPER_COLOURS = [
  'dusk',
  'hedge',
  'meadow',
  'moss',
  'night',
  'paper',
  'cream',
  'oat',
  'amber',
  'ochre',
  'clay',
  'bark',
  'fern',
  'leaf',
  'pond',
  'water',
  'lilac',
  'plum',
  'rose',
  'blush',
  'rust',
  'heron',
  'moon',
  'flame',
  'ink',
] as const

export type PaperColour = (typeof PAPER_COLOURS)[number]

/** What the card (`page`), its cover (`cover`) and each mechanism (by id) is cut from. */
export type Papers = Readonly<Record<string, PaperColour>>

/** One shape drawn on a panel. Shapes are laid on one another in the order of the list. */
export interface Art {
  /** The panel, by name. */
  readonly on: string
  /** Other panels that carry the same drawing: the other half of a face, say. */
  readonly also: readonly string[]
  readonly face: 'front' | 'back'
  /** In the panel's flat coordinates, mm. Where `curve` is true the outline runs smoothly through these points. */
  readonly shape: readonly Flat[]
  readonly closed: boolean
  readonly curve: boolean
  /** What it is filled with; null for a line alone. */
  readonly fill: PaperColour | null
  /** Whether its outline is drawn. */
  readonly line: boolean
  readonly lineColour: PaperColour
  /** mm. */
  readonly lineWidth: number
  /** It gives light: a flame, the moon. It stays bright where its paper lies in the shade. */
  readonly glows: boolean
  /**
   * A PNG or JPEG as a `data:` address, which fills the shape instead: four corners, as the picture is looked at its
   * lower left, lower right, upper right and upper left one.
   */
  readonly picture?: string
  /** It lies there to be drawn after: seen only where one draws, not on the card and not on the sheet. */
  readonly trace?: true
}

export const MOST_SHAPES = 1500

/** Other panels that carry one shape. */
const MOST_ALSO = 10

/** In all shapes together: a bound for the time that a frame takes. */
export const MOST_ART_POINTS = 15_000

const LINE_WIDTH: Field = {
  name: 'lineWidth',
  label: says.lineWidth,
  unit: 'mm',
  min: 0.1,
  max: 20,
}

const DEFAULT_LINE_WIDTH = 0.6

const KEYS = [
  'on',
  'also',
  'face',
  'shape',
  'closed',
  'curve',
  'fill',
  'line',
  'lineColour',
  'lineWidth',
  'glows',
  'picture',
  'trace',
] as const

function checkPanel(value: unknown, panels: ReadonlySet<string>, path: string): string {
  if (typeof value !== 'string' || !panels.has(value))
    throw new DesignError(path, says.notPanel([...panels], shown(value)))
  return value
}

/** What a shape has whose place a picture takes. */
const PLAIN = { closed: true, curve: false, fill: null, line: false, glows: false } as const

/** Opposite sides of a picture's frame are equal but for so much, mm: corners are rounded to hundredths. */
const ASKEW = 0.05

function pictureOf(raw: Thing, shape: readonly Flat[], path: string): Omit<Art, 'on' | 'also' | 'face'> {
  for (const [key, value] of Object.entries(PLAIN))
    if (raw[key] !== undefined && raw[key] !== value)
      throw new DesignError(`${path}.${key}`, says.besidePicture(value))
  const [a, b, c, d] = shape
  const isFrame = [0, 1].every(
    (k) => a && b && c && d && Math.abs((a[k] ?? 0) - (b[k] ?? 0) + (c[k] ?? 0) - (d[k] ?? 0)) <= ASKEW,
  )
  if (!isFrame || shape.length !== 4) throw new DesignError(`${path}.shape`, says.notFrame)
  return {
    shape,
    ...PLAIN,
    lineColour: 'ink',
    lineWidth: DEFAULT_LINE_WIDTH,
    picture: checkPicture(raw.picture, `${path}.picture`),
    ...(checkFlag(raw.trace, false, `${path}.trace`) ? { trace: true } : {}),
  }
}

function parseShape(json: unknown, panels: ReadonlySet<string>, path: string): Art {
  const raw = thing(json, path)
  onlyKeys(raw, KEYS, path)
  const on = checkPanel(raw.on, panels, `${path}.on`)
  if (raw.also !== undefined && (!Array.isArray(raw.also) || raw.also.length > MOST_ALSO))
    throw new DesignError(`${path}.also`, says.notPanels(MOST_ALSO, shown(raw.also)))
  const also = ((raw.also ?? []) as readonly unknown[]).map((one, k) =>
    checkPanel(one, panels, `${path}.also[${k}]`),
  )
  const face = checkWord(raw.face, ['front', 'back'], `${path}.face`, 'front')
  const closed = checkFlag(raw.closed, true, `${path}.closed`)
  const shape = checkPoints(raw.shape, `${path}.shape`)
  if (raw.picture !== undefined) return { on, also, face, ...pictureOf(raw, shape, path) }
  if (raw.trace !== undefined) throw new DesignError(`${path}.trace`, says.traceAlone)
  const least = closed ? 3 : 2
  if (shape.length < least) throw new DesignError(`${path}.shape`, says.tooFewPoints(least, shape.length))
  const fill =
    raw.fill === undefined || raw.fill === null ? null : checkWord(raw.fill, PAPER_COLOURS, `${path}.fill`)
  const line = checkFlag(raw.line, fill === null, `${path}.line`)
  if (fill === null && !line) throw new DesignError(`${path}.line`, says.nothingSeen)
  return {
    on,
    also,
    face,
    shape,
    closed,
    curve: checkFlag(raw.curve, false, `${path}.curve`),
    fill,
    line,
    lineColour: checkWord(raw.lineColour, PAPER_COLOURS, `${path}.lineColour`, 'ink'),
    lineWidth:
      raw.lineWidth === undefined
        ? DEFAULT_LINE_WIDTH
        : checkNumber(raw.lineWidth, LINE_WIDTH, `${path}.lineWidth`),
    glows: checkFlag(raw.glows, false, `${path}.glows`),
  }
}

/**
 * The `art` of a design file, every default filled in; null where there is none.
 * Throws a `DesignError`.
 */
export function parseArt(json: unknown, panels: readonly string[]): readonly Art[] | null {
  if (json === undefined) return null
  if (!Array.isArray(json)) throw new DesignError('art', says.notList(shown(json)))
  if (json.length > MOST_SHAPES) throw new DesignError('art', says.tooManyShapes(MOST_SHAPES, json.length))
  const known = new Set(panels)
  const art = json.map((one: unknown, k) => parseShape(one, known, `art[${k}]`))
  const points = art.reduce((sum, { shape, also }) => sum + shape.length * (1 + also.length), 0)
  if (points > MOST_ART_POINTS) throw new DesignError('art', says.tooManyPointsInAll(MOST_ART_POINTS, points))
  const letters = art.reduce((sum, { picture = '' }) => sum + picture.length, 0)
  if (letters > MOST_LETTERS_IN_ALL)
    throw new DesignError('art', says.tooManyLettersInAll(MOST_LETTERS_IN_ALL, letters))
  return art
}

/** The `papers` of a design file; null where there are none. Throws a `DesignError`. */
export function parsePapers(json: unknown, owners: readonly string[]): Papers | null {
  if (json === undefined) return null
  const raw = thing(json, 'papers')
  onlyKeys(raw, owners, 'papers')
  return Object.fromEntries(
    Object.entries(raw).map(([owner, colour]) => [
      owner,
      checkWord(colour, PAPER_COLOURS, `papers.${owner}`),
    ]),
  )
}
