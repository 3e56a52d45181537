// What lies behind its page, or fits nowhere: told in words, and never as a rise below nothing.
import { describe, expect, it } from 'vitest'
import { chart } from '../../src/drawing/chart/chart.ts'
import { lengthText, riseSaid, riseText } from '../../src/drawing/pen/numbers.ts'
import { section } from '../../src/drawing/section/section.ts'
import { view } from '../../src/drawing/view/view.ts'
import { isRead, measure, parseDesign } from '../../src/paper/index.ts'

const tent = (more: object) => ({
  id: 'hut',
  kind: 'glued-tent',
  on: 'gutter',
  start: 40,
  end: 90,
  leftFoot: 20,
  rightFoot: 20,
  leftWall: 30,
  rightWall: 30,
  ...more,
})

const made = (...mechanisms: object[]) =>
  parseDesign({ hingebook: 1, title: 'Hut', card: { width: 105, height: 148 }, mechanisms })

const words = (drawing: { readonly marks: readonly { readonly mark: string }[] }) =>
  drawing.marks.flatMap((mark) => ('text' in mark ? [String(mark.text)] : []))

const SIZE = { width: 600, height: 440 }

const camera = { turn: 20, tilt: 30 }

describe('a tip behind its page', () => {
  // Stuck on the outside: its joints 20 from the gutter, its ridge sqrt(30² - 20² sin² 45) beyond the middle between
  // them, 20 cos 45 off the gutter: 12.3 behind it, and sin 45 of that behind either page: 8.7 mm.
  const hut = made(tent({ side: 'outside' }))

  it('is so far behind it', () => {
    const behind = (Math.sqrt(30 ** 2 - 200) - 20 * Math.SQRT1_2) * Math.SQRT1_2
    expect(measure(hut, 90).tips.hut?.rise).toBeCloseTo(-behind, 9)
    expect(lengthText(behind)).toBe('8.7 mm')
  })

  it('is told so in the picture, the section and the chart', () => {
    for (const drawing of [
      view(hut, 90, camera, SIZE, { rise: ['hut'] }),
      section(hut, 90, 65, SIZE, { of: 'hut' }),
    ]) {
      expect(words(drawing)).toContain('8.7 mm behind the page')
      expect(drawing.says).toContain('hut lies 8.7 mm behind the page.')
    }
    const curve = chart(hut, 90, SIZE, { of: ['hut'] })
    expect(curve.says).toContain('At 90° hut lies 8.7 mm behind the page;')
    expect(words(curve).some((text) => text.includes('behind the page'))).toBe(true)
    expect(words(curve).some((text) => /−.* mm/.test(text))).toBe(false)
  })

  it('is told in tenths, so that rounding is on the page', () => {
    expect(riseText(-5)).toBe('5.0 mm behind the page')
    expect(riseText(-25.4, 'in')).toBe('1.00 in behind the page')
    expect(riseText(-0.049)).toBe('0.0 mm')
    expect(riseText(-0.06)).toBe('0.1 mm behind the page')
    expect(riseText(12.34)).toBe('12.3 mm')
    expect(riseSaid('owl', 3)).toBe('owl rises 3.0 mm')
    expect(riseSaid('owl', -3)).toBe('owl lies 3.0 mm behind the page')
  })
})

describe('what fits at no opening', () => {
  // Walls that differ by 80, on joints at most 40 apart; and a piece on one of them.
  const never = made(
    tent({ leftWall: 90, rightWall: 10 }),
    {
      ...tent({ start: 5, end: 30, leftFoot: 5, rightFoot: 5, leftWall: 8, rightWall: 8 }),
      id: 'top',
      on: 'hut/ridge',
    },
    tent({ id: 'owl', start: 100, end: 140 }),
  )

  it('has no reading, nor has what stands on it', () => {
    expect([0, 1, 2].map((index) => isRead(never, index))).toEqual([false, false, true])
    expect(Object.keys(measure(never, 90).tips)).toEqual(['owl'])
  })

  it('is drawn without one', () => {
    expect(view(never, 90, camera, SIZE, { rise: ['hut', 'owl'] }).says).not.toContain('hut')
    expect(view(never, 90, camera, SIZE, { rise: ['hut', 'owl'] }).says).toContain('owl rises')
    expect(section(never, 90, 65, SIZE, { of: 'hut' }).says).not.toMatch(/rises|lies/)
    expect(chart(never, 90, SIZE, { of: ['hut', 'owl'] }).says).toContain('At 90° owl rises')
    expect(chart(never, 90, SIZE, { of: ['hut'] }).says).toBe(
      'Rise against opening: hut fits together at no opening.',
    )
    expect(() => chart(never, 90, SIZE, { of: ['moth'] })).toThrow(RangeError)
  })
})
