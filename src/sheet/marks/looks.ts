import type { Role } from '../../drawing/pen/marks.ts'
import type { Clear } from './fold-ends.ts'
import type { SheetPath } from './setting.ts'

/** A colour as `#rrggbb`. */
export type Colour = `#${string}`

/** How a line is drawn, mm. */
export interface Look {
  readonly colour: Colour
  readonly width: number
  /** Lengths of dashes and gaps in turn; empty: solid. */
  readonly dash: readonly number[]
  /** Its dashes have round ends: very short ones are dots. */
  readonly round?: boolean
}

/** Pure black: a printer then uses its black alone, and thin lines stay crisp. */
const INK: Colour = '#000000'

const QUIET: Colour = '#4e5470'

const RED: Colour = '#c8102e'

const MARGIN_LINE: Colour = '#e58a96'

/** Half a millimetre of paper for one unit of the screen's dash patterns. */
const dashed = (...units: readonly number[]): readonly number[] => units.map((unit) => unit / 2)

/**
 * Lines differ by dash pattern and weight first: the screen's patterns (`--dash-valley`,
 * `--dash-mountain` of the site's tokens, and the rule for creases in `drawing/marks.css`). Solid means cut:
 * nothing else on a piece is solid, and beside the pieces only the two check lines are.
 */
export const looks = {
  cut: { colour: INK, width: 0.4, dash: [] },
  valley: { colour: INK, width: 0.3, dash: dashed(6, 3) },
  mountain: { colour: INK, width: 0.3, dash: dashed(8, 3, 1.5, 3) },
  crease: { colour: INK, width: 0.2, dash: dashed(1, 3) },
  glue: { colour: INK, width: 0.2, dash: [2.2, 0.5] },
  place: { colour: INK, width: 0.2, dash: [0.5, 0.5] },
  // Never solid: solid means cut.
  picture: { colour: '#7b829c', width: 0.2, dash: [0.35, 0.55] },
  // The three sides of a small triangle, open at its corners: never a line that goes on.
  care: { colour: INK, width: 0.35, dash: [2, 1], round: true },
  grain: { colour: INK, width: 0.25, dash: [1.5, 0.7] },
  behind: { colour: INK, width: 0.45, dash: [0.01, 1.3], round: true },
  axis: { colour: INK, width: 0.25, dash: [] },
  guide: { colour: INK, width: 0.2, dash: [0.3, 0.7] },
  dimension: { colour: MARGIN_LINE, width: 0.35, dash: [0.4, 1.2] },
} as const satisfies Partial<Record<Role, Look>>

const plain: Look = { colour: INK, width: 0.25, dash: [] }

/** The look of a line on paper. */
export const lookOf = (role: Role): Look => (looks as Partial<Record<Role, Look>>)[role] ?? plain

/** A dashed line as a pen draws it, mm: lengths of dashes and gaps in turn, and how far into them it begins. */
interface Dashes {
  readonly dash: readonly number[]
  readonly phase: number
}

const whole = (dash: readonly number[]): Dashes => ({ dash, phase: 0 })

const sum = (parts: readonly number[]): number => parts.reduce((all, part) => all + part, 0)

/** No dot and no gap of a fold is shorter: printers lose them. */
const FINE = 0.4

/** A fold keeps clear of what it meets by no more than this part of it: short ones stay long enough to be seen. */
const SHARE = 1 / 8

/** A longer fold shows its pattern twice: once is a stroke, a dot and a stroke, and may be three lines. */
const TWICE = 8

/**
 * Of a fold: it begins and ends with a dash, as far from its ends as it keeps clear there. Its dots and gaps stay
 * wide enough to be seen, the dashes give way.
 */
function foldDashes(pattern: readonly number[], long: number, clear: Clear): Dashes {
  const [start, end] = [Math.min(clear[0], SHARE * long), Math.min(clear[1], SHARE * long)]
  const [first = 0, ...others] = pattern
  const left = long - start - end
  const fits = Math.round((left - first) / sum(pattern))
  const times = left < TWICE ? 1 : Math.max(2, fits)
  const scale = left / (times * sum(pattern) + first)
  const gap = Math.max(FINE, start, end)
  const rest = others.map((part, k) => Math.max(part * scale, k % 2 === 0 ? gap : FINE))
  const dash = (left - times * sum(rest)) / (times + 1)
  // No fold is so short in any card that can be made by hand.
  if (!(dash > FINE)) {
    const small = long / (sum(pattern) + first)
    return whole(small > 0 ? pattern.map((part) => part * small) : pattern)
  }
  const parts = [dash, ...rest]
  return { dash: parts, phase: start > 0 ? sum(parts) - start : 0 }
}

/** So many dots at least tell an old fold from a speck, where they fit. */
const FEWEST_DOTS = 4

/** Of an old fold: dots, and at either end a gap, so that none closes up with a cut. */
function dotted([dot = 0, gap = 0]: readonly number[], long: number): Dashes {
  const fits = Math.floor((long - FINE) / (dot + FINE))
  const count = Math.max(1, Math.min(fits, Math.max(FEWEST_DOTS, Math.round((long - gap) / (dot + gap)))))
  const wide = Math.min(dot, long / 3)
  return wide > 0 ? { dash: [wide, (long - count * wide) / (count + 1)], phase: wide } : whole([dot, gap])
}

/**
 * The dashes of one line: the pattern stretched or shrunk a little, so that the line begins and ends with a dash
 * and both its ends can be seen. Even the shortest fold shows its pattern once: a mountain of 6 mm is dash, dot,
 * dash, a valley dash, dash. What it meets it keeps clear of (`clear`) by where its dashes begin: its points stay.
 */
export function dashesOf({ role, runs, clear = [0, 0] }: Pick<SheetPath, 'role' | 'runs' | 'clear'>): Dashes {
  const { dash } = lookOf(role)
  const [run, ...others] = runs
  const [first = 0] = dash
  if (first === 0 || run === undefined || others.length > 0) return whole(dash)
  const long = run.slice(1).reduce((far, [x, y], k) => {
    const [u, v] = run[k] ?? [x, y]
    return far + Math.hypot(x - u, y - v)
  }, 0)
  if (role === 'valley' || role === 'mountain') return foldDashes(dash, long, clear)
  if (role === 'crease') return dotted(dash, long)
  const times = Math.max(1, Math.round((long - first) / sum(dash)))
  const scale = long / (times * sum(dash) + first)
  return whole(scale > 0 ? dash.map((part) => part * scale) : dash)
}

/** Words on paper: labels red, asides quiet, all else black. */
export const inks = { note: INK, dimension: RED, guide: QUIET } as const satisfies Partial<
  Record<Role, Colour>
>

export const inkOf = (role: Role): Colour => (inks as Partial<Record<Role, Colour>>)[role] ?? INK
