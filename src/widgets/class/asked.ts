/** What is asked of the workers beside the page, and what they answer. */
import type { Order, Sheet } from '../../class/class.ts'
import type { Readings } from '../../class/readings.ts'
import type { Shopping } from '../../class/shopping.ts'
import type { Measured } from '../../class/spread.ts'
import type { Together } from '../../class/together.ts'
import type { Design } from '../../paper/index.ts'

/** An order in which what differs may be left to the card: `first`, `none`, or a size by its name. */
export type Wanted = Omit<Order, 'choice'> & {
  readonly choice: Omit<Order['choice'], 'differs'> & { readonly differs: string }
}

/** The sheets of a class without their designs. */
export interface ShownClass {
  /** Of what the class makes. */
  readonly design: Design
  readonly sizes: readonly Measured[]
  readonly measured: Measured | null
  readonly differs: boolean
  readonly sheets: readonly Omit<Sheet, 'design'>[]
  readonly notes: readonly string[]
  /** What must be on the tables, in sentences. */
  readonly shopping: readonly string[]
  readonly curve: readonly { readonly size: number; readonly value: number }[]
}

/** What one reading shows. */
export interface Compared {
  readonly code: string
  readonly off: number
  readonly says: readonly string[]
}

export type Ask =
  | { readonly what: 'class'; readonly wanted: Wanted }
  | { readonly what: 'compare'; readonly wanted: Wanted; readonly readings: Readings }
  | { readonly what: 'pack'; readonly wanted: Wanted; readonly only: 'sheets' | null }

export type Answer =
  | { readonly to: 'told'; readonly done: number; readonly of: number }
  | { readonly to: 'class'; readonly shown: ShownClass }
  | { readonly to: 'compare'; readonly compared: readonly Compared[]; readonly together: Together | null }
  | {
      readonly to: 'pack'
      readonly bytes: Uint8Array<ArrayBuffer>
      readonly pages: number
      readonly shopping: Shopping
    }
  | { readonly to: 'fault'; readonly sentence: string }
