// What a page asks of its device: what it remembers, whether a file came, and in which words it did not.
import { afterEach, describe, expect, test, vi } from 'vitest'
import { fetched, NotLoadedError, notLoaded, reasonOf } from '../../src/widgets/model/loading.ts'
import { keepSolved, metOn, solvedBy } from '../../src/widgets/model/met.ts'
import {
  benchOf,
  chooseUnit,
  covering,
  followGuess,
  keepWord,
  lengthUnit,
  recall,
  recallUnit,
} from '../../src/widgets/model/page.ts'

afterEach(() => {
  vi.unstubAllGlobals()
  lengthUnit.value = 'mm'
})

/** A device that remembers. */
function remembers(): Map<string, string> {
  const kept = new Map<string, string>()
  vi.stubGlobal('localStorage', {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
  })
  return kept
}

/** One that may not. */
const forgets = (): void => {
  const refuse = () => {
    throw new Error('not allowed')
  }
  vi.stubGlobal('localStorage', { getItem: refuse, setItem: refuse })
}

describe('what the device remembers', () => {
  test('stands under the book’s own name', () => {
    const kept = remembers()
    expect(recall('unit')).toBeNull()
    keepWord('unit', 'in')
    expect([...kept]).toEqual([['hingebook.unit', 'in']])
    expect(recall('unit')).toBe('in')
  })

  test('is nothing where it may not, and nothing breaks', () => {
    forgets()
    expect(() => keepWord('unit', 'in')).not.toThrow()
    expect(recall('unit')).toBeNull()
    chooseUnit('in')
    expect(lengthUnit.value).toBe('in')
  })

  test('is the unit of lengths, for every widget and the next visit', () => {
    const kept = remembers()
    recallUnit()
    expect(lengthUnit.value).toBe('mm')
    chooseUnit('in')
    expect([lengthUnit.value, kept.get('hingebook.unit')]).toEqual(['in', 'in'])
    lengthUnit.value = 'mm'
    recallUnit()
    expect(lengthUnit.value).toBe('in')
    kept.set('hingebook.unit', 'ell')
    lengthUnit.value = 'mm'
    recallUnit()
    expect(lengthUnit.value).toBe('mm')
  })

  test('is the state that met a challenge, each by itself', () => {
    const kept = remembers()
    expect(solvedBy('beak', 'high')).toBeNull()
    keepSolved('beak', 'high', 'beak.cut=40')
    expect(solvedBy('beak', 'high')).toBe('beak.cut=40')
    expect([...kept.keys()]).toEqual(['hingebook.goal.beak.high'])
    expect([solvedBy('beak', 'low'), solvedBy('moth', 'high')]).toEqual([null, null])
  })
})

test('the islands of a chapter share one bench, and one challenge met; other chapters have their own', () => {
  for (const shared of [benchOf, metOn]) {
    expect(shared('beak')).toBe(shared('beak'))
    expect(shared('beak')).not.toBe(shared('moth'))
    expect(shared('beak').value).toBeNull()
  }
})

test('answers stay covered for as long as the page says so', () => {
  const page = Object.assign(new EventTarget(), { dataset: { guess: 'covered' } })
  const heard = new EventTarget()
  vi.stubGlobal('document', { documentElement: page })
  vi.stubGlobal('addEventListener', heard.addEventListener.bind(heard))
  vi.stubGlobal('removeEventListener', heard.removeEventListener.bind(heard))
  const stop = followGuess()
  expect(covering.value).toBe(true)
  page.dataset.guess = 'shown'
  expect(covering.value).toBe(true)
  heard.dispatchEvent(new Event('hingebook-guess'))
  expect(covering.value).toBe(false)
  stop()
  page.dataset.guess = 'covered'
  heard.dispatchEvent(new Event('hingebook-guess'))
  expect(covering.value).toBe(false)
})

describe('what does not come', () => {
  const online = (onLine: boolean) => vi.stubGlobal('navigator', { onLine })

  test('is told with the reason that is known for sure', async () => {
    vi.stubGlobal('fetch', () => Promise.reject(new TypeError('x')))
    online(true)
    await expect(fetched('/font')).rejects.toThrow('the site did not answer')
    online(false)
    await expect(fetched('/font')).rejects.toThrow('this device has no network now')
    vi.stubGlobal('fetch', async () => ({ ok: false, status: 404 }))
    await expect(fetched('/font')).rejects.toThrow(new NotLoadedError('the site answered with error 404'))
    const answer = { ok: true, status: 200 }
    vi.stubGlobal('fetch', async () => answer)
    expect(await fetched('/font')).toBe(answer)
  })

  test('is told in the browser’s words only where they speak of the network', () => {
    online(true)
    for (const words of [
      'Failed to fetch',
      'error loading dynamically imported module',
      'Importing a module script failed.',
    ])
      expect(reasonOf(new TypeError(words))).toBe('the site did not answer')
    expect(reasonOf(new TypeError('x is not a function.'))).toBe('x is not a function')
    expect(reasonOf(new Error('Failed to fetch'))).toBe('Failed to fetch')
    expect(reasonOf(new NotLoadedError('the site answered with error 500'))).toBe(
      'the site answered with error 500',
    )
    for (const empty of [new Error(''), 'words', null])
      expect(reasonOf(empty)).toBe('of a fault in this page')
    expect(notLoaded('The font', new Error('No room.'))).toBe(
      'The font could not be loaded: No room. Try again.',
    )
  })
})
