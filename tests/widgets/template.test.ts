// A template that could not be made is said, and is not told to have been saved.
import { readFileSync } from 'node:fs'
import { basename } from 'node:path'
import { parseHTML } from 'linkedom'
import { h, render } from 'preact'
import { expect, test, vi } from 'vitest'
import { parseDesign } from '../../src/paper/index.ts'
import { fitOn, paperOf } from '../../src/sheet/index.ts'
import { refusalOf, saidOf } from '../../src/widgets/template/choice.ts'
import { MorePrint } from '../../src/widgets/template/MorePrint.tsx'
import { saveTemplate } from '../../src/widgets/template/template.ts'
import { card, dummy } from '../sheet/designs.ts'

const given = vi.hoisted(() => ({ files: [] as string[] }))

vi.mock('../../src/widgets/template/save.ts', () => ({
  save: (_: unknown, __: string, name: string) => given.files.push(name),
}))

const FONTS = '../../node_modules/@fontsource/atkinson-hyperlegible-next/files/'

vi.mock('../../src/widgets/model/loading.ts', () => ({
  fetched: async (address: string) =>
    new Response(new Uint8Array(readFileSync(new URL(FONTS + basename(address), import.meta.url)))),
}))

const choice = {
  paper: 'a4',
  width: '',
  height: '',
  measured: '100',
  copies: '1',
  tiled: false,
  lines: 'front',
  tabs: 'own',
  art: 'none',
  form: 'svg',
} as const

test('a card too large for its paper is no saved template', async () => {
  const large = card(200, 200)
  const saved = await saveTemplate(large, 'owl', choice)
  expect(saved).toEqual({
    isSaved: false,
    says: `${fitOn(large, paperOf('a4')).sentence} Or let it go on several sheets: see More about paper and printer.`,
  })
  expect(given.files).toEqual([])
})

test('one that fits is saved, its way of printing in its name', async () => {
  const saved = await saveTemplate(card(105, 148), 'owl', { ...choice, lines: 'ticks' })
  expect(saved.isSaved).toBe(true)
  expect(given.files).toEqual(['owl-a4-ticks.svg'])
})

test('tabs go through slits where that is chosen, and its name says so', async () => {
  given.files.length = 0
  const tent = { start: 20, end: 80, leftFoot: 30, rightFoot: 30, leftWall: 45, rightWall: 45, tab: 10 }
  const house = parseDesign({
    ...card(105, 148),
    mechanisms: [{ id: 'house', kind: 'glued-tent', on: 'gutter', ...tent }],
  })
  expect(await saveTemplate(house, 'house', { ...choice, tabs: 'slit' })).toMatchObject({ isSaved: true })
  expect(given.files[0]).toMatch(/^house-a4-slits/)
})

test('paper, printer and copies are taken as typed, or told with their range', async () => {
  given.files.length = 0
  const small = card(60, 90)
  const own = { ...choice, paper: 'own', width: '250,5', height: '180' } as const
  expect(await saveTemplate(small, 'owl', own)).toMatchObject({ isSaved: true })
  expect(given.files).toEqual(['owl-180x250.5.svg'])
  const says = async (sets: object) => (await saveTemplate(small, 'owl', { ...choice, ...sets })).says
  expect(await says({ paper: 'own', width: '2000', height: '180' })).toMatch(/width must be 90 to 1200 mm/)
  expect(await says({ measured: 'ten' })).toMatch(/can measure 95 to 105 mm/)
  expect(await says({ measured: '' })).toMatch(/can measure 95 to 105 mm/)
  expect(await says({ copies: '0' })).toMatch(/from 1 to 60/)
  expect(await says({ measured: '98,5' })).toMatch(/saved/)
})

test('a number that no print has is told as it is typed, with its range', () => {
  for (const text of ['0', 'abc', '', '61', '1.5'])
    expect(refusalOf('copies', text)).toBe('The number of copies must be a whole number from 1 to 60.')
  for (const text of ['1', '60', ' 12 ']) expect(refusalOf('copies', text)).toBe('')
  expect(refusalOf('measured', '94')).toMatch(/can measure 95 to 105 mm/)
  expect(refusalOf('measured', '98,5')).toBe('')
  expect(refusalOf('width', '89')).toBe('The paper’s width must be 90 to 1200 mm.')
  expect(refusalOf('height', 'abc')).toBe('The paper’s height must be 90 to 1200 mm.')
  expect([refusalOf('width', '30 cm'), refusalOf('height', '90')]).toEqual(['', ''])
})

test('and it is told at its field', () => {
  const { document } = parseHTML('<html><body><main></main></body></html>')
  vi.stubGlobal('document', document)
  const page = document.querySelector('main') as unknown as HTMLElement
  const told = (sets: object) => {
    render(h(MorePrint, { chosen: { ...choice, ...sets }, onChoose: () => {} }), page)
    const field = page.querySelector('[name="copies"]')
    return [
      field?.getAttribute('aria-invalid'),
      page.querySelector(`[id="${field?.getAttribute('aria-describedby')}"]`)?.textContent,
    ]
  }
  expect(told({ copies: '0' })).toEqual(['true', expect.stringContaining('from 1 to 60')])
  expect(told({ copies: '2', measured: 'ten' })).toEqual(['false', ''])
  render(null, page)
  vi.unstubAllGlobals()
})

test('a card too large for its paper goes on several sheets where that is asked for', async () => {
  given.files.length = 0
  const saved = await saveTemplate(card(200, 200), 'owl', { ...choice, tiled: true })
  expect(saved).toEqual({ isSaved: true, says: expect.stringMatching(/^\d+ pages are saved/) })
})

test('how many sheets it takes and how full they are is said as it is chosen and typed; of what cannot be, nothing', () => {
  const small = card(100, 120)
  // 200 by 120 mm on A4 and on paper of one's own.
  expect(saidOf(small, choice).count).toBe('1 sheet, 38\u00a0% full')
  expect(saidOf(small, { ...choice, paper: 'own', width: '30 cm', height: '200' }).count).toBe(
    '1 sheet, 40\u00a0% full',
  )
  expect(saidOf(small, { ...choice, copies: '3' }).count).toMatch(/^[23] sheets, (38|58)\u00a0% full$/)
  for (const sets of [{ copies: '' }, { copies: '61' }, { measured: 'ten' }, { paper: 'own' }] as const)
    expect(saidOf(small, { ...choice, ...sets }).count).toBe('')
  expect(saidOf(card(200, 200), choice).count).toBe('')
  expect(saidOf(card(200, 200), { ...choice, tiled: true }).count).toMatch(/^\d sheets, \d+\u00a0% full$/)
})

test('what would not work as paper is said before it is printed, of the card as it would be printed', () => {
  expect(saidOf(dummy('owl'), choice).faults).toBe('')
  // A page of 100 mm hides no layer of 90 mm on both sides: shut, it reaches 180 mm.
  const layer = { id: 'box', kind: 'cut-layer', on: 'gutter', start: 20, end: 60, left: 90, right: 90 }
  const wide = card(100, 120, [layer])
  expect(saidOf(wide, choice).faults).toMatch(/^1 thing to mend first\. The box sticks out \d/)
})
