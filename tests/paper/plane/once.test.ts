import { expect, test } from 'vitest'
import { once } from '../../../src/paper/plane/once.ts'

test('is made once for each key, whatever comes of it', () => {
  const asked: object[] = []
  const of = once((key: { readonly n: number }) => {
    asked.push(key)
    return key.n === 0 ? undefined : [key.n]
  })
  const [one, two, none] = [{ n: 1 }, { n: 1 }, { n: 0 }]
  expect(of(one)).toEqual([1])
  expect(of(one)).toBe(of(one))
  // Another object is another key, however alike.
  expect(of(two)).not.toBe(of(one))
  expect([of(none), of(none)]).toEqual([undefined, undefined])
  expect(asked).toEqual([one, two, none])
})
