import { spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { afterAll, describe, expect, test } from 'vitest'
import type { Answered } from './answered.ts'
import { dummy } from './answered.ts'
import { bareNode, ROOT } from './tree.ts'

mkdirSync(join(ROOT, '.cache'), { recursive: true })

const folder = mkdtempSync(join(ROOT, '.cache', 'command-'))

afterAll(() => rmSync(folder, { recursive: true, force: true }))

/** The command in a process of its own, as a reader starts it. */
const started = (...args: string[]): Answered => bareNode('src/command/dummy.ts', ...args)

/** Writes a file for the command to read; text is written as it stands. */
function file(name: string, content: unknown): string {
  const path = join(folder, name)
  writeFileSync(path, typeof content === 'string' ? content : JSON.stringify(content))
  return path
}

const wedge = { id: 'beak', kind: 'cut-v-fold', on: 'gutter', apex: 110, run: -40, cut: 40 }

const design = (...mechanisms: object[]) => ({
  hingebook: 1,
  title: 'Wedge',
  card: { width: 105, height: 148 },
  mechanisms,
})

const sound = file('wedge.hingebook.json', design(wedge))

const outside = file('outside.hingebook.json', design({ ...wedge, apex: 140, run: -120, cut: 100 }))

describe('pose', () => {
  test('says where every panel and crease is, as JSON', async () => {
    const { code, out } = await dummy('pose', sound, '--opening', '90', '--json')
    expect(code).toBe(0)
    const pose = JSON.parse(out)
    expect(pose.opening).toBe(90)
    expect(Object.keys(pose.panels)).toEqual(
      expect.arrayContaining(['page/left', 'page/right', 'beak/left', 'beak/right']),
    )
    expect(Object.keys(pose.creases)).toEqual(
      expect.arrayContaining(['gutter', 'beak/ridge', 'beak/left', 'beak/right']),
    )
    expect(pose.stopped).toEqual([])
    // 45/45 at 90 degrees rises two thirds of its ridge: geometry by hand, see bare-node.test.ts.
    const [x, , z] = pose.panels['beak/left'][1]
    expect(x).toBeCloseTo(0, 9)
    expect(z * Math.SQRT1_2).toBeCloseTo((2 / 3) * 40, 9)
  })

  test('says what a ruler reads, in words', async () => {
    const { code, out } = started('pose', sound, '--opening', '90')
    expect(code).toBe(0)
    expect(out).toContain('beak: rise 26.7 mm')
    // Largest where the ridge stands square to the gutter's bisector: cos(opening) = -1/3 (worked by hand).
    expect(out).toContain('at 109.5°')
  })

  test.each([
    [['--opening', '190'], '--opening must be a number of degrees from 0 (shut) to 180 (flat), not 190.'],
    [['--opening', 'wide'], '--opening must be a number of degrees from 0 (shut) to 180 (flat), not wide.'],
    [[], '--opening must be a number of degrees from 0 (shut) to 180 (flat), and it was left out.'],
  ])('%j is refused with what is allowed', async (options, sentence) => {
    expect(await dummy('pose', sound, ...options)).toEqual({ code: 1, out: '', err: `${sentence}\n` })
  })
})

describe('check', () => {
  test('lists every check of a sound design and ends with 0', async () => {
    const { code, out } = await dummy('check', sound)
    expect(out).toContain('holds  stays-inside')
    expect(out).not.toContain('FAILS')
    expect(code).toBe(0)
  })

  test('shows what fails, with the repair, and ends with 2', async () => {
    const { code, out } = started('check', outside)
    expect(out).toContain('FAILS')
    expect(out).toMatch(/Repair: beak, .+ from .+ to .+ mm\./)
    expect(code).toBe(2)
  })

  test('gives the same as JSON', async () => {
    const { code, out } = await dummy('check', outside, '--json')
    expect(code).toBe(2)
    const verdict = JSON.parse(out)
    expect(verdict).toMatchObject({ title: 'Wedge', ok: false })
    expect(verdict.checks.length).toBeGreaterThan(3)
    expect(verdict.checks.some((one: { ok: boolean }) => !one.ok)).toBe(true)
  })

  // Unicode 16, 23.8: the marks by which a text says how it is written.
  test.each(['utf8', 'utf16le', 'utf16be'] as const)(
    'reads a file with a byte order mark: %s',
    async (encoding) => {
      const text = `\ufeff${JSON.stringify({ ...design(wedge), title: 'Żółw' })}`
      const bytes = Buffer.from(text, encoding === 'utf8' ? 'utf8' : 'utf16le')
      const path = join(folder, `mark-${encoding}.json`)
      writeFileSync(path, encoding === 'utf16be' ? bytes.swap16() : bytes)
      const { code, out, err } = await dummy('check', path, '--json')
      expect(err).toBe('')
      expect(code).toBe(0)
      expect(JSON.parse(out).title).toBe('Żółw')
    },
  )

  test.each(readdirSync(join(ROOT, 'content/dummies')))('finds %s of the book sound', async (name) => {
    expect(await dummy('check', `content/dummies/${name}`)).toMatchObject({ code: 0, err: '' })
  })
})

describe('find', () => {
  const bare = file('bare.hingebook.json', design())

  test('brings a tip to a place, and writes a design that is sound', async () => {
    const out = join(folder, 'found.hingebook.json')
    const said = await dummy(
      'find',
      bare,
      '--at',
      '0,70,50',
      '--opening',
      '90',
      '--made',
      'card',
      '--out',
      out,
    )
    expect(said).toMatchObject({ code: 0, err: '' })
    expect(said.out).toMatch(/^1\. .+ on gutter: /)
    expect(await dummy('check', out)).toMatchObject({ code: 0 })
    const { panels } = JSON.parse((await dummy('pose', out, '--opening', '90', '--json')).out)
    const points = Object.entries(panels).flatMap(([name, corners]) =>
      name.startsWith('page/') ? [] : (corners as [number, number, number][]),
    )
    // Some ridge passes through the place: its two ends lie on a line with it.
    const near = points.some(([x, y, z]) => Math.hypot(x, y - 70, z - 50) < 1.01)
    const onRidge = points.some(([x, y, z]) =>
      points.some(
        ([u, v, w]) =>
          Math.hypot(x, y - 70, z - 50) + Math.hypot(u, v - 70, w - 50) - Math.hypot(x - u, y - v, z - w) <
          0.05,
      ),
    )
    expect(near || onRidge).toBe(true)
  })

  test('says how near it comes where it cannot, and ends with 2', async () => {
    const { code, out } = await dummy('find', bare, '--at', '0,74,400', '--on', 'gutter')
    expect(out).toMatch(/^No fold reaches: the nearest that works leaves \d+ mm\.\n$/)
    expect(code).toBe(2)
  })

  test.each([
    [['--at', '0,70'], '--at must be three numbers in mm, as in 0,70,40, not 0,70.'],
    [[], '--at must be three numbers in mm, as in 0,70,40, and it was left out.'],
    [
      ['--at', '0,70,40', '--opening', '270'],
      '--opening must be a number from 0 (shut) to 180 (flat) degrees, not 270.',
    ],
    [['--at', '0,70,40', '--from', 'above'], '--from must be one of gutter, near, far, edge, not above.'],
  ])('%j is refused with what is allowed', async (options, sentence) => {
    expect(await dummy('find', bare, ...options)).toEqual({ code: 1, out: '', err: `${sentence}\n` })
  })
})

describe('mend', () => {
  test('mends what fails, says by which changes, and writes a design that is sound', async () => {
    const out = join(folder, 'mended.hingebook.json')
    const said = await dummy('mend', outside, '--out', out)
    expect(said).toMatchObject({ code: 0, err: '' })
    expect(said.out).toMatch(/^beak, .+ from .+ to .+ mm\n/)
    expect(await dummy('check', out)).toMatchObject({ code: 0 })
  })

  test('keeps what is pinned', async () => {
    const { code, out } = await dummy('mend', outside, '--pins', 'beak.apex,beak.run', '--json')
    const { design: made, left } = JSON.parse(out)
    expect(made.mechanisms[0]).toMatchObject({ apex: 140, run: -120 })
    expect(code).toBe(left.length === 0 ? 0 : 2)
  })

  test('names what cannot be mended, and ends with 2', async () => {
    const { code, out } = await dummy('mend', outside, '--pins', 'beak.apex,beak.run,beak.cut,beak.lean')
    expect(out).toContain('Cannot be mended: ')
    expect(code).toBe(2)
  })

  test('has nothing to do on a sound design', async () => {
    expect(await dummy('mend', sound)).toEqual({
      code: 0,
      out: 'Nothing fails: there is nothing to mend.\n',
      err: '',
    })
  })

  test('a pin that is not there is refused by its name', async () => {
    const { code, err } = await dummy('mend', outside, '--pins', 'jaw.cut')
    expect(err).toBe('--pins must name mechanisms of the design, as in beak.cut, not jaw.cut.\n')
    expect(code).toBe(1)
  })
})

describe('picture', () => {
  test('draws the standing card as a file that stands alone', async () => {
    const out = join(folder, 'wedge.svg')
    const said = await dummy('picture', sound, '--out', out, '--opening', '90', '--turn=-15', '--upright')
    expect(said).toMatchObject({ code: 0, err: '' })
    expect(said.out).toContain('open 90°')
    const svg = readFileSync(out, 'utf8')
    expect(svg).toContain('viewBox="0 0 960 600"')
    expect(svg).toContain('data-of="beak/left"')
    expect(svg).toContain('.on-table')
  })

  test.each([
    [['--opening', '90'], '--out must name a file that ends in .svg, and it was left out.'],
    [['--out', 'a.png'], '--out must name a file that ends in .svg, not a.png.'],
    [['--out', 'a.svg', '--tilt', '91'], '--tilt must be a number from 0 to 90 degrees, not 91.'],
    [
      ['--out', 'a.svg', '--far', 'away'],
      '--far must be a number from 1 to 10 diagonals of the card, not away.',
    ],
  ])('%j is refused with what is allowed', async (options, sentence) => {
    expect(await dummy('picture', sound, ...options)).toEqual({ code: 1, out: '', err: `${sentence}\n` })
  })
})

describe('sheet', () => {
  test.each([
    ['a4', 210, 297],
    ['letter', 215.9, 279.4],
  ])('writes a PDF of the size %s', async (paper, short, long) => {
    const out = join(folder, `wedge-${paper}.pdf`)
    expect(await dummy('sheet', sound, '--paper', paper, '--out', out)).toMatchObject({ code: 0, err: '' })
    // ISO 216 and ANSI/ASME Y14.1, at 72 points an inch (ISO 32000).
    const sides = await pageSize(out)
    expect(sides[0]).toBeCloseTo(short, 2)
    expect(sides[1]).toBeCloseTo(long, 2)
  })

  test.each([
    [['--paper', 'a7', '--out', 'x.pdf'], /^--paper must be .*a4.*letter.*, not a7\.\n$/],
    [['--paper', 'a4'], /^--out must name .*\.pdf.*left out\.\n$/],
    [
      ['--paper', 'a4', '--out', 'x.pdf', '--lines', 'some'],
      /^--lines must be one of front, ticks, back, not some\.\n$/,
    ],
    [
      ['--paper', 'a4', '--out', 'x.pdf', '--art', 'pink'],
      /^--art must be one of colour, lines, none, not pink\.\n$/,
    ],
    [['--paper', 'a4', '--out', 'x.docx'], /^--out must name .*\.pdf.*not x\.docx\.\n$/],
  ])('%j is refused with what is allowed', async (options, sentence) => {
    const { code, out, err } = await dummy('sheet', sound, ...options)
    expect(err).toMatch(sentence)
    expect(out).toBe('')
    expect(code).toBe(1)
  })

  test.each(['front', 'ticks', 'back'])('prints the lines as asked: %s', async (lines) => {
    const svg = join(folder, `wedge-${lines}.svg`)
    const out = join(folder, `wedge-${lines}.pdf`)
    for (const file of [svg, out])
      expect(await dummy('sheet', sound, '--paper', 'a4', '--out', file, '--lines', lines)).toMatchObject({
        code: 0,
      })
    const text = readFileSync(svg, 'utf8')
    // As seen from outside the gutter is a mountain (geometry by hand: turn the card over).
    const gutter = /class="m-(\w+)[^"]*" data-of="gutter"/.exec(text)?.[1]
    expect(gutter).toBe(lines === 'back' ? 'mountain' : 'valley')
    const said = {
      front: 'All lines are on it',
      ticks: 'ticks at their ends',
      back: 'mountain and valley too',
    }[lines]
    expect(text.replaceAll(/<[^>]*>/g, ' ').replaceAll(/\s+/g, ' ')).toContain(said)
    expect(await words(out)).toContain(said)
  })

  test('says how many sheets it takes and how full they are', async () => {
    const bare = file('bare.hingebook.json', {
      ...design(wedge),
      card: { width: 100, height: 120 },
      mechanisms: [],
    })
    const { out } = await dummy('sheet', bare, '--paper', 'a4', '--out', join(folder, 'bare.svg'))
    // 200 by 120 mm on A4 (ISO 216).
    expect(out).toMatch(/actual size\.\n1 sheet, 38\u00a0% full\.\n$/)
  })

  test('a card too large for the paper is refused, and the sentence says by how much', async () => {
    const poster = file('poster.hingebook.json', { ...design(wedge), card: { width: 300, height: 400 } })
    const { code, err } = await dummy('sheet', poster, '--paper', 'a4', '--out', join(folder, 'poster.pdf'))
    expect(err).toMatch(/\d+(\.\d)? mm/)
    expect(err.trim().split('\n')).toHaveLength(1)
    expect(code).toBe(1)
  })
})

