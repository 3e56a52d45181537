// How many checks passed and failed, read from the runners' own reports.
// A runner that failed, ran nothing or left no report counts at least one failure, whatever its report says.
import { readFileSync } from 'node:fs'

/**
 * @typedef {{ name: string, passed: number, failed: number, skipped: number, retried?: readonly string[] }} Count
 * retried: tests that passed only when they were tried once more
 */

/**
 * A stage that is one check by itself.
 * @param {string} name
 * @param {boolean} passed
 * @returns {Count}
 */
export function stageCount(name, passed) {
  return { name, passed: passed ? 1 : 0, failed: passed ? 0 : 1, skipped: 0 }
}

/**
 * @param {string} path vitest's JSON report
 * @param {boolean} succeeded whether vitest ended with code 0
 * @returns {Count}
 */
export function unitCount(path, succeeded) {
  const report = read(path)
  // A file that cannot even be loaded holds no test that could fail, so it counts itself.
  const unloaded = (report?.testResults ?? []).filter(
    (/** @type {{ status: string, assertionResults: { status: string }[] }} */ file) =>
      file.status === 'failed' && !file.assertionResults.some((test) => test.status === 'failed'),
  ).length
  return honest('unit tests', succeeded, {
    passed: report?.numPassedTests ?? 0,
    failed: (report?.numFailedTests ?? 0) + unloaded,
    skipped: (report?.numPendingTests ?? 0) + (report?.numTodoTests ?? 0),
  })
}

/**
 * @param {string} path Playwright's JSON report
 * @param {boolean} succeeded whether Playwright ended with code 0
 * @returns {Count}
 */
export function browserCount(path, succeeded) {
  const report = read(path)
  return honest('browser tests', succeeded, {
    passed: (report?.stats?.expected ?? 0) + (report?.stats?.flaky ?? 0),
    failed: (report?.stats?.unexpected ?? 0) + (report?.errors?.length ?? 0),
    skipped: report?.stats?.skipped ?? 0,
    retried: flakyIn(report?.suites ?? []),
  })
}

/**
 * @typedef {{ specs?: { title: string, tests?: { status?: string }[] }[], suites?: Suite[] }} Suite
 * @param {readonly Suite[]} suites
 * @returns {string[]} titles of the tests that failed once and then passed
 */
function flakyIn(suites) {
  return suites.flatMap(({ specs = [], suites: inner = [] }) => [
    ...specs
      .filter(({ tests = [] }) => tests.some(({ status }) => status === 'flaky'))
      .map(({ title }) => title),
    ...flakyIn(inner),
  ])
}

/**
 * @param {string} name
 * @param {boolean} succeeded
 * @param {Omit<Count, 'name'>} counted
 * @returns {Count}
 */
function honest(name, succeeded, counted) {
  const sound = succeeded && counted.passed > 0
  return { name, ...counted, failed: sound ? counted.failed : Math.max(1, counted.failed) }
}

/** @param {string} path */
function read(path) {
  try {
    return JSON.parse(readFileSync(path, 'utf8'))
  } catch {
    return undefined
  }
}
