import type { PathMark, Role } from '../../drawing/pen/marks.ts'

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

/**
 * The dashes of one line, mm: the pattern stretched or shrunk a little, so that the line begins and ends
 * with a dash and both its ends can be seen. Even the shortest fold shows its pattern once: a mountain of
 * 6 mm is dash, dot, dash, a valley dash, dash.
 */
export function dashesOf({ role, runs }: PathMark): readonly number[] {
  const { dash } = lookOf(role)
  const [run, ...others] = runs
  const [first = 0] = dash
  if (first === 0 || run === undefined || others.length > 0) return dash
  const long = run.slice(1).reduce((sum, [x, y], k) => {
    const [u, v] = run[k] ?? [x, y]
    return sum + Math.hypot(x - u, y - v)
  }, 0)
  const period = dash.reduce((sum, part) => sum + part, 0)
  const times = Math.max(1, Math.round((long - first) / period))
  const scale = long / (times * period + first)
  return scale > 0 ? dash.map((part) => part * scale) : dash
}

/** Words on paper: labels red, asides quiet, all else black. */
export const inks = { note: INK, dimension: RED, guide: QUIET } as const satisfies Partial<
  Record<Role, Colour>
>

export const inkOf = (role: Role): Colour => (inks as Partial<Record<Role, Colour>>)[role] ?? INK
