import { describe, expect, test } from 'vitest'
import type { Design } from '../../../src/paper/index.ts'
import { modelOf, parseDesign } from '../../../src/paper/index.ts'
import { packed, unpacked } from '../../../src/widgets/dummy/desk/parcel.ts'
import type { Chosen } from '../../../src/widgets/dummy/model/chosen.ts'
import {
  called,
  calledHere,
  configFor,
  isThere,
  ownerOf,
  placesOf,
} from '../../../src/widgets/dummy/model/chosen.ts'
import { dummyModel } from '../../../src/widgets/dummy/model/dummy-model.ts'
import { keyDoes } from '../../../src/widgets/dummy/model/keys.ts'
import { rowsOf } from '../../../src/widgets/dummy/model/rows.ts'
import { NO_FRAMES } from '../../../src/widgets/model/frames.ts'
import { offeredBy } from '../../../src/widgets/model/offered.ts'

const designOf = (...mechanisms: object[]): Design =>
  parseDesign({ hingebook: 1, title: 'Owl', card: { width: 105, height: 148 }, mechanisms })

const body = { id: 'body', kind: 'cut-v-fold', on: 'gutter', apex: 30, run: 60, cut: 40 }
const eye = { id: 'eye', kind: 'cut-v-fold', on: 'body/ridge', apex: 10, run: 14, cut: 9 }
const owl = designOf(body, eye)

describe('what is taken up', () => {
  test('is called as a maker would', () => {
    const names: readonly (readonly [Chosen, string])[] = [
      [{ what: 'fold', name: 'gutter' }, 'the gutter'],
      [{ what: 'face', name: 'page/left' }, 'the left page'],
      [{ what: 'fold', name: 'body/ridge' }, 'the ridge of the body'],
      [{ what: 'fold', name: 'body/left' }, 'the left fold of the body'],
      [{ what: 'face', name: 'body/left' }, 'the left face of the body'],
      [{ what: 'part', name: 'left-reed' }, 'the left reed'],
    ]
    for (const [thing, name] of names) expect(called(thing)).toBe(name)
    expect(calledHere({ what: 'fold', name: 'body/left' })).toBe('left fold')
    expect(calledHere({ what: 'face', name: 'moon/face' })).toBe('its face')
  })

  test('belongs to its mechanism, or to the card', () => {
    expect(ownerOf(owl, { what: 'fold', name: 'eye/right' })?.id).toBe('eye')
    expect(ownerOf(owl, { what: 'fold', name: 'gutter' })).toBeUndefined()
    expect(ownerOf(owl, { what: 'face', name: 'page/right' })).toBeUndefined()
    expect(ownerOf(owl, null)).toBeUndefined()
  })

  test('a fold and a face of one name are two things', () => {
    const places = placesOf(modelOf(owl), 'body')
    expect(places).toContainEqual({ what: 'fold', name: 'body/left' })
    expect(places).toContainEqual({ what: 'face', name: 'body/left' })
    expect(placesOf(modelOf(owl), 'nobody')).toEqual([])
    expect(placesOf(modelOf(owl)).map(({ name }) => name)).toEqual(['gutter', 'page/left', 'page/right'])
  })

  test('is gone when its mechanism is', () => {
    expect(isThere(owl, { what: 'fold', name: 'eye/ridge' })).toBe(true)
    expect(isThere(designOf(body), { what: 'fold', name: 'eye/ridge' })).toBe(false)
    expect(isThere(designOf(body), { what: 'part', name: 'eye' })).toBe(false)
  })

  test('can be made far too large, on a short fold too: what sticks out is told, and not refused', () => {
    const dummy = dummyModel(owl, NO_FRAMES)
    dummy.choose({ what: 'part', name: 'eye' })
    const { bench } = dummy
    const cut = offeredBy(bench).fields.find(({ key }) => key === 'eye.cut')
    if (!cut) throw new Error('no such size')
    // Farther than the ridge that it stands on is long, and than a page is wide.
    expect(cut.max).toBeGreaterThan(148)
  })

  test('offers its own sizes and handles, and none without an owner', () => {
    const { fields = [], handles = [], lead } = configFor(owl, { what: 'face', name: 'eye/left' })
    expect(lead).toBe('eye')
    expect(fields.every(({ id }) => id === 'eye')).toBe(true)
    expect(fields.map(({ field }) => field)).toEqual(expect.arrayContaining(['apex', 'run', 'cut', 'wedge']))
    expect(handles.length).toBeGreaterThan(0)
    expect(configFor(owl, null)).toMatchObject({ fields: [], handles: [] })
  })
})

describe('the outline', () => {
  const said = (chosen: Chosen | null) =>
    rowsOf(owl, modelOf(owl), chosen).map(({ level, label }) => `${level} ${label}`)

  test('lists pages, gutter, and each part under what it stands on', () => {
    expect(said(null)).toEqual(['1 Left page', '1 Gutter', '2 Body', '3 Eye', '1 Right page'])
  })

  test('lists the folds and faces of the part that is taken up, guests under their fold', () => {
    expect(said({ what: 'part', name: 'body' })).toEqual([
      '1 Left page',
      '1 Gutter',
      '2 Body',
      '3 ridge',
      '4 Eye',
      '3 left fold',
      '3 right fold',
      '3 left face',
      '3 right face',
      '1 Right page',
    ])
  })

  test('lists every part once, though a fold and a face share a name', () => {
    const moon = {
      id: 'moon',
      kind: 'rider',
      on: 'body/left',
      shape: [
        [4, 10],
        [4, 30],
        [12, 30],
      ],
      glue: [
        [5, 18],
        [5, 26],
        [9, 27],
      ],
    }
    const rows = rowsOf(designOf(body, eye, moon), modelOf(designOf(body, eye, moon)), null)
    expect(rows.filter(({ label }) => label === 'Moon')).toHaveLength(1)
    // Under the face that it is stuck on, not under the fold of the same name.
    const taken = rowsOf(designOf(body, eye, moon), modelOf(designOf(body, eye, moon)), {
      what: 'part',
      name: 'body',
    }).map(({ label }) => label)
    expect(taken[taken.indexOf('Moon') - 1]).toBe('left face')
  })
})

