import { dirname, join } from 'node:path/posix'
import { describe, expect, test } from 'vitest'
import { importsOf } from './layers.ts'
import { textOf, treeFiles } from './tree.ts'
import { givenBy, pageCode, roomOf, unreadable, wordsIn } from './words.ts'

const tree = treeFiles().filter((file) => /\.(tsx?|astro|mdx|mjs)$/.test(file))

const isWords = (file: string): boolean => /^(content|src\/paper)\/words\//.test(file)

/** A mechanism's names of sizes are data of that mechanism: who adds one touches its file and three lists. */
const MECHANISMS = /^src\/paper\/mechanisms\//

/** What the build says to who writes a chapter, a plan or a lesson: they read English, and no reader meets it. */
const FOR_WRITERS: readonly string[] = [
  'src/site/bench.ts',
  'src/site/cells/grammar.ts',
  'src/site/cells/number.ts',
  'src/site/cells/vocabulary.ts',
  'src/site/lesson/schema.ts',
]

/** What looks like words and is none. */
const EXCEPTIONS: readonly (readonly [file: string, text: string, why: string])[] = [
  ['src/class/words.ts', '“{}” asks for {{}}, which is not given.', 'for who writes a lesson'],
  ['src/drawing/pen/svg-values.ts', 'drawing on-{}', 'classes'],
  ['src/widgets/figures/stage.ts', 'stage stage-{}', 'classes'],
  ['src/making/nest.ts', '{} does not go on the sheet', 'a RangeError'],
  ['src/pages/choose/index.astro', '.choices-bar button', 'a selector'],
  ['src/sheet/files/svg.ts', 'Atkinson Hyperlegible Next', 'a font'],
  ['src/sheet/pages/paper-sizes.ts', 'BZ CA CL CO CR GT MX NI PA PH PR SV US VE', 'codes of countries'],
  ['src/site/cells/Predict.astro', 'name="guess predict"', 'HTML'],
  ['src/site/layouts/Page.astro', 'light dark', 'HTML'],
  ['src/site/layouts/Page.astro', 'width=device-width, initial-scale=1', 'HTML'],
  ['src/widgets/booklet/StepFigure.tsx', 'button, a, input, select, textarea, summary', 'a selector'],
  ['src/widgets/exports/TakeElsewhere.tsx', 'glTF', 'a format'],
  ['src/widgets/projector/lesson.ts', 'button, summary, input, a', 'a selector'],
]

const code = tree.filter(
  (file) =>
    /^src\/.*\.(tsx?|astro)$/.test(file) &&
    !isWords(file) &&
    !MECHANISMS.test(file) &&
    !FOR_WRITERS.includes(file),
)

const rooms = [...new Set(code.map(roomOf))].sort()

describe('what is said stands among the words', () => {
  test.each(rooms)('and not in %s', (room) => {
    const files = code.filter((file) => roomOf(file) === room)
    const isExcepted = (file: string, text: string): boolean =>
      EXCEPTIONS.some(([known, all]) => known === file && all === text)
    const found = files.flatMap((file) =>
      wordsIn(file, textOf(file)).flatMap(({ line, text }) =>
        isExcepted(file, text) ? [] : [`${file}:${line}: ${text}`],
      ),
    )
    expect(found).toEqual([])
  })

  test('in every room of the code', () => {
    expect(rooms.length).toBeGreaterThan(40)
    expect(rooms).toEqual(expect.arrayContaining(['src/command', 'src/paper/checks', 'src/site/cells']))
  })

  test.each(EXCEPTIONS)('but for what is found in %s and is none: %s', (file, text) => {
    expect(wordsIn(file, textOf(file)).map((one) => one.text)).toContain(text)
  })

  test.each(FOR_WRITERS)('but for what writers are told in %s', (file) => {
    expect(wordsIn(file, textOf(file)).length).toBeGreaterThan(0)
  })

  test('in pages too, which all can be read as code', () => {
    const pages = code.filter((file) => file.endsWith('.astro'))
    expect(pages.length).toBeGreaterThan(40)
    for (const page of pages) expect(unreadable(pageCode(textOf(page))), page).toEqual([])
  })
})

describe('among the words', () => {
  const words = tree.filter(isWords)

  test('stands nothing but words: they import words alone', () => {
    expect(words.length).toBeGreaterThan(10)
    for (const file of words)
      for (const imports of importsOf(file, textOf(file)))
        expect(imports.startsWith('.') && isWords(join(dirname(file), imports)), `${file}: ${imports}`).toBe(
          true,
        )
  })

  test('stands nothing that nobody says', () => {
    const users = new Map<string, string[]>()
    for (const file of tree) {
      const text = textOf(file)
      for (const imports of importsOf(file, text)) {
        const path = join(dirname(file), imports)
        if (isWords(path)) users.set(path, [...(users.get(path) ?? []), text])
      }
    }
    const unsaid = words.flatMap((file) =>
      givenBy(file, textOf(file)).flatMap((name) =>
        users.get(file)?.some((text) => new RegExp(`\\b${name}\\b`).test(text)) ? [] : [`${file}: ${name}`],
      ),
    )
    expect(unsaid).toEqual([])
  })
})

