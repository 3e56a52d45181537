// How long it takes from a hand's move to new marks, figure by figure, and how long the checks take. Printed, not judged.
import { readFileSync } from 'node:fs'
import { chart } from '../../src/drawing/chart/chart.ts'
import { pattern } from '../../src/drawing/pattern/pattern.ts'
import { section } from '../../src/drawing/section/section.ts'
import { DEFAULT_CAMERA, view } from '../../src/drawing/view/view.ts'
import type { Design } from '../../src/paper/index.ts'
import { check, compile, dragHandle, handlesOf, measure, parseDesign } from '../../src/paper/index.ts'
import { table } from './rivals/table.ts'

const size = { width: 520, height: 420 }

const dummy = (name: string): Design =>
  parseDesign(
    JSON.parse(
      readFileSync(new URL(`../../content/dummies/${name}.hingebook.json`, import.meta.url), 'utf8'),
    ),
  )

/** A hand that moves a slit's end, or a layer's corner, to and fro by a few millimetres. */
function hand(made: Design): () => Design {
  const handle = handlesOf(made)[0]
  if (!handle) return () => made
  let k = 0
  return () => {
    k = (k + 1) % 40
    const off = 4 * Math.sin((k * Math.PI) / 20)
    return dragHandle(made, handle.id, handle.name, [handle.at[0] + off, handle.at[1] + off / 3])
  }
}

for (const name of ['beak', 'heron', 'layers', 'reeds']) {
  const made = dummy(name)
  const moved = hand(made)
  const first = made.mechanisms[0]?.id ?? ''
  let opening = 60
  const turned = (): number => {
    opening = opening >= 130 ? 60 : opening + 0.5
    return opening
  }
  const poser = compile(made)
  const frame = (after: Design, at: number): void => {
    const own = compile(after)
    view(own, at, DEFAULT_CAMERA, size, { handle: true, rise: [first] })
    pattern(after, size, { handles: true })
    section(own, at, first, size)
    chart(after, at, size)
    measure(after, at)
  }
  const once = (run: () => unknown) => ({ times: 1, run: () => void run() })
  await table(`${name}: ${made.mechanisms.length} mechanisms`, [
    { name: 'a drag in the pattern, all four figures', ...once(() => frame(moved(), 75)) },
    { name: 'the card opened, all four figures', ...once(() => frame(made, turned())) },
    {
      name: 'view alone',
      ...once(() => view(poser, turned(), DEFAULT_CAMERA, size, { handle: true, rise: [first] })),
    },
    {
      name: 'pattern alone',
      ...once(() => pattern(made, size, { handles: true })),
    },
    { name: 'section alone', ...once(() => section(poser, turned(), first, size)) },
    { name: 'chart alone', ...once(() => chart(made, turned(), size)) },
    { name: 'checks, without repairs', ...once(() => check(moved(), { repairs: false })) },
    { name: 'checks, with repairs', ...once(() => check(moved())) },
  ])
}
