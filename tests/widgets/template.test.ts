// A template that could not be made is said, and is not told to have been saved.
import { readFileSync } from 'node:fs'
import { basename } from 'node:path'
import { expect, test, vi } from 'vitest'
import { fitOn, paperOf } from '../../src/sheet/index.ts'
import { saveTemplate } from '../../src/widgets/template/template.ts'
import { card } from '../sheet/designs.ts'

const given = vi.hoisted(() => ({ files: [] as string[] }))

vi.mock('../../src/widgets/template/save.ts', () => ({
  save: (_: unknown, __: string, name: string) => given.files.push(name),
}))

const FONTS = '../../node_modules/@fontsource/atkinson-hyperlegible-next/files/'

vi.mock('../../src/widgets/model/loading.ts', () => ({
  fetched: async (address: string) =>
    new Response(new Uint8Array(readFileSync(new URL(FONTS + basename(address), import.meta.url)))),
}))

const choice = { paper: 'a4', lines: 'front', art: 'none', form: 'svg' } as const

test('a card too large for its paper is no saved template', async () => {
  const large = card(200, 200)
  const saved = await saveTemplate(large, 'owl', choice)
  expect(saved).toEqual({ isSaved: false, says: fitOn(large, paperOf('a4')).sentence })
  expect(given.files).toEqual([])
})

test('one that fits is saved, its way of printing in its name', async () => {
  const saved = await saveTemplate(card(105, 148), 'owl', { ...choice, lines: 'ticks' })
  expect(saved.isSaved).toBe(true)
  expect(given.files).toEqual(['owl-a4-ticks.svg'])
})
