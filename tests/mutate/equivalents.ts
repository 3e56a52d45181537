import type { Mutant } from './mutants.ts'

/** A change that no test can notice, since what the program gives stays the same; and why. */
interface Equivalent {
  readonly file: string
  /** The line it stands on, without the space before it. */
  readonly line: string
  readonly was: string
  readonly now: string
  /** Which of several like it on that line, from 1. */
  readonly nth?: number
  readonly why: string
}

const EQUIVALENTS: readonly Equivalent[] = [
  {
    file: 'src/drawing/view/order.ts',
    line: 'if (splits >= fewest) break',
    was: 'splits >= fewest',
    now: 'false',
    why: 'It only stops a count that has lost already.',
  },
  {
    file: 'src/drawing/view/order.ts',
    line: 'if (splits >= fewest) break',
    was: '>=',
    now: '>',
    why: 'A count that has come even cannot win: less is asked.',
  },
  {
    file: 'src/drawing/view/order.ts',
    line: 'if (splits === 0) break',
    was: 'splits === 0',
    now: 'false',
    why: 'Nothing splits fewer than none: the search only goes on in vain.',
  },
  {
    file: 'src/sheet/files/pdf.ts',
    line: '? [...mark.text].map((letter) => letter.codePointAt(0) ?? 0)',
    was: '0',
    now: '1',
    nth: 2,
    why: 'A letter of a text always has a code: the fallback is for the type checker.',
  },
  {
    file: 'src/widgets/link/link-entries.ts',
    line: 'index === 0 ? value : (state.point?.[0] ?? 0),',
    was: '0',
    now: '1',
    nth: 3,
    why: 'A point is set only where there is one: the fallback is for the type checker.',
  },
  {
    file: 'src/paper/motion/motion.ts',
    line: 'if (kept.of[panel] === me) return kept.bend',
    was: 'kept.of[panel] === me',
    now: 'false',
    why: 'The bounds are worked out anew instead of remembered: the same ones.',
  },
  {
    file: 'src/paper/answers/read-back.ts',
    line: 'const h = 1e-3',
    was: '1e-3',
    now: '0.0015',
    why: 'The step of a central difference: another as small gives the same slope to far below what is told.',
  },
  {
    file: 'src/paper/mechanisms/shared/four-bar.ts',
    line: "const isLow = bar.misfit === null ? opening < range[0] : bar.misfit === 'unlike'",
    was: '<',
    now: '<=',
    why: 'It is asked only of an opening that lies outside by more than rounding: never at an end.',
  },
  {
    file: 'src/paper/model/pieces.ts',
    line: 'if (!guest || !host) return',
    was: '||',
    now: '&&',
    why: 'Every mechanism of the model has its host: the question is for the type checker.',
  },
  {
    file: 'src/paper/plane/convex.ts',
    line: 'rest = halved(rest, a, b, 1)',
    was: '1',
    now: '2',
    why: 'How far each point is off the line, twice: only its sign and its shares are asked for.',
  },
  {
    file: 'src/paper/checks/repair.ts',
    line: 'const SPOILS = 1e6',
    was: '1e6',
    now: '1000001',
    why: 'It stands for more than any number of checks that fail: one more is that too.',
  },
  {
    file: 'src/paper/mechanisms/shared/four-bar.ts',
    line: 'const solved = new Float64Array(8)',
    was: '8',
    now: '9',
    why: 'A ninth number is never written or read.',
  },
  {
    file: 'src/paper/measure/measure.ts',
    line: 'if (!known) {',
    was: '!known',
    now: 'true',
    why: 'What was worked out is worked out anew instead of remembered: the same.',
  },
  {
    file: 'src/paper/mechanisms/cut-v-fold.ts',
    line: "variant: toward > 0 ? 'away from the start' : 'back to the start',",
    was: '>',
    now: '>=',
    why: 'It is 1 or -1, and never nought.',
  },
]

/** Which of the mutants alike on its line this one is, from 1. */
const nthOf = (mutant: Mutant, all: readonly Mutant[]): number =>
  all.filter(
    ({ line, was, now, start }) =>
      line === mutant.line && was === mutant.was && now === mutant.now && start <= mutant.start,
  ).length

/** @param all all mutants of its file */
export const isNamed = (mutant: Mutant, text: string, all: readonly Mutant[]): boolean =>
  EQUIVALENTS.some(
    ({ file, line, was, now, nth }) =>
      file === mutant.file &&
      line === text &&
      was === mutant.was &&
      now === mutant.now &&
      (nth === undefined || nth === nthOf(mutant, all)),
  )

/** Entries of the given files whose line is no longer there. */
export const stale = (texts: ReadonlyMap<string, string>): string[] =>
  EQUIVALENTS.filter(({ file, line }) => {
    const text = texts.get(file)
    return text !== undefined && !text.split('\n').some((one) => one.trim() === line)
  }).map(({ file, line, was, now }) => `${file}: ${line} (${was} -> ${now})`)
