// How the cells of a chapter become lists.
import { describe, expect, test } from 'vitest'
import { beforeLast, gather } from '../../src/site/cells/gather.ts'

const step = (text: string): string => `<!--step-->${text}<!--/step-->`

const listed = (html: string): string =>
  gather(html, 'step', (run, count, before) => `[${before}+${count}: ${run.trim()}]`)

describe('steps', () => {
  test('that follow one another are one list, and words between them part it', () => {
    expect(listed(`${step('a')} ${step('b')}<p>Take care.</p>${step('c')}`)).toBe(
      '[0+2: a b]<p>Take care.</p>[2+1: c]',
    )
  })

  test('one more comes right before the last of them: a card is opened when it has its cover', () => {
    const html = `${step('a')}<p>x</p>${step('open')}<p>And then.</p>`
    expect(listed(beforeLast(html, 'step', step('cover')))).toBe(
      '[0+1: a]<p>x</p>[1+2: coveropen]<p>And then.</p>',
    )
  })

  test('a cell without steps stays as it is', () => {
    expect(beforeLast('<p>x</p>', 'step', step('cover'))).toBe('<p>x</p>')
  })
})
