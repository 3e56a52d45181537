import { describe, expect, test } from 'vitest'
import type { Design } from '../../../src/paper/index.ts'
import { check, mend, modelOf, parseDesign } from '../../../src/paper/index.ts'
import { dummyModel } from '../../../src/widgets/dummy/model/dummy-model.ts'
import { depthsOf, followed } from '../../../src/widgets/dummy/model/follow.ts'
import { rowsOf } from '../../../src/widgets/dummy/model/rows.ts'
import { asideRenamed, inSight, NOTHING_ASIDE, readAside } from '../../../src/widgets/keeping/aside.ts'
import { rename, setSize } from '../../../src/widgets/keeping/edits.ts'
import { begun, present } from '../../../src/widgets/keeping/history.ts'
import { packed, unpacked } from '../../../src/widgets/keeping/packing.ts'
import { NO_FRAMES } from '../../../src/widgets/model/frames.ts'

const body = { id: 'body', kind: 'cut-v-fold', on: 'gutter', apex: 30, run: 60, cut: 40 }
const eye = { id: 'eye', kind: 'cut-v-fold', on: 'body/ridge', apex: 10, run: 14, cut: 9 }
const bank = { id: 'bank', kind: 'cut-layer', on: 'gutter', start: 105, end: 135, left: 20, right: 20 }

const card = (...mechanisms: object[]): Design =>
  parseDesign({ hingebook: 1, title: 'Owl', card: { width: 105, height: 148 }, mechanisms })

const owl = card(body, eye, bank)

/** The layer sticks out of the card when it is shut. */
const broken = card(body, eye, { ...bank, left: 100, right: 100 })

const panelsShown = (dummy: ReturnType<typeof dummyModel>): string[] =>
  dummy.shown.value.poser.value.model.panels.map(({ name }) => name)