/** Made-up code: `§` stands for the dollar of a template, which the linter takes for a slip. */
const written = (source: string): string => source.replaceAll('§', '$')

describe('words are found', () => {
  test.each([
    ['a sentence between tags', 'x.tsx', '<p>It shuts flat.</p>', 'It shuts flat.'],
    ['a sentence on two lines', 'x.tsx', '<p>\n  It shuts\n  flat.\n</p>', 'It shuts flat.'],
    ['one word between tags', 'x.tsx', '<b>Undo</b>', 'Undo'],
    ['one word put between tags', 'x.tsx', "<b>{isOpen ? 'Shut' : sign}</b>", 'Shut'],
    ['a label', 'x.tsx', '<Field label="Depth" />', 'Depth'],
    ['a label that depends', 'x.tsx', "<button aria-label={at > 0 && 'Back'} />", 'Back'],
    ['a label of a table', 'x.ts', "const field = { name: 'cut', label: 'Depth' }", 'Depth'],
    ['a template', 'x.ts', 'const told = `§{id} is cut §{by} too deep.`', '{} is cut {} too deep.'],
    ['words with a value between', 'x.ts', 'const told = `page §{n} of §{all}`', 'page {} of {}'],
    ['a word of one letter', 'x.ts', "say('a heron')", 'a heron'],
    ['a string', 'x.ts', "say('the gutter')", 'the gutter'],
    ['a refusal', 'x.ts', "throw new Refusal('There is no such file.')", 'There is no such file.'],
    ['a label in SVG', 'x.ts', 'const svg = `<svg aria-label="The card"/>`', '<svg aria-label="The card"/>'],
    ['text between tags of SVG', 'x.ts', "const svg = '<text>Glue here</text>'", '<text>Glue here</text>'],
    ['text of a page', 'x.astro', '---\nconst a = 1\n---\n<!doctype html>\n<p {a}>Try it</p>', 'Try it'],
    ['text in front of a page', 'x.astro', "---\nconst title = 'Try it'\n---\n<p>{title}</p>", 'Try it'],
    ['a page without a front', 'x.astro', '<h1>Words</h1>', 'Words'],
  ])('%s', (_, file, source, text) => {
    expect(wordsIn(file, written(source)).map((one) => one.text)).toEqual([text])
  })

  test('with the line that they begin on', () => {
    expect(wordsIn('x.ts', "\n\nsay('the gutter')")).toEqual([{ line: 3, text: 'the gutter' }])
    expect(wordsIn('x.astro', '---\nconst a = 1\n---\n<style>\np {}\n</style>\n<p>\n  Try it\n</p>')).toEqual(
      [{ line: 8, text: 'Try it' }],
    )
  })

  test.each([
    ['classes', 'x.tsx', '<p class={`card §{isOpen ? "is open" : "at rest"}`} />'],
    ['a selector', 'x.ts', "page.querySelector('main section')?.closest('section article')"],
    ['a thrown Error', 'x.ts', "throw new Error('there is no such mechanism')"],
    ['a thrown RangeError', 'x.ts', 'throw new RangeError(`there is no mechanism §{id}`)'],
    ['a type', 'x.ts', "type Next = 'item or end' | 'name or end'"],
    ['an import', 'x.ts', "import { a } from './no such file.ts'\nexport { b } from './nor this one.ts'"],
    ['a comment', 'x.ts', '// It shuts flat.\nconst a = 1 /* and opens */'],
    ['a key', 'x.ts', "if (key === 'PageDown') next()"],
    ['a path of SVG', 'x.tsx', '<path d="M 0 0 L 10 10" transform="rotate(10 to 20)" />'],
    ['SVG', 'x.ts', 'const svg = `<path d="§{d}" stroke-linejoin="round"/>`'],
    ['values with their units', 'x.ts', 'const size = `§{wide} x §{high} mm`'],
    ['operators of PDF', 'x.ts', 'const ops = `q §{matrix} cm /§{name} Do Q`'],
    ['a style', 'x.ts', "const style = 'stroke-linecap: round; fill: none;'"],
    ['a question to the style sheet', 'x.ts', "matchMedia('(prefers-reduced-motion: reduce)')"],
    ['a script', 'x.ts', 'const script = `(() => { if (a in b) return of c })()`'],
    ['signs and values', 'x.tsx', '<p>{rise} · 90°&nbsp;<b>{id}</b></p>'],
    ['words said elsewhere', 'x.tsx', '<p title={says.title}>{says.shuts(id)}</p>'],
    [
      'a style or script of a page',
      'x.astro',
      '<style>\np a { left: 0 }\n</style><script>say(a in b)</script>',
    ],
  ])('but not %s', (_, file, source) => {
    expect(wordsIn(file, written(source))).toEqual([])
  })
})
