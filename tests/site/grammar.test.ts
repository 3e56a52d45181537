import { mdxToJs, mdxToMdast } from 'satteri'
import { describe, expect, test } from 'vitest'
import type { Leaf } from '../../src/site/cells/grammar.ts'
import { blotOf, cellGrammar, nearest, pathOf } from '../../src/site/cells/grammar.ts'
import { CELLS, WORDS } from '../../src/site/cells/vocabulary.ts'

const tree = (source: string): Leaf => mdxToMdast(source) as Leaf

/** A chapter that is right, cell by cell: each case spoils one. */
const right: Readonly<Record<string, string>> = {
  TryIt: '<TryIt>\n\nDrag it: <Num of="rise" id="beak" at={90} />.\n\n</TryIt>',
  Predict:
    '<Predict>\n\nUp?\n\n<Guess says="Up" right>So it is.</Guess>\n<Guess says="Down">No.</Guess>\n\n</Predict>',
  Why: '<Why>\n\nBecause of the <Term>gutter</Term>.\n\n<Formula title="Rise" source="Euclid." tex="a^2">Well.</Formula>\n\n</Why>',
  MakeIt:
    '<MakeIt>\n\n<TakeCare>Blades are for adults.</TakeCare>\n\n<Step shows="flat">Cut it.</Step>\n\n</MakeIt>',
  MeasureYours: '<MeasureYours>\n\nStand a ruler on the page.\n\n</MeasureYours>',
  Challenge:
    '<Challenge>\n\n<Goal wants={{ sound: true }}>Reach it.</Goal>\n<Goal wants={{ sound: true }}>Reach that.</Goal>\n\n<OpenTask>Make one.</OpenTask>\n\n</Challenge>',
  GoesWrong:
    '<GoesWrong>\n\n<Slip sign="Flat." fault="jams" shows="shut">Push.</Slip>\n<Slip sign="Torn." fault="tears" shows="cutting">Tape.</Slip>\n\n</GoesWrong>',
  Recall:
    '<Recall>\n\n' +
    '<Question asks="Up?">\n\n<Guess says="Up" right>Yes.</Guess>\n<Guess says="Down">No.</Guess>\n\n</Question>\n\n'.repeat(
      2,
    ) +
    '</Recall>',
  ForTeachers: '<ForTeachers>\n\nTwo lessons.\n\n</ForTeachers>',
}

const chapter = (spoilt: Readonly<Record<string, string>> = {}): string =>
  CELLS.map((cell) => spoilt[cell] ?? right[cell] ?? '').join('\n\n')

/** The sentence an author gets; the line is checked where it matters. */
const said = (source: string): string | undefined => blotOf(tree(source))?.sentence

test('a chapter with every cell once, in order, is right', () => {
  expect(blotOf(tree(chapter()))).toBeNull()
})

test('comments and front matter say nothing', () => {
  expect(blotOf(tree(`{/* to be checked */}\n\n${chapter()}`))).toBeNull()
})