describe('cut', () => {
  test('writes a file for each sheet, and says what lies on it', async () => {
    for (const ending of ['dxf', 'svg']) {
      const out = join(folder, `cut.${ending}`)
      const answered = await dummy(
        'cut',
        sound,
        '--paper',
        'a3',
        '--out',
        out,
        '--copies',
        '12',
        '--bridges',
        '0.8',
      )
      expect(answered).toMatchObject({ code: 0, err: '' })
      const lines = answered.out.trim().split('\n')
      expect(lines[0]).toMatch(/cut\.\w+: \d+ pieces? on 297 by 420 mm, \d+ % full\.$/)
      const files = readdirSync(folder).filter((name) => /^cut(-\d+)?\./.test(name) && name.endsWith(ending))
      expect(files).toHaveLength(lines.length)
      expect(lines.length).toBeGreaterThan(1)
    }
    expect(readFileSync(join(folder, 'cut.dxf'), 'utf8')).toMatch(/^0\nSECTION\n[\s\S]*\n0\nEOF\n$/)
  })

  test('tabs go through slits where that is asked for: a cut more for each, in every way out', async () => {
    const tent = { start: 20, end: 80, leftFoot: 30, rightFoot: 30, leftWall: 45, rightWall: 45, tab: 10 }
    const house = file(
      'house.hingebook.json',
      design({ id: 'house', kind: 'glued-tent', on: 'gutter', ...tent }),
    )
    const cuts = async (...more: string[]): Promise<number> => {
      const out = join(folder, 'slits.dxf')
      await dummy('cut', house, '--paper', 'a3', '--out', out, ...more)
      return readFileSync(out, 'utf8')
        .split('\n')
        .filter((line) => line === 'inner-cut').length
    }
    const [flat, slit] = [await cuts(), await cuts('--tabs', 'slit')]
    expect(await cuts('--tabs', 'flat')).toBe(flat)
    expect(slit).toBeGreaterThan(flat)
    expect((await dummy('steps', house, '--tabs', 'slit')).out).toContain(
      'Push the tabs of the house through',
    )
    expect((await dummy('steps', house)).out).not.toContain('slit')
    const sheet = join(folder, 'slits.svg')
    await dummy('sheet', house, '--paper', 'a4', '--out', sheet, '--tabs', 'slit')
    const printed = readFileSync(sheet, 'utf8')
    expect(printed).toContain('through slits, glued behind card')
    // What goes through is not pressed on by shutting the card.
    expect(printed).not.toContain('fold the piece, lay it over')
    expect(await dummy('sheet', house, '--paper', 'a4', '--out', sheet, '--tabs', 'none')).toMatchObject({
      code: 1,
      err: '--tabs must be one of flat, slit, not none.\n',
    })
  })

  test('of a roll it takes as much as is needed', async () => {
    const out = join(folder, 'roll.svg')
    const { code } = await dummy('cut', sound, '--paper', 'roll:300', '--out', out, '--grain', 'free')
    expect(code).toBe(0)
    const [, width, height] = /width="([\d.]+)mm" height="([\d.]+)mm"/.exec(readFileSync(out, 'utf8')) ?? []
    expect(width).toBe('300')
    expect(Number(height)).toBeLessThan(300)
  })

  test.each([
    [
      ['--paper', 'a7', '--out', 'x.dxf'],
      /^--paper must be one of a5, .*roll:WIDTH from 50 to 3000 mm, not a7\.\n$/,
    ],
    [['--paper', '40x300', '--out', 'x.dxf'], /^--paper must be .*, not 40x300\.\n$/],
    [['--paper', 'roll:3001', '--out', 'x.dxf'], /^--paper must be .*, not roll:3001\.\n$/],
    [['--paper', 'a4', '--out', 'x.pdf'], /^--out must name .*\.dxf or \.svg, not x\.pdf\.\n$/],
    [
      ['--paper', 'a4', '--out', 'x.dxf', '--copies', '0'],
      /^--copies must be a whole number from 1 to 500, not 0\.\n$/,
    ],
    [
      ['--paper', 'a4', '--out', 'x.dxf', '--copies', '1.5'],
      /^--copies must be a whole number .*, not 1\.5\.\n$/,
    ],
    [
      ['--paper', 'a4', '--out', 'x.dxf', '--gap', '21'],
      /^--gap must be a number from 0 to 20 mm, not 21\.\n$/,
    ],
    [
      ['--paper', 'a4', '--out', 'x.dxf', '--grain', 'across'],
      /^--grain must be one of kept, free, not across\.\n$/,
    ],
    [['--paper', 'a4', '--out', 'x.dxf', '--perforate', '3'], /^--perforate must be CUT,GAP, .*, not 3\.\n$/],
    [
      ['--paper', '100x100', '--out', 'x.dxf'],
      /^The card, .* does not go on 100 by 100 mm with a margin of 5 mm\.\n$/,
    ],
  ])('%j is refused with what is allowed', async (options, sentence) => {
    const { code, out, err } = await dummy('cut', sound, ...options)
    expect(err).toMatch(sentence)
    expect(out).toBe('')
    expect(code).toBe(1)
  })
})

