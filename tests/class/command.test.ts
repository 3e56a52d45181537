// Class packs from the command line.
import { mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, expect, test, vi } from 'vitest'
import { dummy } from '../house/answered.ts'
import { ROOT } from '../house/tree.ts'
import { readPdf } from '../sheet/read-pdf.ts'

vi.setConfig({ testTimeout: 60_000 })

mkdirSync(join(ROOT, '.cache'), { recursive: true })

const folder = mkdtempSync(join(ROOT, '.cache', 'class-'))

afterAll(() => rmSync(folder, { recursive: true, force: true }))

const BEAK = join(ROOT, 'content/dummies/beak.hingebook.json')

test('a pack and an empty table are written, and how far it is goes to standard error', async () => {
  const [out, table] = [join(folder, 'pack.pdf'), join(folder, 'readings.csv')]
  const {
    code,
    out: said,
    err,
  } = await dummy('class', BEAK, '--out', out, '--table', table, '--pupils', '4', '--groups', '2')
  expect(code).toBe(0)
  expect(said).toContain('pages for 4 pupils')
  expect(said).toContain('From sheet to sheet differs: the slit of the beak.')
  expect(err).toMatch(/^Sizes: \d+ of 6\n/)
  expect(err).toMatch(/Sheets: 4 of 4\n$/)
  const { pages } = await readPdf(readFileSync(out))
  expect(pages.length).toBeGreaterThan(8)
  // ISO 216: A4 is 210 by 297 mm.
  expect(pages[0]?.box).toEqual([0, 0, 595.2756, 841.8898])
  expect(readFileSync(table, 'utf8').split('\r\n').slice(0, 3)).toEqual([
    'sheet,size,reading_mm',
    'A1,25,',
    'A2,50,',
  ])
})

test.each([
  [['--out', 'pack.txt'], '--out must name a file that ends in .pdf'],
  [['--out', 'p.pdf', '--table', 't.txt'], '--table must name a file that ends in .csv'],
  [['--out', 'p.pdf', '--pupils', '0'], 'Pupils must be a whole number from 1 to 60, not “0”'],
  [['--out', 'p.pdf', '--pupils', '61'], 'Pupils must be a whole number from 1 to 60, not “61”'],
  [
    ['--out', 'p.pdf', '--pupils', '5', '--groups', '6'],
    'Groups must be a whole number from 1 to 5, not “6”',
  ],
  [['--out', 'p.pdf', '--ages', '6'], 'Ages must be one of 7-9, 10-13, 14-up, adults'],
  [['--out', 'p.pdf', '--minutes', '30'], 'Minutes must be one of 20, 45, 90'],
  [['--out', 'p.pdf', '--paper', 'b5'], 'Paper must be one of a5, a4'],
  [['--out', 'p.pdf', '--size', 'beak.apex'], '--size must be one of beak.cut, beak.wedge'],
  [['--out', 'p.pdf', '--chapter', 'dragons'], '--chapter must be one of it-starts-at-the-gutter'],
])('%j is refused in a sentence', async (args, sentence) => {
  const { code, err } = await dummy('class', BEAK, ...args)
  expect(code).toBe(1)
  expect(err).toContain(sentence)
})

test('a card too large for the paper is refused by how much, and nothing is written', async () => {
  const out = join(folder, 'none.pdf')
  const garden = join(ROOT, 'content/dummies/garden.hingebook.json')
  const { code, err } = await dummy(
    'class',
    garden,
    '--out',
    out,
    '--pupils',
    '1',
    '--groups',
    '1',
    '--paper',
    'a5',
    '--size',
    'none',
  )
  expect(code).toBe(1)
  expect(err).toMatch(/mm/)
  expect(() => readFileSync(out)).toThrow()
})
