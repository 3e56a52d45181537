// What the shelf of pieces says before and after a press. The page is linkedom's (ISC).
import { parseHTML } from 'linkedom'
import { h, render } from 'preact'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import type { Design } from '../../../src/paper/index.ts'
import type { PiecesProps } from '../../../src/widgets/pieces/PiecesDesk.tsx'
import { PiecesDesk } from '../../../src/widgets/pieces/PiecesDesk.tsx'
import { design, gluedMoth } from '../../paper/shared/designs.ts'

const NO_ROOM = 'There is no room on the moth’s left side.'

const made: Design = design([gluedMoth()])

let page: HTMLElement

beforeEach(() => {
  const { document } = parseHTML('<html><body><main></main></body></html>')
  vi.stubGlobal('document', document)
  vi.stubGlobal('requestAnimationFrame', (run: () => void) => setTimeout(run, 0))
  vi.stubGlobal('cancelAnimationFrame', clearTimeout)
  page = document.querySelector('main') as unknown as HTMLElement
})

afterEach(() => {
  render(null, page)
  vi.unstubAllGlobals()
})

const lay = (more: Partial<PiecesProps>) =>
  render(
    h(PiecesDesk, {
      design: made,
      panel: 'moth/left',
      piece: null,
      faults: [],
      sticksOut: false,
      isHit: false,
      glueFails: false,
      stick: async () => ({ sentence: NO_ROOM }),
      take: () => null,
      ...more,
    }),
    page,
  )

const told = (): (string | null)[] => [...page.querySelectorAll('p')].map((one) => one.textContent)

test('a shape for which there is no room is told, and nobody is asked to press as if nothing were', async () => {
  lay({})
  expect(told()).toEqual([expect.stringContaining('Press one to stick it on.')])
  // A hand comes later than what a slip does when it is laid down.
  await new Promise((resolve) => setTimeout(resolve, 50))
  page.querySelector<HTMLButtonElement>('.piece-shelf button')?.click()
  await vi.waitFor(() =>
    expect(told()).toEqual([NO_ROOM, 'Try another shape, or press another face of the card.']),
  )
  // Another face is another chance.
  lay({ panel: 'moth/right' })
  await vi.waitFor(() => expect(told()).toEqual([expect.stringContaining('Press one to stick it on.')]))
})
