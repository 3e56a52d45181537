import { notOneOf } from '../../content/words/command/options.ts'
import type { Design } from '../paper/index.ts'
import { withTabs } from '../paper/index.ts'
import type { Options } from './command.ts'
import { Refusal } from './refusal.ts'

/** The design with its tabs as they are asked for. */
export function withAskedTabs(design: Design, { tabs }: Options): Design {
  if (tabs === undefined) return design
  if (tabs === 'flat' || tabs === 'slit') return withTabs(design, tabs)
  throw new Refusal(notOneOf('tabs', ['flat', 'slit'], tabs))
}
