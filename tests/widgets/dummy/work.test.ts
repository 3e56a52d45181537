// The page's shelf: which dummies are there, and which lies on the table. The database is fake-indexeddb's.
import { IDBFactory } from 'fake-indexeddb'
import 'fake-indexeddb/auto'
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import type { Design } from '../../../src/paper/index.ts'
import type { Dummy } from '../../../src/widgets/dummy/model/dummy-model.ts'
import { dummyModel } from '../../../src/widgets/dummy/model/dummy-model.ts'
import { EMPTY, emptyBeside } from '../../../src/widgets/dummy/model/empty.ts'
import type { Work } from '../../../src/widgets/dummy/model/work.ts'
import { workOn } from '../../../src/widgets/dummy/model/work.ts'
import { NO_FRAMES } from '../../../src/widgets/model/frames.ts'

let open: Work[] = []

/** What of a browser the page's work asks for beside the database. */
beforeEach(() => {
  vi.stubGlobal('indexedDB', new IDBFactory())
  const kept = new Map<string, string>()
  vi.stubGlobal('localStorage', {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => kept.set(key, value),
  })
  vi.stubGlobal('document', new EventTarget())
  const page = new EventTarget()
  vi.stubGlobal('window', page)
  for (const name of ['addEventListener', 'removeEventListener'] as const)
    vi.stubGlobal(name, page[name].bind(page))
  vi.stubGlobal('location', { hash: '', pathname: '/dummy/', search: '' })
})

afterEach(async () => {
  for (const work of open) work.end()
  open = []
  await later(50)
  vi.unstubAllGlobals()
})

const later = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms))

/** The page, visited; `early` is done before it is known what lies there. */
async function visit(
  early = (_: Dummy): void => {},
): Promise<{ readonly dummy: Dummy; readonly work: Work }> {
  const dummy = dummyModel(EMPTY, NO_FRAMES)
  const coming = workOn(dummy)
  early(dummy)
  const work = await coming
  open.push(work)
  return { dummy, work }
}

const titleOf = ({ bench }: Dummy): string => bench.design.peek().title

const names = async (work: Work): Promise<readonly string[]> => {
  await work.look()
  return (work.entries.peek() ?? []).map(({ name }) => name).sort()
}

const withLayer = (design: Design): Design => ({
  ...design,
  mechanisms: [{ id: 'step', kind: 'cut-layer', on: 'gutter', start: 40, end: 80, left: 20, right: 20 }],
})

/** Adds a part, and waits until that is saved. */
async function addPart({ bench, put }: Dummy, work: Work): Promise<void> {
  put(withLayer(bench.design.peek()), 'Layer added.')
  await vi.waitFor(() => expect(work.saved.peek()?.state).toBe('saved'))
}

describe('an empty card', () => {
  test('is called by its number, and as none that is there', () => {
    expect(emptyBeside([]).title).toBe('My first dummy')
    expect(emptyBeside(['My first dummy']).title).toBe('My dummy 2')
    expect(emptyBeside(['My first dummy', 'My dummy 2']).title).toBe('My dummy 3')
    expect(emptyBeside(['Owl']).title).toBe('My dummy 2')
    // The first was deleted, and the second is still called so.
    expect(emptyBeside(['My dummy 2']).title).toBe('My dummy 3')
    expect(emptyBeside(['My dummy 2', 'My dummy 3']).title).toBe('My dummy 4')
    expect(emptyBeside(['Owl'])).toEqual({ ...EMPTY, title: 'My dummy 2' })
  })

  test('that is begun beside another is not called as that', async () => {
    const { dummy, work } = await visit()
    expect(titleOf(dummy)).toBe('My first dummy')
    await addPart(dummy, work)
    await work.beginEmpty()
    expect(titleOf(dummy)).toBe('My dummy 2')
    await addPart(dummy, work)
    expect(await names(work)).toEqual(['My dummy 2', 'My first dummy'])
    await work.beginEmpty()
    expect(titleOf(dummy)).toBe('My dummy 3')
  })
})

describe('the only card, deleted,', () => {
  test('leaves an empty one on the table, and nothing on the shelf until that has a part', async () => {
    const { dummy, work } = await visit()
    await addPart(dummy, work)
    const only = work.id()
    await work.remove(only)
    expect(dummy.bench.design.peek()).toEqual({ ...EMPTY, title: 'My dummy 2' })
    expect(dummy.slip.peek()).toBe('saved')
    expect(work.gone.peek()?.name).toBe('My first dummy')
    expect(work.saved.peek()).toBeNull()
    // A small picture of what lay there would have been drawn by then.
    await later(2000)
    expect(await names(work)).toEqual([])
    await addPart(dummy, work)
    expect(await names(work)).toEqual(['My dummy 2'])
    await work.restore(only)
    expect(await names(work)).toEqual(['My dummy 2', 'My first dummy'])
  })

  test('leaves another on the table where there is one', async () => {
    const { dummy, work } = await visit()
    await addPart(dummy, work)
    await work.beginEmpty()
    await work.remove(work.id())
    expect(titleOf(dummy)).toBe('My first dummy')
    expect(await names(work)).toEqual(['My first dummy'])
  })
})

describe('the shelf, looked at', () => {
  test('shows the card on the table as soon as that is saved', async () => {
    const { dummy, work } = await visit()
    dummy.put(withLayer(dummy.bench.design.peek()), 'Layer added.')
    dummy.slip.value = 'saved'
    await work.look()
    expect(work.entries.peek()).toEqual([])
    await vi.waitFor(() => expect(work.entries.peek()?.map(({ id }) => id)).toEqual([work.id()]))
    // Later changes come there as well.
    dummy.put({ ...dummy.bench.design.peek(), title: 'Owl' }, 'Renamed.')
    await vi.waitFor(() => expect(work.entries.peek()?.map(({ name }) => name)).toEqual(['Owl']))
  })

  test('is not put away by the card that comes on the table when the page has loaded', async () => {
    const first = await visit()
    await addPart(first.dummy, first.work)
    const again = await visit((dummy) => {
      dummy.slip.value = 'saved'
    })
    expect(again.dummy.bench.design.peek().mechanisms).toHaveLength(1)
    expect(again.dummy.slip.peek()).toBe('saved')
    // A card that is opened from the shelf puts it away.
    await again.work.open(again.work.id())
    expect(again.dummy.slip.peek()).toBeNull()
  })
})
