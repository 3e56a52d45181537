import { readFileSync } from 'node:fs'
import { SaxesParser } from 'saxes'
import { describe, expect, test } from 'vitest'
import { fontOnDisk } from '../../src/sheet/files/font-on-disk.ts'
import { sheetSvg } from '../../src/sheet/index.ts'
import { dashesOf, looks } from '../../src/sheet/marks/looks.ts'
import { card, dummy, shelf } from './designs.ts'

describe('the SVG', () => {
  const [page = ''] = sheetSvg(dummy('heron'), { paper: 'letter' })

  test('has its size in mm, and millimetres as its units', () => {
    // CSS Values 3, 5.2: mm are real lengths where a medium has them; one user unit is then one mm.
    expect(page).toMatch(/^<svg [^>]*width="279\.4mm" height="215\.9mm" viewBox="0 0 279\.4 215\.9"/)
  })

  test('needs nothing from elsewhere', async () => {
    const [whole = ''] = sheetSvg(dummy('heron'), { paper: 'a4' }, await fontOnDisk())
    for (const text of [page, whole]) {
      expect(text.replace('http://www.w3.org/2000/svg', '')).not.toMatch(/https?:|@import|href=/)
    }
    expect(whole).toContain('src: url(data:font/woff;base64,d09GR')
  })

  test('says every dash pattern in its own style', () => {
    for (const role of Object.keys(looks)) expect(page).toContain(`path.m-${role} { stroke:`)
    expect(page).toMatch(/path\.m-valley \{[^}]*stroke-dasharray: 3 1\.5;/)
    expect(page).toMatch(/path\.m-mountain \{[^}]*stroke-dasharray: 4 1\.5 0\.75 1\.5;/)
  })

  test('escapes what a title may hold', () => {
    const [text = ''] = sheetSvg(card(105, 148, [], 'Owl & <moth> "x"'), { paper: 'a4' })
    expect(text).not.toContain('<moth>')
    expect(text).toContain('&lt;moth&gt;')
  })
})

const fold = (role: 'valley' | 'mountain' | 'cut', long: number): readonly number[] =>
  dashesOf({
    mark: 'path',
    role,
    closed: false,
    runs: [
      [
        [0, 0],
        [long, 0],
      ],
    ],
  })

test('a fold of 6 mm still shows what it is', () => {
  // A mountain: dash, gap, dot, gap, dash; a valley: dash, gap, dash.
  const [dash = 0, gap = 0, dot = 0] = fold('mountain', 6)
  expect(2 * dash + 2 * gap + dot).toBeCloseTo(6, 9)
  const [valley = 0, between = 0] = fold('valley', 6)
  expect(2 * valley + between).toBeCloseTo(6, 9)
})

test.each([0, 1e-9, 0.5, 3, 6, 7.4, 20, 148, 420])('a fold of %d mm has dashes of some length', (long) => {
  for (const part of [...fold('valley', long), ...fold('mountain', long)]) expect(part).toBeGreaterThan(0)
  expect(fold('cut', long)).toEqual([])
})

test('long folds keep their pattern to a third', () => {
  for (let long = 12; long < 300; long += 0.7)
    for (const role of ['valley', 'mountain'] as const)
      expect(Math.abs((fold(role, long)[0] ?? 0) / (looks[role].dash[0] ?? 1) - 1)).toBeLessThan(0.35)
})

test('dash patterns on paper are those of the screen, at one scale', () => {
  const tokens = readFileSync(new URL('../../src/site/styles/tokens.css', import.meta.url), 'utf8')
  for (const role of ['valley', 'mountain'] as const) {
    const screen = new RegExp(`--dash-${role}: ([\\d. ]+);`).exec(tokens)?.[1]?.split(' ').map(Number)
    expect(looks[role].dash, role).toEqual(screen?.map((unit) => unit / 2))
  }
})

test('lines of the sheet that differ in meaning differ in dash pattern', () => {
  const patterns = (['cut', 'valley', 'mountain', 'crease'] as const).map((role) =>
    looks[role].dash.join(' '),
  )
  expect(new Set(patterns).size).toBe(patterns.length)
})

describe('as XML', () => {
  /** Read by saxes, a strict parser of XML 1.0 with names of spaces: it throws at the first fault. */
  const read = (text: string): { readonly elements: number; readonly words: string } => {
    const parser = new SaxesParser({ xmlns: true })
    let elements = 0
    let words = ''
    parser.on('error', (error) => {
      throw error
    })
    parser.on('opentag', () => {
      elements += 1
    })
    parser.on('text', (text) => {
      words += text
    })
    parser.write(text).close()
    return { elements, words }
  }

  const ways = ['front', 'ticks', 'back'] as const

  test.each(shelf.map(({ name, design }) => [name, design] as const))(
    '%s can be read, in every way',
    (_, design) => {
      for (const lines of ways)
        for (const page of sheetSvg(design, { paper: 'a3', lines }))
          expect(read(page).elements).toBeGreaterThan(20)
    },
  )

  test('whatever a title holds that no reader of files let pass', () => {
    // XML 1.0, production 2: no control characters, no lone surrogates, neither U+FFFE nor U+FFFF.
    const title = 'A\u0000\u0007\u001b[31m & <b> "\ud800\udfff\udc00 \ufffe\uffff\u009b ]]> \u202e蛾🦉'
    const design = { ...card(105, 148), title }
    for (const page of sheetSvg(design, { paper: 'a4' })) {
      const { words } = read(page)
      // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must not be there
      expect(words).not.toMatch(/[\u0000-\u0008\u000b-\u001f\u007f-\u009f]|\p{Cs}|\u202e/u)
      expect(words).toContain('<b>')
    }
  })
})
