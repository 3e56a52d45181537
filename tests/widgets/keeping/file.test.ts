import { parse } from '@humanwhocodes/momoa'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { parseJson, pathNames, placeIn, walk } from '../../../src/file/json.ts'
import {
  looksLikeDesign,
  MOST_FILE_BYTES,
  readFile,
  readFileText,
  readPasted,
} from '../../../src/widgets/keeping/file.ts'
import { fileName, fileText } from '../../../src/widgets/keeping/file-text.ts'
import { linkText } from '../../../src/widgets/keeping/link.ts'
import { design, gluedPond, vFold } from '../../paper/shared/designs.ts'
import { kept } from './designs.ts'

const beak = vFold('beak', 'gutter', 110, -40, 45)

const heron = design([beak, gluedPond])

const refusal = (text: string): string => {
  const read = readFileText(text)
  if (read.read) throw new Error('it was read without complaint')
  return read.sentence
}

describe('a file', () => {
  test('holds the whole design, whatever is in it', () => {
    fc.assert(
      fc.property(kept, (made) => {
        expect(readFileText(fileText(made))).toEqual({ read: true, design: made })
      }),
      { numRuns: 100 },
    )
  })

  test('has each part on a line of its own', () => {
    expect(fileText(heron).split('\n').slice(0, 7)).toEqual([
      '{',
      '  "hingebook": 1,',
      '  "title": "Night garden",',
      '  "card": {"width":105,"height":148,"caliper":0.25},',
      '  "mechanisms": [',
      `    ${JSON.stringify(heron.mechanisms[0])},`,
      `    ${JSON.stringify(heron.mechanisms[1])}`,
    ])
  })

  test('is read in any encoding that editors write', async () => {
    const text = fileText({ ...heron, title: 'Żółw' })
    const utf16 = new Uint8Array(
      new Uint16Array([0xfeff, ...Array.from(text, (c) => c.charCodeAt(0))]).buffer,
    )
    const big = utf16.map((_, k) => utf16[k ^ 1] as number)
    for (const part of [text, `\ufeff${text}`, utf16, big]) {
      const read = await readFile(new Blob([part]))
      expect(read.read && read.design.title).toBe('Żółw')
    }
  })

  test('of today’s first version opens, and of a later one says so', () => {
    expect(readFileText(JSON.stringify({ ...heron, hingebook: 1 })).read).toBe(true)
    expect(refusal(JSON.stringify({ ...heron, hingebook: 2 }))).toBe(
      'The file is of version 2 of the format, and this page reads version 1. Load the page again.',
    )
  })

  test('that cannot be read is told by its line', () => {
    expect(refusal('')).toBe('Line 1 is empty, and so is the rest of the file.')
    expect(refusal('{\n  "hingebook": 1,\n  "title": oops\n}')).toBe(
      'Line 3 is not JSON from character 12 on: "title": oops',
    )
    expect(refusal(fileText(heron).replace('"apex":110', '"apex":4000'))).toBe(
      'Line 6: Beak: the apex must be from 0 to 2000 mm, not 4000. The nearest that works is 2000.',
    )
    expect(readFileText(fileText(heron).replace('"height":20', '"height":"x"'))).toEqual({
      read: false,
      sentence: 'Line 7: Pond: the height must be a number from 0 to 2000 mm, not "x".',
      line: 7,
      column: JSON.stringify(heron.mechanisms[1]).indexOf('"height":') + 4 + '"height":'.length + 1,
    })
    expect(refusal('[1, 2]')).toBe('Line 1: Design must be an object in curly brackets, not [1,2].')
    expect(refusal('['.repeat(50_000))).toBe(
      'Line 1 nests brackets more than 10000 deep from character 10001 on: no design does.',
    )
  })

  test('that is larger than any design is not read', async () => {
    const huge = new Blob([new Uint8Array(MOST_FILE_BYTES + 1)])
    expect(await readFile(huge)).toEqual({
      read: false,
      sentence: 'The file is larger than 1 MB: no design is so large.',
    })
    expect(refusal(' '.repeat(MOST_FILE_BYTES + 1))).toBe(
      'The file is larger than 1 MB: no design is so large.',
    )
  })

  test('pasted, a text is a file or a link', async () => {
    expect(await readPasted(fileText(heron))).toEqual({ read: true, design: heron })
    const link = `Look: https://example.org/dummy/#${await linkText(heron)}\n`
    expect(looksLikeDesign(link)).toBe(true)
    expect(looksLikeDesign(fileText(heron))).toBe(true)
    expect(looksLikeDesign('Dear owl')).toBe(false)
    expect(await readPasted(link)).toEqual({ read: true, design: heron })
  })

  test.each([
    ['Heron’s beak', 'heron-s-beak.hingebook.json'],
    ['Żółw 2', 'żółw-2.hingebook.json'],
    ['../../etc', 'etc.hingebook.json'],
    ['<>', 'dummy.hingebook.json'],
  ])('%s is called %s', (title, name) => expect(fileName(title)).toBe(name))
})

