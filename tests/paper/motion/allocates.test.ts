// A card in motion is posed sixty times a second, and each pause to collect what was thrown away is seen. Held against
// what the engine itself counts as in use (Node, process.memoryUsage).
import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { compile, parseDesign } from '../../../src/paper/index.ts'

const garden = parseDesign(
  JSON.parse(
    readFileSync(new URL('../../../content/dummies/garden.hingebook.json', import.meta.url), 'utf8'),
  ),
)

const POSES = 1000

test('posing a card allocates nothing after the first times', () => {
  const poser = compile(garden)
  const used = (run: () => void): number => {
    const before = process.memoryUsage().heapUsed
    run()
    return (process.memoryUsage().heapUsed - before) / POSES
  }
  const pose = () => {
    for (let k = 0; k < POSES; k++) poser(20 + ((k * 37) % 120))
  }
  // Until the engine has made it fast it takes numbers in boxes.
  for (let k = 0; k < 5; k++) pose()
  // A collection on the way makes a round meaningless.
  const rounds = Array.from({ length: 7 }, () => used(pose)).filter((bytes) => bytes >= 0)
  expect(Math.min(...rounds)).toBeLessThan(4)
})
