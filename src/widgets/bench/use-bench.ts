import { useState } from 'preact/hooks'
import type { Check } from '../../paper/index.ts'
import type { Bench } from '../model/bench-model.ts'
import { benchModel } from '../model/bench-model.ts'
import type { DesignSource } from '../model/brought.ts'
import { designFrom } from '../model/brought.ts'
import { benchOf, coverAtFirst } from '../model/page.ts'
import type { BenchConfig } from '../state/config.ts'

/** What an island within a bench is told of it. */
export interface WithinBench {
  readonly slug: string
  readonly design: DesignSource
  readonly config: BenchConfig
}

/** The bench that an island stands in: the one awake on the page; while the page is made, one as it will be. */
export function useBench({ slug, design, config }: WithinBench, checks?: readonly Check[]): Bench {
  const living = benchOf(slug).value
  const [first] = useState(() => {
    if (living) return living
    coverAtFirst(config)
    return benchModel(designFrom(design), config, checks ? { checks } : {})
  })
  return living ?? first
}
