/** The teacher's own pages: the lesson by the clock, what to ask, what goes wrong, what must be on the tables. */
import * as says from '../../../content/words/class/pages.ts'
import { large } from '../../../content/words/grammar.ts'
import { plainText } from '../../paper/index.ts'
import type { SheetPage } from '../../sheet/index.ts'
import type { Block, SheetMark } from '../../sheet/marks/setting.ts'
import { hung, moved, paragraph } from '../../sheet/marks/setting.ts'
import type { Class, Section } from '../class.ts'
import { pageNumbers, paperIn } from '../class.ts'
import type { Shopping } from '../shopping.ts'
import { COPY } from '../shopping.ts'
import { startsOf } from '../timings.ts'
import { filled, standardName } from '../words.ts'
import type { Cell, Look } from './frame.ts'
import { bold, LOOKS, pagesOf, piled, said } from './frame.ts'
import { valuesOf } from './worksheet.ts'

const dash = (block: Block, { body }: Look): Block =>
  hung(paragraph([{ text: '–' }], body, 4).marks, 4.5, block)

/** A list of sentences. */
const list =
  (texts: readonly string[], look: Look) =>
  (width: number): readonly Block[] =>
    texts.map((text) => dash(said(text, look.body, width - 4.5), look))

/** The list of what must be there, in whole sentences. */
export function shoppingSays({ order }: Class, shopping: Shopping): readonly string[] {
  const { words, choice } = order
  const { card, sticking } = shopping
  const m = words.materials
  const stock = ({ grams, us }: typeof card) => ({ grams, pounds: us.pounds, grade: us.grade })
  const paper = paperIn({ order }).label
  const text = (name: string, values: Readonly<Record<string, string | number>>): string =>
    filled(m[name] ?? '', values)
  return [
    text('card', { n: shopping.cardSheets, paper, ...stock(card) }),
    text('paper', { n: shopping.paperSheets, paper, ...stock(COPY) }),
    text('scissors', { n: shopping.scissors, left: shopping.leftScissors }),
    text('rulers', { n: shopping.rulers }),
    text('corners', { n: shopping.corners }),
    ...(sticking.taped > 0
      ? [
          text('tape', {
            metres: shopping.tapeMetres,
            rolls: shopping.rolls,
            each: Math.round(sticking.tape),
            joints: sticking.taped,
            pupils: choice.pupils,
          }),
        ]
      : []),
    ...(sticking.glued > 0
      ? [
          text('glue', {
            n: shopping.glueSticks,
            places: sticking.glued,
            area: (sticking.glue / 100).toFixed(0),
          }),
        ]
      : []),
  ]
}

/** A bar of the lesson's parts, as long as their minutes. */
function bar(minutes: readonly number[], width: number): Block {
  const whole = minutes.reduce((sum, m) => sum + m, 0)
  const height = 5
  const starts = startsOf(minutes).map((m) => (m / whole) * width)
  const line = (from: readonly [number, number], to: readonly [number, number]): SheetMark => ({
    mark: 'path',
    runs: [[from, to]],
    closed: false,
    role: 'axis',
    of: 'bar',
  })
  return {
    width,
    height: height + 1,
    marks: [
      line([0, 0], [width, 0]),
      line([0, height], [width, height]),
      ...[...starts, width].map((x) => line([x, 0], [x, height])),
      ...minutes.flatMap((m, k): SheetMark[] => [
        {
          mark: 'word',
          at: [(starts[k] ?? 0) + ((m / whole) * width) / 2, height - 1.5],
          text: `${m}`,
          role: 'note',
          anchor: 'middle',
          size: 3,
        },
      ]),
    ],
  }
}

const span = (numbers: readonly [number, number] | null): string =>
  numbers === null ? '' : numbers[0] === numbers[1] ? says.onePage(numbers[0]) : says.pages(...numbers)

