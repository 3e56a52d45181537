import type { Design } from '../paper/index.ts'
import { withTabs } from '../paper/index.ts'
import type { Options } from './command.ts'
import { Refusal } from './refusal.ts'
import { given } from './write-out.ts'

export const TABS_HELP =
  'TABS: all tabs glued on the card (flat) or pushed through slits in it and glued behind (slit); as the file has them, unless said.'

/** The design with its tabs as they are asked for. */
export function withAskedTabs(design: Design, { tabs }: Options): Design {
  if (tabs === undefined) return design
  if (tabs === 'flat' || tabs === 'slit') return withTabs(design, tabs)
  throw new Refusal(`--tabs must be one of flat, slit${given(tabs)}.`)
}
