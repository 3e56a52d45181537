/** What a page tells the tools at the wall of itself. */
import * as keys from '../../../content/words/key-names.ts'
import * as says from '../../../content/words/wall.ts'

/** A key, as it stands on a keyboard, and what it does. */
export interface KeyTold {
  readonly key: string
  readonly says: string
}

/** A question whose answers a class votes on by hands. */
export interface Asked {
  readonly asks: string
  readonly guesses: readonly { readonly says: string; readonly right: boolean }[]
  readonly covered: boolean
  readonly onCover: (covered: boolean) => void
}

export interface AtWall {
  /** The page's own keys: the clicker does what the page does, and no tool takes these. */
  readonly keys: readonly KeyTold[]
  /** Brings to rest what moves by itself; left out where nothing moves and nothing is to freeze. */
  readonly rest?: () => void
  /** What is asked just now, or null; left out where the page never asks. */
  readonly asked?: Asked | null
  /** Opens the window for the teacher alone; left out where there are no notes. */
  readonly notes?: () => void
}

export type Tool = 'draw' | 'point' | 'freeze' | 'timer' | 'hands' | 'keys'

/** What a teacher can turn on over a page. */
export const TOOLS: readonly {
  readonly tool: Tool
  readonly label: string
  readonly key: string
  readonly says: string
}[] = [
  { tool: 'draw', label: says.draw, key: 'd', says: says.drawDoes },
  { tool: 'point', label: says.point, key: 'p', says: says.pointDoes },
  { tool: 'freeze', label: says.freeze, key: 'f', says: says.freezeDoes },
  { tool: 'timer', label: says.timer, key: 't', says: says.timerDoes },
  { tool: 'hands', label: says.countHands, key: 'h', says: says.countHandsDoes },
  { tool: 'keys', label: says.keys, key: '?', says: says.keysDoes },
]

/** The tools that a page has a use for. */
export const toolsFor = ({ rest, asked }: AtWall): typeof TOOLS =>
  TOOLS.filter(({ tool }) => (tool === 'freeze' ? rest : tool === 'hands' ? asked !== undefined : true))

export const WIPE: KeyTold = { key: 'W', says: says.wipeDoes }

export const NOTES: KeyTold = { key: 'N', says: says.notesDoes }

export const AWAY: KeyTold = { key: keys.escapeKey, says: says.putAwayDoes }

/** All keys that work while the tools are out: the page's own first. */
export const keysFor = (
  at: AtWall,
): { readonly page: readonly KeyTold[]; readonly tools: readonly KeyTold[] } => ({
  page: at.keys,
  tools: [
    ...toolsFor(at).map(({ key, says: does }) => ({ key: key.toUpperCase(), says: does })),
    WIPE,
    ...(at.notes ? [NOTES] : []),
    AWAY,
  ],
})
