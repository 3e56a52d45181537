// How many small wrong changes the unit tests notice.
// Stryker 10.1 with its vitest runner was tried first. It starts on vitest 5, but runs all that covers a line for each
// change, all 1,632 tests for most of the kernel: 165 s to begin, and the 100 changes of one small file not done in
// five minutes more. It draws no sample and bounds no change's time, so here is a small tester that does.
// npm run mutate -- [path ...] [--sample 40] [--draw 1] [--budget 20] [--all]
import type { ChildProcess } from 'node:child_process'
import { fork } from 'node:child_process'
import { readdirSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { ROOT, textOf, treeFiles } from '../house/tree.ts'
import { isNamed, stale } from './equivalents.ts'
import type { Mutant } from './mutants.ts'
import { mutantsOf } from './mutants.ts'
import { keepSeconds, ordered, reachOf, secondsKept, timeOf } from './reach.ts'
import type { Answer, Told } from './trial.ts'

const USAGE = `npm run mutate -- [path ...] [options]
  path          a file or folder of src; by default src/paper, src/making, src/sheet, src/cutter, src/booklet, src/class, src/drawing and src/widgets
  --sample 40   how many mutants of each room are tried (0: all)
  --total 60    instead: how many are tried in all, drawn from all alike
  --draw 1      which ones are drawn; the same number draws the same ones
  --budget 20   seconds of tests that a mutant gets, nearest and quickest first; what outlives them counts as alive. At least one
  --all         lists the killed ones too`

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    sample: { type: 'string', default: '40' },
    total: { type: 'string', default: '0' },
    draw: { type: 'string', default: '1' },
    budget: { type: 'string', default: '20' },
    all: { type: 'boolean', default: false },
    help: { type: 'boolean', default: false },
  },
})
const [sample, total, draw, budget] = [values.sample, values.total, values.draw, values.budget].map(
  Number,
) as [number, number, number, number]
if (values.help || ![sample, total, draw, budget].every((n) => n >= 0)) {
  console.log(USAGE)
  process.exit(values.help ? 0 : 1)
}

/** Widgets that draw their own page (.tsx) are tested in a browser; here only what they know. */
const WHERE = [
  'src/paper',
  'src/making',
  'src/sheet',
  'src/cutter',
  'src/booklet',
  'src/class',
  'src/drawing',
  'src/widgets',
]

const isIn = (file: string, path: string): boolean => file === path || file.startsWith(`${path}/`)

const roomOf = (file: string): string => {
  const parts = file.split('/')
  return parts.slice(0, Math.min(3, parts.length - 1)).join('/')
}

/** A number from 0 to 1 that a text and the draw decide. (FNV-1a, Fowler, Noll and Vo 1991.) */
function lot(text: string): number {
  let hash = 2166136261
  for (const letter of `${draw} ${text}`) hash = Math.imul(hash ^ letter.charCodeAt(0), 16777619) >>> 0
  hash = Math.imul(hash ^ (hash >>> 15), 2246822519) >>> 0
  return ((hash ^ (hash >>> 13)) >>> 0) / 2 ** 32
}

const lineOf = (text: string, { line }: Mutant): string => (text.split('\n')[line - 1] ?? '').trim()

const show = (mutant: Mutant): string =>
  `${mutant.file}:${mutant.line}  ${mutant.was.replace(/\s+/g, ' ')} -> ${mutant.now.replace(/\s+/g, ' ')}   in  ${lineOf(textOf(mutant.file), mutant)}`

const paths = (positionals.length > 0 ? positionals : WHERE).map((path) => path.replace(/\/$/, ''))
const files = treeFiles().filter(
  (file) =>
    file.endsWith('.ts') && WHERE.some((path) => isIn(file, path)) && paths.some((path) => isIn(file, path)),
)
const texts = new Map(files.map((file) => [file, textOf(file)]))
const named = { count: 0 }
const rooms = new Map<string, Mutant[]>()
for (const [file, text] of texts) {
  const room = rooms.get(roomOf(file)) ?? []
  rooms.set(roomOf(file), room)
  const all = mutantsOf(file, text)
  for (const mutant of all) {
    if (isNamed(mutant, text, all)) named.count++
    else room.push(mutant)
  }
}
const all = [...rooms.values()].flat()