describe('steps', () => {
  test('are told in order, here or in a file', async () => {
    const { code, out } = await dummy('steps', sound)
    expect(code).toBe(0)
    const numbers = [...out.matchAll(/^(\d+)\. /gm)].map(([, n]) => Number(n))
    expect(numbers).toEqual(numbers.map((_, k) => k + 1))
    expect(out).toContain('A craft knife is a job for an adult.')
    const file = join(folder, 'steps.txt')
    expect(await dummy('steps', sound, '--out', file)).toMatchObject({ code: 0, err: '' })
    expect(readFileSync(file, 'utf8').trimEnd()).toBe(out.trimEnd())
  })

  test('go into a booklet, so many to a page', async () => {
    const file = join(folder, 'steps.pdf')
    const { code, out } = await dummy('steps', sound, '--out', file, '--paper', 'letter', '--per-page', '2')
    expect(code).toBe(0)
    expect(out).toMatch(/: the steps on \d+ pages\.\n$/)
    expect(readFileSync(file).subarray(0, 5).toString()).toBe('%PDF-')
  })

  test.each([
    [['--out', 'steps.doc'], '--out must name a file that ends in .txt or .pdf, not steps.doc.\n'],
    [['--out', 'a.pdf', '--per-page', '3'], '--per-page must be one of 2, 4, 6, not 3.\n'],
    [['--out', 'a.pdf', '--paper', 'a5'], '--paper must be one of a4, letter, not a5.\n'],
    [
      ['--per-page', '4'],
      '--per-page is for a booklet: --out must name a file that ends in .pdf, and it was left out.\n',
    ],
  ])('%j is refused with what is allowed', async (options, sentence) => {
    const { code, err } = await dummy('steps', sound, ...options)
    expect(err).toBe(sentence)
    expect(code).toBe(1)
  })
})