/** What a JSON value may be made of, written with and without room. */
const json = fc
  .tuple(fc.json({ maxDepth: 5 }), fc.constantFrom(0, 2))
  .map(([text, indent]) => JSON.stringify(JSON.parse(text), null, indent))

/** A text with one stretch taken out, doubled or overwritten. */
const mutated = fc
  .record({
    text: json,
    from: fc.nat(),
    long: fc.nat({ max: 4 }),
    put: fc.constantFrom('', '"', ',', '{', ']', '\\', 'é', '\u0001', '1e', '-', '00', 'nul', '\n'),
  })
  .map(({ text, from, long, put }) => {
    const at = from % (text.length + 1)
    return text.slice(0, at) + put + text.slice(at + long)
  })

describe('where a text stops being JSON', () => {
  // The engine’s own reader, and another library’s tree, say the same.
  test('it is JSON exactly where the engine reads it', () => {
    fc.assert(
      fc.property(fc.oneof(json, mutated, fc.string()), (text) => {
        let isJson = true
        try {
          JSON.parse(text)
        } catch {
          isJson = false
        }
        expect(walk(text).fault === null).toBe(isJson)
        expect(parseJson(text).ok).toBe(isJson)
      }),
      { numRuns: 2000 },
    )
  })

  test('the engine finds the fault at the same place, or within the word that it begins', () => {
    fc.assert(
      fc.property(mutated, (text) => {
        try {
          JSON.parse(text)
        } catch (error) {
          const told = /at position (\d+)/.exec(String(error))?.[1]
          const fault = walk(text).fault
          if (told === undefined || fault === null) return
          expect(fault).toBeLessThanOrEqual(Number(told))
          expect(text.slice(fault, Number(told))).toMatch(/^[\w.+\\-]*$/)
        }
      }),
      { numRuns: 1500 },
    )
  })

  test('a value lies where another library’s tree has it', () => {
    const text = fileText(heron)
    const ast = parse(text)
    const value = (node: (typeof ast)['body'], path: readonly string[]): (typeof ast)['body'] => {
      const [name, ...rest] = path
      if (name === undefined) return node
      const inner =
        node.type === 'Object'
          ? node.members.find((one) => (one.name.type === 'String' ? one.name.value : one.name.name) === name)
              ?.value
          : node.type === 'Array'
            ? node.elements[Number(name)]?.value
            : undefined
      return inner ? value(inner, rest) : node
    }
    for (const path of [
      'hingebook',
      'title',
      'card.width',
      'card.nothing',
      'mechanisms[0].cut',
      'mechanisms[1]',
      'mechanisms[1].walls[2]',
      'mechanisms[7].id',
      'art[0].shape',
    ]) {
      const { line, column } = value(ast.body, pathNames(path)).loc.start
      expect([path, placeIn(text, walk(text, pathNames(path)).at)]).toEqual([path, { line, column }])
    }
  })

  test('a long or deep text is walked in no time', () => {
    const deep = `${'['.repeat(1e6)}${']'.repeat(1e6)}`
    expect(walk(deep)).toMatchObject({ isTooDeep: true, fault: 10_000 })
    const long = `[${'1,'.repeat(9e5)}1]`
    expect(walk(long, ['900000'])).toMatchObject({ fault: null, at: long.length - 2 })
    expect(walk(`"${'a'.repeat(1e6)}"`).fault).toBeNull()
  })
})
