import type { Design } from '../../paper/index.ts'
import type { BenchConfig } from '../state/config.ts'

/** What a field for the reader's ruler is told of its page. */
export interface MeasureYoursProps {
  readonly slug: string
  /** The design with which the page begins: the one of the printed template, until the bench says otherwise. */
  readonly design: Design
  readonly config: BenchConfig
  /** The mechanism whose rise is read; the bench's lead if left out. */
  readonly id?: string
  /** The opening at which the reader measures, degrees; 90 if left out. */
  readonly at?: number
}

/** What was typed, by what was measured. */
export type Texts = Readonly<Record<string, string>>