describe('a bad file ends with 1 and one sentence that names what is wrong', () => {
  const bad: [string, unknown, string][] = [
    ['no-json', '{\n  "hingebook": 1,\n  "title": oops\n}', 'line 3'],
    ['cut-short', '{\n  "hingebook": 1,\n', 'line 3'],
    ['empty', '', 'line 1'],
    ['a-list', [], 'design'],
    ['version', { ...design(wedge), hingebook: 2 }, 'hingebook'],
    ['card', { ...design(wedge), card: { width: -5, height: 148 } }, 'card.width'],
    ['extra', design({ ...wedge, colour: 'red' }), 'mechanisms[0].colour'],
    ['kind', design({ ...wedge, kind: 'cut-zigzag' }), 'mechanisms[0].kind'],
    ['text', design({ ...wedge, cut: 'long' }), 'mechanisms[0].cut'],
    ['host', design(wedge, { ...wedge, id: 'eye', on: 'nose/ridge' }), 'mechanisms[1].on'],
    ['twice', design(wedge, wedge), 'mechanisms[1].id'],
  ]
  const refused = async (name: string, field: string, ...words: string[]): Promise<void> => {
    const { code, out, err } = await dummy(...words)
    expect(code, err).toBe(1)
    expect(out).toBe('')
    expect(err.trim().split('\n')).toHaveLength(1)
    expect(err).toContain(`${name}.json: ${field}`)
  }

  test.each(bad)('%s', async (name, content, field) => {
    await refused(name, field, 'check', file(`${name}.json`, content))
  })

  test('whatever is asked of it', async () => {
    const path = file('any.json', design({ ...wedge, cut: 'long' }))
    await refused('any', 'mechanisms[0].cut', 'pose', path, '--opening', '90', '--json')
    await refused(
      'any',
      'mechanisms[0].cut',
      'sheet',
      path,
      '--paper',
      'a4',
      '--out',
      join(folder, 'any.pdf'),
    )
  })

  test('however deep it is', async () => {
    const deep = `${'['.repeat(5000)}${']'.repeat(5000)}`
    const text = JSON.stringify(design(wedge))
    await refused('deep-title', 'title', 'check', file('deep-title.json', text.replace('"Wedge"', deep)))
    await refused('deep-list', 'mechanisms[0]', 'check', file('deep-list.json', text.replace(/\[.*\]/, deep)))
    await refused('deep-cut', 'line 1', 'check', file('deep-cut.json', '['.repeat(5000)))
  })

  test('without a character that a terminal obeys', async () => {
    for (const [name, content] of [
      ['bell', '{ "title": \u0007\u001b[31m }'],
      ['bell-key', { ...design(wedge), '\u001b[2J\u009b': 1 }],
      ['bell-title', { ...design(wedge), title: 'Owl\u001b[31m' }],
      ['bell-host', design({ ...wedge, on: '\u001b]0;owl\u0007' })],
    ] as const) {
      const { code, err } = started('check', file(`${name}.json`, content))
      expect(code).toBe(1)
      // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must not be there
      expect(err.trim()).not.toMatch(/[\u0000-\u001f\u007f-\u009f]/)
    }
  })

  test('a file that is not there', async () => {
    expect(await dummy('check', 'nowhere.json')).toEqual({
      code: 1,
      out: '',
      err: 'nowhere.json: there is no such file.\n',
    })
  })
})

