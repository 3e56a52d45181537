// A card that takes a chapter's words without being the chapter's own: it is told of nothing that it lacks. Which
// words those are is read here from the pages of the pack, and from the two cards' files.
import { expect, test, vi } from 'vitest'
import { chapterFor, wordsOn } from '../../src/class/chapter-for.ts'
import { USUAL } from '../../src/class/choice.ts'
import { classOf } from '../../src/class/class.ts'
import { packOf } from '../../src/class/pack.ts'
import { lessonOnDisk } from '../../src/site/lesson/on-disk.ts'
import { chapters, dummy, words } from './shared.ts'

vi.setConfig({ testTimeout: 60_000 })

const taught = chapters.map((chapter) => ({
  ...chapter,
  kind:
    chapter.design.mechanisms.find(({ id }) => id === chapter.subject)?.kind ??
    chapter.design.mechanisms[0]?.kind,
}))

test('the pack of the card for a class speaks of no ledge, roof or body: it has none', async () => {
  const design = dummy('class-card')
  const chapter = chapterFor(taught, design)
  expect(chapter?.slug).toBe('layers')
  if (!chapter) return
  const said = wordsOn(chapter.words(), design)
  // What it can be told is not taken from it.
  expect(said.slips.length).toBeGreaterThan(1)
  expect(said.standards.length).toBeGreaterThan(0)
  expect(said.safety).toMatch(/^All cuts start at the fold/)
  const { sections } = await packOf(
    classOf({
      ...{ design, words, chapter: said, lesson: lessonOnDisk('10-13') },
      choice: { ...USUAL, pupils: 1, groups: 1 },
    }),
  )
  const text = sections
    .flatMap(({ pages }) => pages)
    .flatMap(({ marks }) => marks)
    .flatMap((mark) => (mark.mark === 'word' ? [mark.text] : []))
    .join(' ')
  expect(text).toContain('Class card')
  // The glossary's mountain is like the top of a roof on every card.
  expect(text.replace('like the top of a roof', '')).not.toMatch(/\b(?:ledge|roof|body)\b/i)
})

test('a chapter says all of it about its own card', () => {
  for (const { words: of, design } of chapters) expect(wordsOn(of(), design)).toEqual(of())
})
