import { expect, test } from 'vitest'
import { bareNode } from './tree.ts'

const SCRIPT = `
import('./src/paper/index.ts').then(({ parseDesign, poseAt }) => {
  const design = parseDesign({
    hingebook: 1, title: 'Wedge', card: { width: 105, height: 148 },
    mechanisms: [{ id: 'beak', kind: 'cut-v-fold', on: 'gutter', apex: 110, run: -40, cut: 40 }],
  })
  console.log(JSON.stringify(poseAt(design, 90).panels['beak/left'][1]))
})`

test('the kernel runs in bare Node, with no build', () => {
  const { code, out, err } = bareNode('--input-type=commonjs', '-e', SCRIPT)
  expect(err).toBe('')
  expect(code).toBe(0)
  // 45/45 at 90 degrees: the ridge tip stands two thirds of the ridge above the page (the mirror image
  // of the gutter in the plane of the two fold lines, worked by hand), straight above the gutter.
  const [x, y, z] = JSON.parse(out) as [number, number, number]
  expect(x).toBeCloseTo(0, 9)
  expect(z * Math.sin(Math.PI / 4)).toBeCloseTo((2 / 3) * 40, 9)
  expect(y).toBeCloseTo(110 - 40 / 3, 9)
})

const POSES = 100_000

const GARBAGE = `
import('./src/paper/index.ts').then(async ({ compile, parseDesign }) => {
  const { readFileSync } = await import('node:fs')
  const design = parseDesign(JSON.parse(readFileSync('content/dummies/night-garden.hingebook.json', 'utf8')))
  const poser = compile(design)
  let opening = 0
  const pose = (count) => { for (let k = 0; k < count; k++) poser(opening = (opening + 7.3) % 170 + 1) }
  pose(${POSES / 5})
  gc()
  const before = process.memoryUsage().heapUsed
  pose(${POSES})
  console.log((process.memoryUsage().heapUsed - before) / ${POSES})
})`

// A hand that drags poses the card sixty times a second: what each pose leaves behind is swept up in pauses.
test('posing a card over and over leaves nothing behind in memory', () => {
  const { code, out, err } = bareNode(
    ...['--expose-gc', '--min-semi-space-size=256', '--max-semi-space-size=256'],
    ...['--input-type=commonjs', '-e', GARBAGE],
  )
  expect(err).toBe('')
  expect(code).toBe(0)
  // One number, the opening itself, that the loop hands over: 16 bytes in V8.
  expect(Number(out)).toBeLessThan(32)
})

test('the project brings a Node that can, whatever the machine has', () => {
  const { out } = bareNode('-p', 'process.versions.node')
  expect(Number(out.split('.')[0])).toBeGreaterThanOrEqual(24)
})
