// How long a wish waits for its first and its last offer, and how long mending takes. Printed, not judged.
import { readFileSync } from 'node:fs'
import type { Design, Vec3, Wish } from '../../src/paper/index.ts'
import { finding, measure, mend, parseDesign } from '../../src/paper/index.ts'
import { broken, isSound, soundDesigns } from '../paper/shared/sound.ts'

const garden = parseDesign(
  JSON.parse(readFileSync(new URL('../../content/dummies/garden.hingebook.json', import.meta.url), 'utf8')),
)

function told(name: string, times: readonly number[]): void {
  const sorted = [...times].sort((a, b) => a - b)
  const at = (part: number) =>
    `${((sorted[Math.floor(part * (sorted.length - 1))] ?? 0) / 1000).toFixed(2)} s`
  console.log(`  ${name}: p50 ${at(0.5)}, p95 ${at(0.95)}, worst ${at(1)} (${times.length})`)
}

/** A wish for the tip that the last mechanism of a design has, on the design without it. */
function wishFor(made: Design, opening: number): { given: Design; wish: Wish } {
  const at = measure(made, opening).tips[made.mechanisms.at(-1)?.id ?? '']?.at as Vec3
  return { given: { ...made, mechanisms: made.mechanisms.slice(0, -1) }, wish: { opening, at } }
}

function asked(name: string, wishes: readonly { given: Design; wish: Wish }[]): void {
  const [first, last]: [number[], number[]] = [[], []]
  let given = 0
  for (const one of wishes) {
    const begun = performance.now()
    let seen = 0
    for (const find of finding(structuredClone(one.given), one.wish))
      if (find && !seen) seen = performance.now()
    if (seen) first.push(seen - begun)
    if (seen) given++
    last.push(performance.now() - begun)
  }
  told(`${name}, first offer`, first)
  told(`${name}, last`, last)
  console.log(`  ${name}: ${given} of ${wishes.length} given`)
}

function mended(name: string, designs: readonly Design[]): void {
  const times: number[] = []
  let sound = 0
  for (const design of designs) {
    const begun = performance.now()
    if (mend(structuredClone(design)).left.length === 0) sound++
    times.push(performance.now() - begun)
  }
  told(name, times)
  console.log(`  ${name}: ${sound} of ${designs.length} end sound`)
}

console.log('Answers (first offer within 1 s, last within 5 s, mending within 3 s wanted)')

asked(
  'wishes known to be possible',
  soundDesigns(30, 71).map((made, k) => wishFor(made, [60, 90, 120, 150][k % 4] as number)),
)

const places: readonly Vec3[] = [
  [0, 60, 60],
  [20, 100, 50],
  [-30, 40, 45],
  [0, 140, 70],
]

asked(
  'wishes on the garden, 25 mechanisms',
  places.map((at) => ({ given: garden, wish: { opening: 90, at } })),
)

mended(
  'random designs broken',
  soundDesigns(40, 83, 2)
    .map((made, k) => broken(made, 300 + k).made)
    .filter((made) => !isSound(made)),
)

mended(
  'the garden broken',
  Array.from({ length: 8 }, (_, k) => broken(garden, 500 + k).made).filter((made) => !isSound(made)),
)