describe('a dummy', () => {
  test('says what was undone and what was done again, and nothing where there is nothing', () => {
    const dummy = dummyModel(designOf(), NO_FRAMES)
    dummy.put(designOf(body), 'Body added.', { what: 'part', name: 'body' })
    dummy.set('hidden', 'body', true)
    dummy.undo()
    expect(dummy.told.value).toBe('Undone: Body hidden.')
    dummy.undo()
    expect(dummy.told.value).toBe('Undone: Body added.')
    dummy.told.value = 'as it was'
    dummy.undo()
    expect(dummy.told.value).toBe('as it was')
    dummy.redo()
    expect(dummy.told.value).toBe('Done again: Body added.')
    expect(dummy.bench.design.value.mechanisms).toHaveLength(1)
  })

  test('begins by asking what is wanted, and says nothing once something is there', () => {
    expect(dummyModel(designOf(), NO_FRAMES).slip.value).toBe('begin')
    expect(dummyModel(owl, NO_FRAMES).slip.value).toBeNull()
  })

  test('a part put on the card is taken up, and one undo takes it away with its sizes', () => {
    const dummy = dummyModel(designOf(), NO_FRAMES)
    dummy.choose({ what: 'fold', name: 'gutter' })
    expect(dummy.slip.value).toBe('offers')
    dummy.put(designOf(body), 'Body added.', { what: 'part', name: 'body' })
    expect(dummy.chosen.value).toEqual({ what: 'part', name: 'body' })
    expect(dummy.slip.value).toBeNull()
    expect(offeredBy(dummy.bench).fields.map(({ key }) => key)).toContain('body.cut')
    dummy.bench.undo()
    expect(dummy.bench.design.value.mechanisms).toEqual([])
    expect(dummy.chosen.value).toBeNull()
    expect(offeredBy(dummy.bench).fields).toEqual([])
    dummy.bench.redo()
    expect(dummy.bench.design.value.mechanisms).toHaveLength(1)
  })

  test('opening the card is no step to undo', () => {
    const dummy = dummyModel(owl, NO_FRAMES)
    dummy.bench.step('opening', (now) => ({ ...now, opening: 40 }))
    dummy.bench.rest()
    expect(dummy.bench.canUndo.value).toBe(false)
  })

  test('what is kept goes with its part', () => {
    const dummy = dummyModel(owl, NO_FRAMES)
    dummy.pin(['eye.cut', 'body.cut'], true)
    dummy.put(designOf(body), 'Eye removed.')
    expect(dummy.pins.value).toEqual(['body.cut'])
    dummy.pin(['body.cut'], false)
    expect(dummy.pins.value).toEqual([])
  })
})

describe('keys', () => {
  const acts = {
    remove: () => {},
    rename: () => {},
    keep: () => {},
    hide: () => {},
    lock: () => {},
    putAway: () => {},
  }
  const press = (key: string, more: object = {}) =>
    keyDoes({ key, ctrlKey: false, metaKey: false, altKey: false, shiftKey: false, ...more }, null, acts)

  test('each does its own, and no other key does anything', () => {
    expect(press('Delete')).toBe(acts.remove)
    expect(press('F2')).toBe(acts.rename)
    expect(press('Escape')).toBe(acts.putAway)
    expect(press('k')).toBe(acts.keep)
    expect(press('h')).toBe(acts.hide)
    expect(press('l')).toBe(acts.lock)
    expect(press('q')).toBeNull()
    expect(press('k', { ctrlKey: true })).toBeNull()
    expect(press('k', { altKey: true })).toBeNull()
  })

  test('undo and redo, with Ctrl or Cmd', () => {
    const dummy = dummyModel(designOf(), NO_FRAMES)
    dummy.put(designOf(body), 'Body added.')
    press('z', { ctrlKey: true })?.(dummy)
    expect(dummy.bench.design.value.mechanisms).toHaveLength(0)
    press('Z', { metaKey: true, shiftKey: true })?.(dummy)
    expect(dummy.bench.design.value.mechanisms).toHaveLength(1)
  })

  test('a slip comes and goes with its key', () => {
    const dummy = dummyModel(owl, NO_FRAMES)
    press('m')?.(dummy)
    expect(dummy.slip.value).toBe('mend')
    press('m')?.(dummy)
    expect(dummy.slip.value).toBeNull()
    press('?', { shiftKey: true })?.(dummy)
    expect(dummy.slip.value).toBe('keys')
  })
})

describe('a design on its way to the worker', () => {
  test('arrives equal, and what did not change is the very same object there', () => {
    const first = structuredClone(owl)
    const there = unpacked(structuredClone(packed(first, null)), null)
    expect(there).toEqual(first)
    const next = { ...first, mechanisms: [first.mechanisms[0], { ...first.mechanisms[1], cut: 8 }] } as Design
    const parcel = structuredClone(packed(next, first))
    expect(parcel.mechanisms[0]).toBe(0)
    const then = unpacked(parcel, there)
    expect(then).toEqual(next)
    expect(then.mechanisms[0]).toBe(there.mechanisms[0])
    expect(then.card).toBe(there.card)
  })

  test('one that was packed against another is refused', () => {
    expect(() => unpacked(packed(owl, owl), null)).toThrow(RangeError)
  })
})
