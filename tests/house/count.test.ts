import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { browserCount, stageCount, unitCount } from '../../src/house/count.mjs'
import { bareNode, ROOT } from './tree.ts'

// The runners themselves write the reports, so that a new version that writes them otherwise is noticed.
const CACHE = join(ROOT, '.cache')

let folder = ''

beforeAll(() => {
  mkdirSync(CACHE, { recursive: true })
  folder = mkdtempSync(join(CACHE, 'count-'))
})

afterAll(() => rmSync(folder, { recursive: true, force: true }))

const write = (name: string, text: string): void => writeFileSync(join(folder, name), text)

test('unit tests: a failing test and a file that cannot load are both failures, a skipped test is neither', () => {
  write('fine.test.ts', "import { test } from 'vitest'\ntest('fine', () => {})\ntest.skip('later', () => {})")
  write('wrong.test.ts', "import { test } from 'vitest'\ntest('wrong', () => { throw new Error('wrong') })")
  write('lost.test.ts', "import './nowhere.ts'")
  write(
    'vitest.config.ts',
    "export default { test: { include: ['*.test.ts'], reporters: ['json'], outputFile: 'unit.json' } }",
  )
  const { code } = bareNode('node_modules/vitest/vitest.mjs', 'run', '--root', folder)
  expect(code).not.toBe(0)
  expect(unitCount(join(folder, 'unit.json'), false)).toEqual({
    name: 'unit tests',
    passed: 1,
    failed: 2,
    skipped: 1,
  })
})

test('browser tests: a failing test is a failure, a skipped one is not', () => {
  const head = "import { test } from '@playwright/test'\n"
  write(
    'mixed.spec.ts',
    `${head}test('fine', () => {})\ntest('wrong', () => { throw new Error('wrong') })\ntest.skip('later', () => {})`,
  )
  write(
    'playwright.config.ts',
    "export default { testMatch: '*.spec.ts', outputDir: 'out', reporter: [['json', { outputFile: 'browser.json' }]] }",
  )
  const { code } = bareNode('node_modules/@playwright/test/cli.js', 'test', '--config', folder)
  expect(code).not.toBe(0)
  expect(browserCount(join(folder, 'browser.json'), false)).toEqual({
    name: 'browser tests',
    passed: 1,
    failed: 1,
    skipped: 1,
    retried: [],
  })
})

test('browser tests: what passes only at the second try has passed, and is named', () => {
  write(
    'mixed.spec.ts',
    "import { test } from '@playwright/test'\ntest('shy', ({}, { retry }) => { if (retry === 0) throw new Error('no') })",
  )
  write(
    'playwright.config.ts',
    "export default { testMatch: '*.spec.ts', retries: 1, outputDir: 'out', reporter: [['json', { outputFile: 'browser.json' }]] }",
  )
  const { code } = bareNode('node_modules/@playwright/test/cli.js', 'test', '--config', folder)
  expect(code).toBe(0)
  expect(browserCount(join(folder, 'browser.json'), true)).toEqual({
    name: 'browser tests',
    passed: 1,
    failed: 0,
    skipped: 0,
    retried: ['shy'],
  })
})

test('a runner that left no report, ran nothing or ended badly counts a failure', () => {
  const nowhere = join(folder, 'nowhere.json')
  for (const count of [unitCount, browserCount]) {
    expect(count(nowhere, true).failed).toBe(1)
    expect(count(nowhere, false).failed).toBe(1)
  }
  write('green.json', '{ "numPassedTests": 3, "numFailedTests": 0, "testResults": [] }')
  expect(unitCount(join(folder, 'green.json'), true)).toMatchObject({ passed: 3, failed: 0 })
  expect(unitCount(join(folder, 'green.json'), false)).toMatchObject({ passed: 3, failed: 1 })
})

test('a stage is one check', () => {
  expect(stageCount('lint', true)).toMatchObject({ passed: 1, failed: 0 })
  expect(stageCount('lint', false)).toMatchObject({ passed: 0, failed: 1 })
})
