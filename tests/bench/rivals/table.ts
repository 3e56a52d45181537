// Runs a few ways of doing one thing side by side and prints what they take.
import { Bench } from 'tinybench'

export interface Way {
  readonly name: string
  /** Does it `times` times over: a clock cannot see a single one of the short ones. */
  run(times: number): void
  readonly times: number
}

const figure = (value: number): string => (value >= 100 ? value.toFixed(0) : value.toPrecision(3))

const line = (cells: readonly string[], wide: readonly number[]): string =>
  cells.map((cell, k) => (k === 0 ? cell.padEnd(wide[k] ?? 0) : cell.padStart(wide[k] ?? 0))).join('   ')

/**
 * Prints a table: the median and the 95th percentile of each way in microseconds and, if the ways are rivals, how
 * many times the first one fits into it.
 */
export async function table(title: string, ways: readonly Way[], rivals = false): Promise<void> {
  const bench = new Bench({ time: 300, warmupTime: 150, retainSamples: true })
  for (const { name, run, times } of ways) bench.add(name, () => run(times))
  await bench.run()
  const rows = ways.map(({ name, times }) => {
    const result = bench.getTask(name)?.result
    if (!result || !('latency' in result)) throw new Error(`${name} did not run to its end`)
    const each = (milliseconds: number): number => (milliseconds * 1000) / times
    return { name, middle: each(result.latency.p50), slow: each(percentile(result.latency)) }
  })
  const first = rows[0]?.middle ?? Number.NaN
  const cells = [
    [title, 'median µs', '95 % below', ...(rivals ? ['times'] : [])],
    ...rows.map(({ name, middle, slow }) => [
      name,
      figure(middle),
      figure(slow),
      ...(rivals ? [(middle / first).toFixed(1)] : []),
    ]),
  ]
  const wide = [0, 1, 2, 3].map((k) => Math.max(...cells.map((row) => row[k]?.length ?? 0)))
  const [head, ...body] = cells.map((row) => line(row, wide))
  console.log(['', head, '-'.repeat(head?.length ?? 0), ...body].join('\n'))
}

/** The 95th percentile of all samples, which tinybench keeps sorted. */
function percentile({ samples }: { readonly samples: readonly number[] | undefined }): number {
  if (!samples || samples.length === 0) throw new Error('the samples were not kept')
  return samples[Math.floor(samples.length * 0.95)] as number
}