export function teacherPages(
  of: Class,
  shopping: Shopping,
  sections: readonly Section[],
): readonly SheetPage[] {
  const { order, parts, notes } = of
  const { words, lesson, chapter, choice } = order
  const look = choice.large ? LOOKS.large : LOOKS.usual
  const { labels } = words
  const values = valuesOf(of)
  const fill = (texts: readonly string[]): readonly string[] => texts.map((text) => filled(text, values))
  const cell = (name: string, texts: readonly string[]): Cell => ({
    label: labels[name] ?? '',
    rows: list(texts, look),
  })
  const minutes = parts.map((part) => part.minutes)
  const starts = startsOf(minutes)
  const indent = choice.large ? 40 : 27
  const lessonCell: Cell = {
    label: labels.lesson ?? '',
    rows: (width) => [
      bar(minutes, width),
      ...parts.map((part, k) =>
        hung(
          piled(
            [
              paragraph([bold(words.parts[part.name])], look.body, indent - 3),
              paragraph(
                [
                  {
                    text: says.time(starts[k] ?? 0, (starts[k] ?? 0) + part.minutes, labels.minutes),
                    role: 'guide',
                  },
                ],
                look.small,
                indent - 3,
              ),
            ],
            0.6,
          ).marks,
          indent,
          atLeast(
            said(filled(part.does, values), look.body, width - indent),
            look.body.leading + look.small.leading,
          ),
        ),
      ),
    ],
  }
  const pairs = (all: readonly { readonly head: string; readonly text: string }[]) => (width: number) =>
    all.map(({ head, text }) => paragraph([bold(head), { text: ` ${text}` }], look.body, width))
  const glossary = lesson.vocabulary.flatMap((word) => {
    const meaning = words.glossary[word]
    return meaning === undefined ? [] : [{ head: `${word}:`, text: meaning }]
  })
  const questions = [
    ...(chapter.ask ? [{ asks: chapter.ask.asks, answer: chapter.ask.answer }] : []),
    ...lesson.questions,
  ]
  const mistakes = [...chapter.slips, ...lesson.slips]
  const papers = (['teacher', 'making', 'worksheets', 'recall', 'key', 'certificates'] as const)
    .flatMap((name) => {
      const numbers = pageNumbers(sections, name)
      return numbers === null ? [] : [numbers]
    })
    .reduce<[number, number][]>((all, [from, to]) => {
      const last = all.at(-1)
      if (last && last[1] + 1 === from) last[1] = to
      else all.push([from, to])
      return all
    }, [])
  const printing = words.printing.map((text) =>
    filled(text, {
      cards: large(span(pageNumbers(sections, 'sheets'))),
      papers: says.both(papers.map(span)),
    }),
  )
  const rubric: Cell = {
    label: labels.rubric ?? '',
    // Its levels stand over all its rows; in large print each row names them.
    whole: !choice.large,
    rows: (width) => rubricRows(of, width, look),
  }
  return pagesOf(
    [
      lessonCell,
      cell('aims', fill(lesson.aims)),
      { label: labels.tables ?? '', rows: list(shoppingSays(of, shopping), look) },
      cell('printing', [...printing, ...notes]),
      cell('safety', [...words.safety, ...(chapter.safety === '' ? [] : [chapter.safety])]),
      cell('hands', words.hands),
      { label: labels.words ?? '', rows: pairs(glossary) },
      {
        label: labels.questions ?? '',
        rows: pairs(
          questions.map(({ asks, answer }) => ({ head: filled(asks, values), text: filled(answer, values) })),
        ),
      },
      {
        label: labels.mistakes ?? '',
        rows: pairs(
          mistakes.map(({ sign, cure }) => ({ head: filled(sign, values), text: filled(cure, values) })),
        ),
      },
      cell('misconceptions', chapter.misconceptions),
      cell('notes', fill(lesson.notes)),
      rubric,
      {
        label: labels.curriculum ?? '',
        rows: (width) => {
          const [first, ...rest] = pairs(
            chapter.standards.map(({ code, says: asks }) => ({
              head: `${standardName(code, words)}:`,
              text: asks,
            })),
          )(width)
          // What is said of them all is never left alone at the end of a page.
          return [
            piled([said(words.curriculum, look.body, width), ...(first ? [first] : [])], look.row),
            ...rest,
          ]
        },
      },
    ],
    {
      ...{ paper: paperIn(of), look },
      head: (width) =>
        piled(
          [
            paragraph([bold(plainText(order.design.title))], look.title, width),
            said(
              filled(labels.lead ?? '', {
                pupils: choice.pupils,
                groups: choice.groups,
                ages: says.agesOf(lesson.label),
                minutes: minutes.reduce((sum, m) => sum + m, 0),
                chapter: chapter.title,
              }),
              look.body,
              width,
            ),
          ],
          look.row * 1.4,
        ),
      foot: `${plainText(order.design.title)} · ${labels.teacher}`,
      says: labels.teacher ?? '',
    },
  )
}

const atLeast = (block: Block, height: number): Block => ({
  ...block,
  height: Math.max(block.height, height),
})

/** The aims as rows, the levels as columns; in large print one under another. */
function rubricRows({ order }: Class, width: number, look: Look): readonly Block[] {
  const { words, lesson, choice } = order
  if (choice.large)
    return lesson.rubric.map(({ aim, levels }) =>
      piled(
        [
          paragraph([bold(aim)], look.body, width),
          ...levels.map((text, k) =>
            paragraph([bold(`${words.levels[k]}:`), { text: ` ${text}` }], look.body, width),
          ),
        ],
        look.row * 0.5,
      ),
    )
  const share = width / (words.levels.length + 1)
  const row = (texts: readonly { readonly text: string; readonly bold?: boolean }[]): Block => {
    const blocks = texts.map((run) => paragraph([run], look.small, share - 3))
    return {
      width,
      height: Math.max(...blocks.map(({ height }) => height)),
      marks: blocks.flatMap(({ marks }, k) => marks.map((mark) => moved(mark, k * share, 0))),
    }
  }
  return [
    row([{ text: '' }, ...words.levels.map(bold)]),
    ...lesson.rubric.map(({ aim, levels }) => row([bold(aim), ...levels.map((text) => ({ text }))])),
  ]
}