/** So many of them, as the draw has it. */
function drawn(mutants: readonly Mutant[], most: number): Mutant[] {
  const lots = mutants.map((mutant) => ({ mutant, at: lot(`${show(mutant)} ${mutant.start}`) }))
  const taken = lots.sort((a, b) => a.at - b.at).slice(0, most === 0 ? lots.length : most)
  return taken.map(({ mutant }) => mutant)
}

// From all alike they are tried as they are drawn: whoever stops on the way has a fair sample of them.
const tried =
  total > 0
    ? drawn(all, total)
    : [...rooms.values()].flatMap((one) =>
        drawn(one, sample).sort((a, b) => a.file.localeCompare(b.file) || a.start - b.start),
      )

const reach = reachOf()
const seconds = new Map(secondsKept())
let child: ChildProcess | null = null

const told = (from: ChildProcess): Promise<Answer> =>
  new Promise((resolve, reject) => {
    from.once('message', (answer) => resolve(answer as Answer))
    from.once('exit', (code) => reject(new Error(`the tests could not run (exit ${code})`)))
  })

async function started(): Promise<ChildProcess> {
  const fresh = fork(join(ROOT, 'tests/mutate/trial.ts'), { stdio: ['ignore', 'ignore', 'inherit', 'ipc'] })
  await told(fresh)
  fresh.send({ mutants: tried } satisfies Told)
  return fresh
}

const stop = (): void => {
  child?.kill('SIGKILL')
  child = null
}

/** What tests of pictures wrote of changed ones. */
function tidy(): void {
  for (const folder of ['tests/drawing/output', 'tests/sheet/output'])
    for (const name of readdirSync(join(ROOT, folder)))
      if (name.endsWith('-changed.svg')) rmSync(join(ROOT, folder, name))
}

/** What a test file says of a mutant; null: it never ends. */
async function trial(number: number, test: string): Promise<Answer | null> {
  child ??= await started()
  const running = child
  let timer: NodeJS.Timeout | undefined
  const never = new Promise<null>((resolve) => {
    timer = setTimeout(() => resolve(null), 1000 * (60 + 15 * (seconds.get(test) ?? 10)))
  })
  running.send({ number, test } satisfies Told)
  const answer = await Promise.race([told(running), never])
  clearTimeout(timer)
  running.removeAllListeners('exit')
  if (!answer) stop()
  return answer
}

const started0 = Date.now()
console.log(`${tried.length} of ${all.length} mutants; ${named.count} more are named as equivalent.`)
for (const line of stale(texts)) console.log(`Named as equivalent, but no longer there: ${line}`)

const score = new Map<string, { killed: number; tried: number }>()

/** Ninety-five per cent bounds of a share. (E. B. Wilson 1927.) */
function wilson(killed: number, all: number): readonly [number, number] {
  const [z, p] = [1.96, killed / all]
  const middle = (p + (z * z) / (2 * all)) / (1 + (z * z) / all)
  const half = (z / (1 + (z * z) / all)) * Math.sqrt((p * (1 - p)) / all + (z * z) / (4 * all * all))
  return [middle - half, middle + half]
}

const percent = (share: number): string => `${Math.round(100 * share)}`.padStart(3)

/**
 * A layer's score is that of its rooms, each weighed by how many mutants it has: a room's sample may be a
 * small part of it. Drawn from all alike, all weigh alike.
 */
