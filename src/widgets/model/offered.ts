import type { Design } from '../../paper/index.ts'
import type { BenchConfig } from '../state/config.ts'
import type { BenchChoice, BenchField } from '../state/fields.ts'
import { benchChoices, benchFields } from '../state/fields.ts'
import type { Bench } from './bench-model.ts'

/** What a bench offers to be set. */
export interface Offered {
  readonly fields: readonly BenchField[]
  readonly choices: readonly BenchChoice[]
}

const made = new WeakMap<BenchConfig, Offered & { readonly base: Design }>()

/**
 * What a bench offers to be set: it follows from the configuration, and stays while the card is changed. Throws a
 * RangeError if the configuration names what the design does not have.
 */
export function offeredBy({ config, base }: Pick<Bench, 'config' | 'base'>): Offered {
  let offered = made.get(config)
  if (offered?.base !== base) {
    offered = { base, fields: benchFields(base, config), choices: benchChoices(base, config) }
    made.set(config, offered)
  }
  return offered
}