describe('the words of the command line', () => {
  test('--help names every command', async () => {
    const { code, out } = started('--help')
    expect(code).toBe(0)
    for (const word of ['check FILE', 'sheet FILE', 'pose FILE', '--paper', '--out', '--opening', '--json'])
      expect(out).toContain(word)
  })

  test.each([
    [[], 'check, mend, find, sheet, cut, steps, class, pose'],
    [['fold', sound], 'check, mend, find, sheet, cut, steps, class, pose'],
    [['check'], 'Name one design file'],
    [['check', sound, sound], 'Name one design file'],
    [['check', sound, '--loud'], "'--loud'"],
  ])('%o is refused with what is allowed', async (args, words) => {
    const { code, out, err } = await dummy(...args)
    expect(code).toBe(1)
    expect(out).toBe('')
    expect(err).toContain(words)
    expect(err.trim().split('\n')).toHaveLength(1)
  })

  test('a path is meant from where the reader stands, as npm tells it', async () => {
    const { status, stderr } = spawnSync(
      join(ROOT, 'node_modules/.bin/node'),
      ['src/command/dummy.ts', 'check', 'wedge.hingebook.json'],
      {
        cwd: ROOT,
        encoding: 'utf8',
        env: { PATH: process.env.PATH, INIT_CWD: folder },
      },
    )
    expect(stderr).toBe('')
    expect(status).toBe(0)
  })
})

