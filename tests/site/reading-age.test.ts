import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { mdxToMdast } from 'satteri'
import { describe, expect, test } from 'vitest'
import type { Leaf } from '../../src/site/cells/grammar.ts'
import { counts, grade, stretches } from './reading-age.ts'

/** Grade 5.5 is the school year in which children are ten and turn eleven. */
const HIGHEST_GRADE = 5.5

/** One sentence may be harder than the rest, but not so hard that a child stops there. */
const HARDEST_STRETCH = 10

const CONTENT = fileURLToPath(new URL('../../content/', import.meta.url))

describe('the measure', () => {
  test('gives the published example: 13 words in one sentence, 24 syllables, are grade 11.3', () => {
    // Wikipedia, 'Flesch–Kincaid readability tests', the sentence on the platypus; the formula is that of
    // Kincaid, Fishburne, Rogers and Chissom 1975.
    expect(grade({ words: 13, sentences: 1, syllables: 24 })).toBeCloseTo(11.2646, 4)
    expect(grade({ words: 13, sentences: 1, syllables: 24 })).toBeCloseTo(11.3, 1)
  })

  test('counts that sentence no easier than published', () => {
    const platypus = 'The Australian platypus is seemingly a hybrid of a mammal and reptilian creature.'
    const found = counts([platypus])
    expect(found.words).toBe(13)
    expect(found.sentences).toBe(1)
    // The library gives Australian and reptilian four syllables each, the article three: 26, not 24.
    expect(found.syllables).toBeGreaterThanOrEqual(24)
    expect(found.syllables).toBeLessThanOrEqual(26)
  })

  test('ten words a sentence and 1.2 syllables a word are grade 2.47', () => {
    expect(grade({ words: 50, sentences: 5, syllables: 60 })).toBeCloseTo(2.47, 2)
  })

  test('leaves out the teacher and the folded maths, and reads what stands in attributes', () => {
    const tree = mdxToMdast(
      [
        '<Why>',
        '',
        'One <Term>slit</Term> of <Num of="cut" /> is cut.',
        '',
        '<Formula title="Wide" tex="x">',
        '',
        'Trigonometric identities.',
        '',
        '</Formula>',
        '',
        '</Why>',
        '',
        '<GoesWrong>',
        '<Slip sign="It tears." fault="jams" shows="cutting">Stop. Use tape.</Slip>',
        '</GoesWrong>',
        '',
        '<ForTeachers>',
        '',
        'Misconceptions proliferate.',
        '',
        '</ForTeachers>',
      ].join('\n'),
    ) as Leaf
    const read = stretches(tree)
    expect(read).toEqual([
      { line: 3, text: 'One slit of 30 mm is cut.' },
      { line: 14, text: 'It tears.' },
      { line: 14, text: 'Stop. Use tape.' },
    ])
    expect(counts(read.map(({ text }) => text)).sentences).toBe(4)
  })
})

/** Everything that a pupil reads from beginning to end. */
const files = ['chapters', 'plans'].flatMap((folder) =>
  readdirSync(`${CONTENT}${folder}`)
    .filter((name) => name.endsWith('.mdx'))
    .map((name) => `${folder}/${name}`),
)

describe.each(files)('content/%s', (file) => {
  const source = readFileSync(CONTENT + file, 'utf8')
  const tree = mdxToMdast(source, { features: { frontmatter: true } }) as Leaf
  const front = /^lead:\s*(?:'([^\n]*)'|"([^\n]*)"|([^\n]*))$/m.exec(source)
  const lead = front?.[1]?.replaceAll("''", "'") ?? front?.[2] ?? front?.[3] ?? ''
  const read = [{ line: 1, text: lead }, ...stretches(tree)]

  test('can be read at the age of ten', () => {
    const found = counts(read.map(({ text }) => text))
    expect(found.words, 'words that a pupil reads').toBeGreaterThan(150)
    const hardest = read
      .map(({ line, text }) => ({ line, text, grade: grade(counts([text])) }))
      .sort((a, b) => b.grade - a.grade)
      .slice(0, 5)
      .map((s) => `  content/${file}:${s.line} grade ${s.grade.toFixed(1)}: ${s.text}`)
    expect(grade(found), `hardest stretches:\n${hardest.join('\n')}\n`).toBeLessThanOrEqual(HIGHEST_GRADE)
  })

  test('has no stretch of ten words or more that a child would stop at', () => {
    const hard = read
      .filter(({ text }) => counts([text]).words >= 10)
      .map(({ line, text }) => ({ line, text, grade: grade(counts([text])) }))
      .filter((s) => s.grade > HARDEST_STRETCH)
    expect(hard.map((s) => `content/${file}:${s.line} grade ${s.grade.toFixed(1)}: ${s.text}`)).toEqual([])
  })
})
