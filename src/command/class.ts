import { extname } from 'node:path'
import * as says from '../../content/words/command/class.ts'
import { notFile, notOneOf } from '../../content/words/command/options.ts'
import { chapterFor, leadIn, wordsOn } from '../class/chapter-for.ts'
import type { Choice, Read } from '../class/choice.ts'
import {
  AGES_NAMES,
  MOST_PUPILS,
  readAges,
  readGroups,
  readMinutes,
  readPaper,
  readPupils,
  USUAL,
} from '../class/choice.ts'
import type { Class } from '../class/class.ts'
import { classOf, nameOfMeasure } from '../class/class.ts'
import type { Pack } from '../class/pack.ts'
import { packOf, packPdf } from '../class/pack.ts'
import { readingsTable } from '../class/readings.ts'
import type { Measured } from '../class/spread.ts'
import { measuredOn, sizeName } from '../class/spread.ts'
import type { Design } from '../paper/index.ts'
import { visibleText } from '../paper/index.ts'
import { fontOnDisk } from '../sheet/files/font-on-disk.ts'
import { papers, TooLargeError, uncovered } from '../sheet/index.ts'
import type { ChapterOnDisk } from '../site/lesson/on-disk.ts'
import { chaptersOnDisk, lessonOnDisk, packWordsOnDisk } from '../site/lesson/on-disk.ts'
import type { Command, Options } from './command.ts'
import { Refusal } from './refusal.ts'
import { writeOut } from './write-out.ts'

/** A class pack: all that a lesson needs, as one file to print, and a table for the readings. */
export const classPack: Command = {
  name: 'class',
  usage: says.usage,
  help: says.help(
    MOST_PUPILS,
    USUAL.pupils,
    USUAL.groups,
    AGES_NAMES,
    papers.map(({ name }) => name),
  ),
  options: {
    out: { type: 'string' },
    table: { type: 'string' },
    pupils: { type: 'string' },
    groups: { type: 'string' },
    ages: { type: 'string' },
    minutes: { type: 'string' },
    paper: { type: 'string' },
    size: { type: 'string' },
    chapter: { type: 'string' },
    large: { type: 'boolean' },
    picture: { type: 'boolean' },
    certificate: { type: 'boolean' },
  },
  async run(design, options, place) {
    const out = named(options.out, 'out', '.pdf')
    const table = options.table === undefined ? null : named(options.table, 'table', '.csv')
    const chapter = chapterOf(design, options)
    const own = chapter.design.title === design.title ? chapter : null
    const { subject: lead, point } = own ?? {}
    const choice = choiceOf(
      design,
      options,
      measuredOn(uncovered(design), lead ?? leadIn(design)?.id ?? null, point),
    )
    const made = classOf(
      {
        ...{ design, choice },
        ...{
          lesson: lessonOnDisk(choice.ages),
          words: packWordsOnDisk(),
          chapter: wordsOn(chapter.words(), design),
        },
        ...(lead === undefined ? {} : { lead }),
        ...(point === undefined ? {} : { point }),
      },
      telling(says.sizesDone),
    )
    const pack = await packed(made)
    writeOut(out, place(out), await packPdf(made, pack, await fontOnDisk()))
    const pages = pack.sections.reduce((sum, one) => sum + one.pages.length, 0)
    console.log(says.pack(visibleText(out), pages, choice.pupils))
    if (made.differs && made.measured) console.log(says.differs(sizeName(made.measured)))
    for (const note of made.notes) console.log(note)
    if (table !== null) {
      writeOut(table, place(table), readingsTable(made, {}))
      console.log(says.table(visibleText(table)))
    }
    return 0
  },
}

async function packed(made: Class): Promise<Pack> {
  try {
    return await packOf(made, telling(says.sheetsDone))
  } catch (error) {
    if (error instanceof TooLargeError) throw new Refusal(error.message)
    throw error
  }
}

/** What takes long says how far it is, every tenth of the way, where nobody reads the answer from. */
const telling =
  (progress: (done: number, of: number) => string) =>
  (done: number, of: number): void => {
    const tenth = (n: number): number => Math.floor((10 * n) / of)
    if (tenth(done) > tenth(done - 1)) console.error(progress(done, of))
  }

function named(text: string | boolean | undefined, name: string, ending: string): string {
  if (typeof text === 'string' && extname(text).toLowerCase() === ending) return text
  throw new Refusal(notFile(name, [ending], text))
}

function got<T>(name: string, read: Read<T>): T {
  if (read.ok) return read.value
  throw new Refusal(`--${name}: ${read.sentence}`)
}

const textOf = (options: Options, name: string, usual: string): string => {
  const text = options[name]
  return typeof text === 'string' ? text : usual
}

function choiceOf(design: Design, options: Options, all: readonly Measured[]): Choice {
  const pupils = got('pupils', readPupils(textOf(options, 'pupils', String(USUAL.pupils))))
  const groups = got(
    'groups',
    readGroups(textOf(options, 'groups', String(Math.min(USUAL.groups, pupils))), pupils),
  )
  const names = all.map(nameOfMeasure)
  const size = textOf(options, 'size', names[0] ?? 'none')
  if (size !== 'none' && !names.includes(size))
    throw new Refusal(says.notSize([...names, 'none'], visibleText(design.title), size))
  return {
    ...{ pupils, groups },
    ages: got('ages', readAges(textOf(options, 'ages', USUAL.ages))),
    minutes: got('minutes', readMinutes(textOf(options, 'minutes', String(USUAL.minutes)))),
    paper: got('paper', readPaper(textOf(options, 'paper', USUAL.paper))),
    differs: size === 'none' ? null : size,
    large: options.large === true,
    picture: options.picture === true,
    certificate: options.certificate === true,
  }
}

function chapterOf(design: Design, { chapter }: Options): ChapterOnDisk {
  const all = chaptersOnDisk()
  if (chapter !== undefined) {
    const found = all.find(({ slug }) => slug === chapter)
    if (found) return found
    throw new Refusal(
      notOneOf(
        'chapter',
        all.map(({ slug }) => slug),
        chapter,
      ),
    )
  }
  const own = all.find((one) => one.design.title === design.title)
  const taught = all.map((one) => ({ ...one, kind: leadIn(one.design, one.subject)?.kind }))
  const found = own ?? chapterFor(taught, design)
  if (!found) throw new Refusal(says.noChapter)
  return found
}
