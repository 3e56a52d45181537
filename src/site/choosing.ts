/** What somebody may look for, in the order in which it is offered. */
import * as says from '../../content/words/site/choose.ts'

export const WANTS = [
  { name: 'rises', label: says.rises },
  { name: 'swings', label: says.swings },
  { name: 'sweeps', label: says.sweeps },
  { name: 'turns', label: says.turns },
  { name: 'mouth', label: says.mouth },
  { name: 'platform', label: says.platform },
  { name: 'guest', label: says.guest },
  { name: 'uncut', label: says.uncut },
] as const
