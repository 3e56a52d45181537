/**
 * How long one frame of a drag takes until the marks in the page are new: from the moment the page hears of
 * the move, and from the frame's own beginning. Where a painter paints the card beside the page: also how long it takes
 * from its being told until its picture is there. Needs the built site: npm run build. Layout and painting of the page
 * come after and are the browser's.
 */
import { existsSync } from 'node:fs'
import { createServer } from 'node:net'
import { fileURLToPath } from 'node:url'
import type { Page } from '@playwright/test'
import { chromium } from '@playwright/test'
import { BROWSER_ARGS, presentBrowser } from '../../src/house/browser.mjs'
import { serve } from '../../src/house/serve.mjs'

/** A frame at 60 Hz has 16.7 ms; half of it is left to the browser. */
const BUDGET = 8

const MOVES = 400

const drags = [
  { page: 'chapters/one-slit-two-v-folds', handle: 'End of the slit', across: 40, along: 20 },
  {
    page: 'chapters/one-slit-two-v-folds',
    handle: 'Opening, by the edge of the page',
    across: 60,
    along: 60,
  },
  { page: 'chapters/layers', handle: 'Corner of the body', across: 30, along: 20 },
  { page: 'chapters/it-starts-at-the-gutter', handle: 'Point', across: 60, along: 40 },
  {
    page: 'chapters/tents-and-floating-layers',
    handle: 'Opening, by the edge of the page',
    across: 60,
    along: 60,
  },
  { page: 'garden', handle: 'Opening, by the edge of the page', across: 60, along: 60 },
] as const

interface Times {
  /** From the start of the frame's work, and from the page's hearing of the move, to new marks; ms. */
  readonly work: readonly number[]
  readonly input: readonly number[]
  /** From a scene's being sent to its picture's coming, ms. */
  readonly painted: readonly number[]
}

/** Notes when a painter is told of a scene and when it answers; before any script of the page runs. */
function watchPainters(): void {
  const painted: number[] = []
  Object.assign(globalThis, { painted })
  const Plain = globalThis.Worker
  globalThis.Worker = class extends Plain {
    constructor(...parts: ConstructorParameters<typeof Plain>) {
      super(...parts)
      let begun = 0
      const send = this.postMessage.bind(this)
      this.postMessage = (message: { order?: string } | null, more?: object) => {
        if (message?.order === 'scene') begun = performance.now()
        send(message, more)
      }
      this.addEventListener('message', ({ data }: MessageEvent<{ answer?: string } | null>) => {
        if (data?.answer === 'painted') painted.push(performance.now() - begun)
      })
    }
  }
}

/** Notes when a frame's work begins and when the bench's marks have changed. */
function watch(): void {
  const times: { work: number[]; input: number[] } = { work: [], input: [] }
  Object.assign(globalThis, { times })
  let input: number | null = null
  let begun: number | null = null
  addEventListener('pointermove', () => (input ??= performance.now()), { capture: true })
  const ask = globalThis.requestAnimationFrame.bind(globalThis)
  globalThis.requestAnimationFrame = (run) =>
    ask((time) => {
      begun = performance.now()
      run(time)
    })
  const bench = document.querySelector('.bench')
  if (!bench) return
  new MutationObserver(() => {
    const now = performance.now()
    if (begun !== null && input !== null) {
      times.work.push(now - begun)
      times.input.push(now - input)
    }
    begun = null
    input = null
  }).observe(bench, { subtree: true, attributes: true, childList: true, characterData: true })
}

async function measured(page: Page, drag: (typeof drags)[number], origin: string): Promise<Times> {
  await page.goto(`${origin}/${drag.page}/`)
  // A bench wakes at the first sign of a hand.
  await page.mouse.move(3, 3)
  await page.mouse.move(4, 4)
  await page.locator('.bench[data-awake="true"]').first().waitFor()
  const handle = page.getByRole('slider', { name: drag.handle, exact: true })
  await handle.focus()
  // The kernel's checks come with the first touch; they are no part of a frame.
  await page.waitForTimeout(500)
  const box = await handle.boundingBox()
  if (!box) throw new Error(`${drag.handle} is not on the page`)
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
  await page.evaluate(watch)
  await page.mouse.move(x, y)
  await page.mouse.down()
  for (let k = 1; k <= MOVES; k++) {
    const t = (k / MOVES) * 6 * Math.PI
    await page.mouse.move(x + drag.across * Math.sin(t), y + drag.along * Math.sin(1.7 * t))
  }
  await page.mouse.up()
  return page.evaluate(() => {
    const { times, painted } = globalThis as unknown as { times: Times; painted: readonly number[] }
    return { ...times, painted }
  })
}

function quantile(values: readonly number[], part: number): number {
  const sorted = [...values].sort((a, b) => a - b)
  return sorted[Math.floor(part * (sorted.length - 1))] ?? Number.NaN
}

const freePort = (): Promise<number> =>
  new Promise((resolve, reject) => {
    const probe = createServer()
    probe.once('error', reject)
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address()
      probe.close(() => (typeof address === 'object' && address ? resolve(address.port) : reject(address)))
    })
  })

if (!existsSync(fileURLToPath(new URL('../../dist/index.html', import.meta.url)))) {
  console.log('Drag frame: there is no built site yet. Run npm run build, then npm run bench again.')
  process.exit(0)
}

const port = await freePort()

await serve(port)

const found = await presentBrowser()

const browser = await chromium.launch({
  args: [...BROWSER_ARGS],
  ...found,
})

const page = await browser.newPage({ viewport: { width: 1280, height: 800 } })

await page.addInitScript(watchPainters)

console.log(`Drag frame, ms (at most ${BUDGET} wanted at p95 from the move to new marks)`)

for (const drag of drags) {
  const { work, input, painted } = await measured(page, drag, `http://localhost:${port}`)
  const row = (values: readonly number[]) =>
    `p50 ${quantile(values, 0.5).toFixed(1)}, p95 ${quantile(values, 0.95).toFixed(1)}`
  console.log(
    `  ${drag.page}, ${drag.handle}: ${row(work)}; from the move: ${row(input)} (${work.length} frames); ` +
      `the card: ${row(painted)} (${painted.length} pictures)`,
  )
}

await browser.close()

process.exit(0)