describe('an author is told what was received and what is expected', () => {
  test.each([
    [
      'text outside every cell',
      { TryIt: `Hello.\n\n${right.TryIt}` },
      'Text stands outside every cell; it belongs in <TryIt>, <Predict>, <Why>, <MakeIt>, <MeasureYours>, <Challenge>, <GoesWrong>, <Recall> or <ForTeachers>.',
    ],
    [
      'a mistyped word',
      { Why: '<Why>\n\nThe <Trem>gutter</Trem>.\n\n</Why>' },
      /^<Trem> is not a word of this book\. Did you mean <Term>\? It knows TryIt, /,
    ],
    [
      'a word in the wrong place',
      { Why: '<Why>\n\n<Step shows="flat">Cut.</Step>\n\n</Why>' },
      '<Step> stands in <Why>; it belongs in <MakeIt>.',
    ],
    [
      'a number outside a cell',
      { TryIt: `<Num of="rise" id="beak" at={90} />\n\n${right.TryIt}` },
      '<Num> stands at the top level of the chapter; it belongs in the text of a cell.',
    ],
    [
      'too few guesses',
      { Predict: '<Predict>\n\nUp?\n\n<Guess says="Up">Yes.</Guess>\n\n</Predict>' },
      '<Predict> holds only 1 <Guess>; it needs at least 2. One possible answer; its text is what there is to say to whoever chose it.',
    ],
    [
      'no caution',
      { MakeIt: '<MakeIt>\n\n<Step shows="flat">Cut it.</Step>\n\n</MakeIt>' },
      '<MakeIt> holds no <TakeCare>; it needs one at least. A caution: blades, heat, an adult, the rules of the school.',
    ],
    [
      'a caution after the cutting',
      { MakeIt: '<MakeIt>\n\n<Step shows="flat">Cut it.</Step>\n\n<TakeCare>So.</TakeCare>\n\n</MakeIt>' },
      '<TakeCare> stands after <Step>; in <MakeIt> it comes first.',
    ],
    [
      'an attribute that is not there',
      { TryIt: '<TryIt>\n\n<Num off="rise" />\n\n</TryIt>' },
      /^<Num> has the attribute off, which it does not know\. It takes of, id, .* Did you mean of\?$/,
    ],
    [
      'an attribute left out',
      { TryIt: '<TryIt>\n\n<Num id="beak" />\n\n</TryIt>' },
      /^<Num> lacks of: What is read off: .* It expects words, as in of="\.\.\."\.$/,
    ],
    [
      'words where a number belongs',
      { TryIt: '<TryIt>\n\n<Num of="rise" at="ninety" />\n\n</TryIt>' },
      '<Num> has at with "ninety"; it expects a number in braces, as in at={90}.',
    ],
    [
      'a state that no figure shows',
      { MakeIt: '<MakeIt>\n\n<TakeCare>So.</TakeCare>\n\n<Step shows="bent">Cut.</Step>\n\n</MakeIt>' },
      /^<Step> has shows with "bent"; it expects "flat", .* or "covering"\.$/,
    ],
    [
      'a cell twice',
      { Why: `${right.Why}\n\n${right.Why}` },
      '<Why> stands here a second time; a chapter has each cell once.',
    ],
    [
      'cells out of order',
      { Predict: right.Why ?? '', Why: right.Predict ?? '' },
      /^<Predict> stands after <Why>; the order of cells is <TryIt>, <Predict>, /,
    ],
    [
      'a cell left out',
      { GoesWrong: '' },
      /^The chapter ends without <GoesWrong>\. What goes wrong, each with its cure/,
    ],
    [
      'text in a word that cannot show it',
      { TryIt: '<TryIt>\n\n<Num of="margin">rise</Num>\n\n</TryIt>' },
      '<Num> holds text, which it cannot show; close it at once, as in <Num />.',
    ],
    [
      'an import',
      { TryIt: `import x from 'x'\n\n${right.TryIt}` },
      'The chapter imports or exports something; its words are there without that.',
    ],
  ] as const)('%s', (_, spoilt, sentence) => {
    const found = said(chapter(spoilt as Readonly<Record<string, string>>))
    if (typeof sentence === 'string') expect(found).toBe(sentence)
    else expect(found).toMatch(sentence)
  })

  test('and on which line', () => {
    const source = chapter({ Why: '<Why>\n\nText.\n\n<Step shows="flat">Cut.</Step>\n\n</Why>' })
    const line = source.split('\n').findIndex((text) => text.includes('<Step shows="flat">Cut.</Step>')) + 1
    expect(blotOf(tree(source))?.line).toBe(line)
  })
})

test('a mistyped name finds the nearest one, a strange one finds none', () => {
  expect(nearest('Chalenge', Object.keys(WORDS))).toBe('Challenge')
  expect(nearest('rise', ['reach', 'Rise'])).toBe('Rise')
  expect(nearest('Wheelbarrow', Object.keys(WORDS))).toBeUndefined()
})

describe('while a chapter is built', () => {
  const build = (source: string) =>
    mdxToJs(source, {
      mdastPlugins: [cellGrammar],
      fileURL: new URL('file:///books/hingebook/content/chapters/layers.mdx'),
    })

  test('a blot stops it, with file and line, front matter counted', async () => {
    const spoilt = chapter({ Why: '<Why>\n\n<Step shows="flat">Cut.</Step>\n\n</Why>' })
    const source = `---\ntitle: Layers\n---\n\n${spoilt}`
    const line = source.split('\n').indexOf('<Step shows="flat">Cut.</Step>') + 1
    await expect((async () => build(source))()).rejects.toThrow(
      `content/chapters/layers.mdx:${line} <Step> stands in <Why>; it belongs in <MakeIt>.`,
    )
  })

  test('every word is told its place, so that a number can name it later', async () => {
    const source = `---\ntitle: Layers\n---\n\n${chapter()}`
    const line = source.split('\n').findIndex((text) => text.includes('<Num of="rise"')) + 1
    const { code } = await build(source)
    expect(code).toMatch(new RegExp(`of: "rise",[^}]*place: "content/chapters/layers\\.mdx:${line}"`))
    expect(code.match(/place: "/g)?.length).toBe((source.match(/<[A-Z]\w+/g) ?? []).length)
  })
})

test('messages name the file from content on', () => {
  expect(pathOf(new URL('file:///books/hingebook/content/chapters/layers.mdx'))).toBe(
    'content/chapters/layers.mdx',
  )
})

test('every word says in a sentence what it and its attributes are for', () => {
  for (const [name, word] of Object.entries(WORDS)) {
    expect(word.says, name).toMatch(/^[A-Z].*\.$/)
    for (const [attribute, { says }] of Object.entries(word.attributes))
      expect(says, `${name} ${attribute}`).toMatch(/^[A-Z].*\.$/)
  }
})