function report(): void {
  console.log('\nroom                                   killed   tried      of   score')
  const layers = new Map<string, { weight: number; share: number; tried: number; killed: number }>()
  for (const [room, { killed, tried: of }] of score) {
    const has = rooms.get(room)?.length ?? of
    const weight = total > 0 ? of : has
    console.log(
      `${room.padEnd(38)} ${String(killed).padStart(6)}  ${String(of).padStart(6)}  ${String(has).padStart(6)}   ${percent(killed / of)} %`,
    )
    const own = room.split('/').slice(0, 2).join('/')
    for (const layer of [own, own === 'src/paper' ? 'the kernel' : 'all the rest']) {
      const sum = layers.get(layer) ?? { weight: 0, share: 0, tried: 0, killed: 0 }
      layers.set(layer, {
        weight: sum.weight + weight,
        share: sum.share + (weight * killed) / of,
        tried: sum.tried + of,
        killed: sum.killed + killed,
      })
    }
  }
  for (const [layer, { weight, share, tried: of, killed }] of layers) {
    const [low, high] = wilson(killed, of)
    console.log(
      `${layer}: ${percent(share / weight)} % die${total > 0 ? '' : ', weighed by room'} (of ${of} tried ${killed}: between ${percent(low)} and ${percent(high)} %, 19 times in 20)`,
    )
  }
  console.log(`${Math.round((Date.now() - started0) / 1000)} s`)
}

// Whoever has no time for all of them is told what is known so far.
for (const signal of ['SIGINT', 'SIGTERM'] as const)
  process.once(signal, () => {
    stop()
    tidy()
    report()
    process.exit(1)
  })

/** The mutants that each test comes by, if it passes on the sources as they are: else it can tell nothing (null). */
const sound = new Map<string, ReadonlySet<number> | null>()

/** Which of the mutants a test comes by, where it passes on the sources as they are: else it can tell nothing (null). */
async function soundness(test: string): Promise<ReadonlySet<number> | null> {
  const before = sound.get(test)
  if (before !== undefined) return before
  const answer = await trial(0, test)
  const seen = answer && !answer.failed ? new Set(answer.seen) : null
  if (!seen) console.log(`left out: ${test} fails on the sources as they are`)
  else if (answer) {
    // The least that it ever took: a machine that was busy says nothing of the test.
    seconds.set(test, Math.min(answer.seconds, seconds.get(test) ?? answer.seconds))
    keepSeconds(seconds)
  }
  sound.set(test, seen)
  return seen
}

/** By file and by room: the tests that have killed there, the last one first; they are asked first. */
const killers = new Map<string, readonly string[]>()

/** Those that a test comes by at all. */
const met = new Set<number>()

/** After so many tests that do not come by a mutant the farther ones are not asked: each must be run once for that. */
const IN_VAIN = 24

/** What kills a mutant: a test file, that one never ends, or nothing (null). */
async function killerOf(number: number, file: string): Promise<string | null> {
  const places = [file, roomOf(file)]
  const tests = ordered(file, reach.get(file) ?? new Map(), seconds)
  const before = places.flatMap((place) => killers.get(place) ?? []).filter((test) => tests.includes(test))
  let [spent, vain] = [0, 0]
  for (const test of new Set([...before, ...tests])) {
    const takes = timeOf(test, seconds)
    if (test !== tests[0] && spent + takes > budget) continue
    if (vain > IN_VAIN) break
    if (!(await soundness(test))?.has(number)) {
      vain++
      continue
    }
    met.add(number)
    spent += takes
    const answer = await trial(number, test)
    if (answer && !answer.failed) continue
    for (const place of places)
      killers.set(place, [test, ...(killers.get(place) ?? []).filter((other) => other !== test)])
    return answer ? test : `${test}, which never ends`
  }
  return null
}

for (const [k, mutant] of tried.entries()) {
  const killer = await killerOf(k + 1, mutant.file)
  const room = score.get(roomOf(mutant.file)) ?? { killed: 0, tried: 0 }
  room.tried++
  if (killer !== null) room.killed++
  score.set(roomOf(mutant.file), room)
  if (k % 20 === 19) console.log(`... ${k + 1} of ${tried.length}`)
  if (killer === null) console.log(`${met.has(k + 1) ? 'alive  ' : 'not met'} ${show(mutant)}`)
  else if (values.all) console.log(`killed  ${show(mutant)}   by ${killer}`)
}
stop()
tidy()
report()
