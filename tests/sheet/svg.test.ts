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

const line = (
  role: 'valley' | 'mountain' | 'cut' | 'crease',
  long: number,
  clear: readonly [number, number] = [0, 0],
) =>
  dashesOf({
    role,
    clear,
    runs: [
      [
        [0, 0],
        [long, 0],
      ],
    ],
  })

const fold = (role: 'valley' | 'mountain' | 'cut', long: number): readonly number[] => line(role, long).dash

/** Where a pen puts ink along a line, from and to: by PDF 32000-1, 8.4.3.6, and SVG 2, 13.5.6, which say the same. */
function inked({ dash, phase }: ReturnType<typeof dashesOf>, long: number): [number, number][] {
  const spots: [number, number][] = []
  let at = -phase
  for (let k = 0; at < long - 1e-9; k++) {
    const part = dash[k % dash.length] as number
    const [from, to] = [Math.max(0, at), Math.min(long, at + part)]
    if (k % 2 === 0 && to - from > 1e-9) spots.push([from, to])
    at += part
  }
  return spots
}

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
  for (let long = 16; long < 300; long += 0.7)
    for (const role of ['valley', 'mountain'] as const)
      expect(Math.abs((fold(role, long)[0] ?? 0) / (looks[role].dash[0] ?? 1) - 1)).toBeLessThan(0.35)
})

describe('a fold that meets something', () => {
  const roles = ['valley', 'mountain'] as const
  const ends = [
    [0, 0],
    [0.9, 0],
    [0, 0.5],
    [0.5, 0.9],
    [0.9, 0.9],
  ] as const

  test('has its first and its last dash clear of it, by no more than a fifth of a short one', () => {
    for (let long = 3; long < 200; long += 0.37)
      for (const role of roles)
        for (const clear of ends) {
          const spots = inked(line(role, long, clear), long)
          const [from, to] = [spots[0]?.[0] ?? Number.NaN, long - (spots.at(-1)?.[1] ?? Number.NaN)]
          for (const [is, wanted] of [
            [from, clear[0]],
            [to, clear[1]],
          ] as const) {
            expect(is).toBeLessThanOrEqual(Math.min(wanted, long / 5) + 1e-6)
            expect(is).toBeGreaterThanOrEqual(Math.min(wanted, long / 9) - 1e-6)
          }
        }
  })

  test('and no dot or gap too small to be printed', () => {
    for (let long = 3; long < 200; long += 0.37)
      for (const role of roles)
        for (const clear of ends) {
          const spots = inked(line(role, long, clear), long)
          for (const [from, to] of spots) expect(to - from).toBeGreaterThan(0.4 - 1e-6)
          spots.slice(1).forEach(([from], k) => {
            expect(from - (spots[k]?.[1] ?? Number.NaN)).toBeGreaterThan(0.4 - 1e-6)
          })
        }
  })

  test('shows its pattern twice from 10 mm on, with dashes that are no dots', () => {
    for (let long = 10; long < 60; long += 0.37)
      for (const clear of ends) {
        expect(inked(line('valley', long, clear), long).length).toBeGreaterThanOrEqual(3)
        // Dash, dot, dash, dot, dash.
        const [dash = 0, dot = 0, ...others] = inked(line('mountain', long, clear), long).map(
          ([a, b]) => b - a,
        )
        expect(others.length).toBeGreaterThanOrEqual(3)
        expect(dash / dot).toBeGreaterThan(2)
      }
  })
})

test('an old fold is four dots at least where they fit, and touches nothing', () => {
  for (let long = 1; long < 150; long += 0.31) {
    const spots = inked(line('crease', long), long)
    expect(spots.length).toBeGreaterThanOrEqual(Math.min(4, Math.floor((long - 0.4) / 0.9)))
    expect(spots[0]?.[0]).toBeGreaterThan(0.2)
    expect(long - (spots.at(-1)?.[1] ?? long)).toBeGreaterThan(0.2)
    for (const [from, to] of spots) expect(to - from).toBeLessThan(0.5 + 1e-6)
  }
  expect(inked(line('crease', 5), 5)).toHaveLength(4)
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