/** The first page's size in mm, shorter side first, as another project's reader sees it. */
async function pageSize(path: string): Promise<number[]> {
  const document = await getDocument({ data: new Uint8Array(readFileSync(path)), verbosity: 0 }).promise
  const [left = 0, bottom = 0, right = 0, top = 0] = (await document.getPage(1)).view
  return [right - left, top - bottom].map((points) => (points / 72) * 25.4).sort((a, b) => a - b)
}

/** All words of the first page, as another project's reader sees them. */
async function words(path: string): Promise<string> {
  const document = await getDocument({ data: new Uint8Array(readFileSync(path)), verbosity: 0 }).promise
  const { items } = await (await document.getPage(1)).getTextContent()
  return items
    .map((item) => ('str' in item ? item.str : ''))
    .join(' ')
    .replaceAll(/\s+/g, ' ')
}

describe('a file that is written', () => {
  test('gets the folders on the way to it', async () => {
    const out = join(folder, 'one', 'two', 'wedge.svg')
    expect(await dummy('picture', sound, '--out', out)).toMatchObject({ code: 0, err: '' })
    expect(readFileSync(out, 'utf8')).toMatch(/^<svg/)
  })

  // Linux lets nobody make a folder in /proc, and says so with the code that a missing folder has.
  test.runIf(process.platform === 'linux')('where none can be made is refused, and at once', async () => {
    const { code, err } = await dummy('picture', sound, '--out', '/proc/nowhere/deeper/wedge.svg')
    expect(code).toBe(1)
    expect(err).toMatch(/^--out \/proc\/nowhere\/deeper\/wedge\.svg: the file cannot be written \(\w+\)\.$/m)
  })
})
