import type { JSX } from 'preact'
import { ChartFigure } from '../figures/ChartFigure.tsx'
import { leadOf } from '../state/state.ts'
import type { WithinBench } from './use-bench.ts'
import { useBench } from './use-bench.ts'

/** The chart: an island within its bench, which comes when it is seen. */
export function BenchChart(props: WithinBench): JSX.Element {
  const bench = useBench(props)
  return <ChartFigure bench={bench} lead={leadOf(bench.start.design, props.config)?.id} />
}