describe('a part that is hidden', () => {
  test('is in no picture with what sits on it, and back again; the card itself has it all the time', () => {
    const dummy = dummyModel(owl, NO_FRAMES)
    const all = panelsShown(dummy)
    dummy.set('hidden', 'body', true)
    expect(panelsShown(dummy).filter((name) => /^(body|eye)\//.test(name))).toEqual([])
    expect(panelsShown(dummy).filter((name) => name.startsWith('bank/'))).not.toEqual([])
    expect(dummy.bench.design.value).toBe(owl)
    expect(dummy.told.value).toMatch(/still checked.*printed/)
    dummy.set('hidden', 'body', false)
    expect(panelsShown(dummy)).toEqual(all)
  })

  test('has no handles, and is called hidden in the tree with what sits on it', () => {
    const dummy = dummyModel(owl, NO_FRAMES)
    dummy.choose({ what: 'part', name: 'eye' })
    expect(dummy.shown.value.handles.value.length).toBeGreaterThan(0)
    dummy.set('hidden', 'body', true)
    expect(dummy.shown.value.handles.value).toEqual([])
    const rows = rowsOf(owl, modelOf(owl), null, dummy.aside.value)
    expect(rows.filter(({ aside }) => aside === 'hidden').map(({ label }) => label)).toEqual(['Body', 'Eye'])
  })

  test('leaves the checks as they are: what fails is found though nobody sees it', () => {
    const failed = (design: Design) => check(design, { repairs: false }).filter(({ ok }) => !ok).length
    expect(failed(broken)).toBeGreaterThan(0)
    expect(failed(inSight(broken, { ...NOTHING_ASIDE, hidden: ['bank'] }))).toBe(0)
    const dummy = dummyModel(broken, NO_FRAMES)
    dummy.set('hidden', 'bank', true)
    expect(failed(dummy.bench.design.value)).toBeGreaterThan(0)
  })
})

describe('a part that is locked', () => {
  test('keeps every size when the card is mended', () => {
    const dummy = dummyModel(broken, NO_FRAMES)
    dummy.set('locked', 'bank', true)
    expect(dummy.pins.value).toEqual(expect.arrayContaining(['bank.start', 'bank.end', 'bank.left']))
    const { design } = mend(broken, { pins: dummy.pins.value })
    expect(design.mechanisms[2]).toEqual(broken.mechanisms[2])
    // Without the lock its depth is what is mended.
    expect(mend(broken, {}).design.mechanisms[2]).not.toEqual(broken.mechanisms[2])
  })

  test('stands against whatever would change or remove it, and against nothing else', () => {
    const dummy = dummyModel(owl, NO_FRAMES)
    dummy.set('locked', 'body', true)
    expect(dummy.against(card(bank))).toMatch(/body is locked/)
    expect(dummy.against(setSize(owl, 'body', 'cut', 39).design)).toMatch(/Unlock it first/)
    expect(dummy.against(setSize(owl, 'bank', 'left', 18).design)).toBeNull()
    dummy.set('locked', 'body', false)
    expect(dummy.against(card(bank))).toBeNull()
  })

  test('has no handles on the sheet', () => {
    const dummy = dummyModel(owl, NO_FRAMES)
    dummy.choose({ what: 'part', name: 'body' })
    dummy.set('locked', 'body', true)
    expect(dummy.shown.value.handles.value).toEqual([])
  })
})

describe('what is set beside a design', () => {
  test('is a step to undo, and goes with its part', () => {
    const dummy = dummyModel(owl, NO_FRAMES)
    dummy.set('hidden', 'eye', true)
    dummy.set('locked', 'bank', true)
    dummy.bench.undo()
    expect(dummy.aside.value).toEqual({ hidden: ['eye'], locked: [], kept: [] })
    dummy.bench.undo()
    expect(dummy.aside.value).toEqual(NOTHING_ASIDE)
    dummy.bench.redo()
    dummy.put(card(body, bank), 'Eye removed.')
    expect(dummy.aside.value.hidden).toEqual([])
    dummy.bench.undo()
    expect(dummy.aside.value.hidden).toEqual(['eye'])
  })

  test('follows a part that is renamed', () => {
    const { design } = rename(owl, 'body', 'bird')
    const dummy = dummyModel(owl, NO_FRAMES)
    dummy.pin(['body.cut', 'bank.left'], true)
    dummy.set('locked', 'body', true)
    dummy.put(design, '', undefined, asideRenamed(dummy.aside.value, 'body', 'bird'))
    expect(dummy.aside.value).toEqual({ hidden: [], locked: ['bird'], kept: ['bird.cut', 'bank.left'] })
  })

  test('is kept with the steps, in words, and comes back as it was', () => {
    const dummy = dummyModel(owl, NO_FRAMES)
    let history = begun(owl)
    let depths = depthsOf(dummy.past.value)
    const follow = () => {
      const now = depthsOf(dummy.past.value)
      history = followed(history, depths, now, { design: dummy.bench.design.value, aside: dummy.aside.value })
      depths = now
    }
    dummy.set('hidden', 'eye', true)
    follow()
    dummy.pin(['body.cut'], true)
    follow()
    expect(history.steps.map(({ label }) => label)).toEqual([
      'begun',
      'eye hidden',
      'body: 1 size kept when mended',
    ])
    const read = unpacked(JSON.parse(JSON.stringify(packed(history))))
    if (!read) throw new Error('it could not be read')
    expect(present(read).aside).toEqual({ hidden: ['eye'], locked: [], kept: ['body.cut'] })
    const later = dummyModel(card(), NO_FRAMES)
    later.lay(read)
    expect(later.aside.value.hidden).toEqual(['eye'])
    later.bench.undo()
    later.bench.undo()
    expect(later.aside.value).toEqual(NOTHING_ASIDE)
  })

  test('is read unbelieving', () => {
    expect(readAside(null)).toBeUndefined()
    expect(readAside('hidden')).toBeUndefined()
    expect(readAside({ hidden: 'eye', locked: [1, 2], kept: ['a.b'] })).toEqual({
      hidden: [],
      locked: [],
      kept: ['a.b'],
    })
    expect(readAside({ hidden: ['x'.repeat(101)] })).toEqual(NOTHING_ASIDE)
  })
})

test('a crowded sheet shows one part at a time: the one taken up, until another is picked', () => {
  const many = Array.from({ length: 6 }, (_, k) => ({
    id: `tent-${k}`,
    kind: 'glued-v-fold',
    on: 'gutter',
    apex: 20 + 20 * k,
    toward: 1,
    base: 50,
    facet: 60,
    foot: 12,
    ridge: 12,
  }))
  const dummy = dummyModel(card(...many), NO_FRAMES)
  const { bench } = dummy
  expect(bench.choosable).toHaveLength(6)
  expect(bench.chosen.value).toBe('tent-0')
  dummy.choose({ what: 'part', name: 'tent-3' })
  expect(bench.chosen.value).toBe('tent-3')
  bench.choose(null)
  expect(bench.chosen.value).toBeNull()
  dummy.choose({ what: 'part', name: 'tent-2' })
  expect(bench.chosen.value).toBe('tent-2')
  dummy.set('hidden', 'tent-2', true)
  expect(dummy.shown.value.choosable).not.toContain('tent-2')
  expect(dummy.shown.value.chosen.value).toBeNull()
})
