// How long a drag frame's drawings take, from the design to the marks: the heron with two V-folds and two eyes.
import { Bench } from 'tinybench'
import { chart } from '../../src/drawing/chart/chart.ts'
import { pattern } from '../../src/drawing/pattern/pattern.ts'
import { toSvg } from '../../src/drawing/pen/svg.ts'
import { section } from '../../src/drawing/section/section.ts'
import { DEFAULT_CAMERA, view } from '../../src/drawing/view/view.ts'
import { change, compile } from '../../src/paper/index.ts'
import { heron } from '../drawing/garden.ts'

const size = { width: 600, height: 440 }

let frame = 0

/** A new opening and a new slit each time: nothing can be kept from the frame before. */
const next = () => {
  frame = (frame + 7) % 170
  return { opening: 5 + frame, design: change(heron, 'beak', { cut: 30 + frame / 10 }) }
}

const poser = compile(heron)

const bench = new Bench({ time: 1000, warmupTime: 500, retainSamples: true })

bench
  .add('view, the same design', () =>
    view(poser, next().opening, DEFAULT_CAMERA, size, { rise: ['beak'], handle: true }),
  )
  .add('view, a new design', () => {
    const { design, opening } = next()
    view(design, opening, DEFAULT_CAMERA, size, {
      rise: ['beak'],
      handle: true,
    })
  })
  .add('pattern', () => pattern(next().design, size, { handles: true }))
  .add('section', () => {
    const { design, opening } = next()
    section(design, opening, 'beak', size)
  })
  .add('chart', () => {
    const { design, opening } = next()
    chart(design, opening, size, { of: ['beak', 'jaw'] })
  })
  .add('all four, a new design', () => {
    const { design, opening } = next()
    view(design, opening, DEFAULT_CAMERA, size, { rise: ['beak'], handle: true })
    pattern(design, size, { handles: true })
    section(design, opening, 'beak', size)
    chart(design, opening, size, { of: ['beak', 'jaw'] })
  })
  .add('all four, as SVG text', () => {
    const { design, opening } = next()
    toSvg(view(design, opening, DEFAULT_CAMERA, size, { rise: ['beak'], handle: true }))
    toSvg(pattern(design, size, { handles: true }))
    toSvg(section(design, opening, 'beak', size))
    toSvg(chart(design, opening, size, { of: ['beak', 'jaw'] }))
  })

await bench.run()

console.log('Drawings of the heron, milliseconds')

console.table(
  bench.tasks.map(({ name, result }) => {
    const latency = 'latency' in result ? result.latency : undefined
    return {
      what: name,
      median: latency?.p50.toFixed(3),
      p95: latency?.samples && percentile(latency.samples, 0.95),
      p99: latency?.p99.toFixed(3),
    }
  }),
)

function percentile(samples: readonly number[], part: number): string {
  const sorted = [...samples].sort((a, b) => a - b)
  return (sorted[Math.floor(part * (sorted.length - 1))] ?? Number.NaN).toFixed(3)
}
