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
    line: 'const STEP = 1e-3',
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
    file: 'src/paper/mechanisms/cut-v-fold.ts',
    line: "variant: toward > 0 ? 'away from the start' : 'back to the start',",
    was: '>',
    now: '>=',
    why: 'It is 1 or -1, and never nought.',
  },
  {
    file: 'src/paper/measure/layers.ts',
    line: 'return { box: [at(low, i), at(low, i + 1), at(high, j), at(high, j + 1)], parts: [], edges: [], most: 0 }',
    was: '1',
    now: '2',
    why: 'A cell that is taken larger is looked through as well, and holds no fewer: the same spot is found.',
  },
  {
    file: 'src/paper/motion/clearance.ts',
    line: 'for (let k = marks.length - 1; k > 0; k--) {',
    was: '>',
    now: '>=',
    why: 'Before the first mark there is none: a stretch from nowhere has no openings in it.',
  },
  {
    file: 'src/paper/motion/clearance.ts',
    line: 'return [...new Set(all)].sort((a, b) => a - b).map((owner) => paperOf(motion.model, owner))',
    was: '-',
    now: '+',
    why: 'The order only tells what is kept again: told in another, it is looked at anew, and the same is found.',
  },
]

const COMPLETED =
  'A design that was read has it, filled in by its kind: the fallback is for the type checker.'

const INDEXED = 'The list holds an entry for every such index: the fallback is for the type checker.'

/** What stands before a `??`, and why what stands behind it is never taken. */
const FALLBACKS: readonly (readonly [file: string, what: string, why: string])[] = [
  ['src/paper/mechanisms/cut-v-fold.ts', '[m.cut, m.apex + m.run + (m.lean', COMPLETED],
  ['src/paper/mechanisms/cut-v-fold.ts', '(m.run + (m.lean', COMPLETED],
  ['src/paper/mechanisms/cut-v-fold.ts', 'towardOf(m) * (m.lean', COMPLETED],
  ['src/paper/mechanisms/cut-v-fold.ts', 'keptLean(m, m.lean', COMPLETED],
  ['src/paper/mechanisms/glued-tent.ts', "ownPiece('piece', m.tab", COMPLETED],
  ['src/paper/mechanisms/glued-tent.ts', 'long, m.tab', COMPLETED],
  ['src/paper/mechanisms/glued-v-fold.ts', "ownPiece('piece', m.tab", COMPLETED],
  ['src/paper/mechanisms/glued-v-fold.ts', 'm.foot, m.tab', COMPLETED],
  ['src/paper/mechanisms/glued-v-fold.ts', 'm.left?.base ?? m.base', COMPLETED],
  ['src/paper/mechanisms/glued-v-fold.ts', 'm.left?.facet ?? m.facet', COMPLETED],
  ['src/paper/mechanisms/glued-v-fold.ts', 'm.right?.base ?? m.base', COMPLETED],
  ['src/paper/mechanisms/glued-v-fold.ts', 'm.right?.facet ?? m.facet', COMPLETED],
  ['src/paper/mechanisms/cut-layer.ts', 'm.left ?? m.right', 'A layer without either depth is refused.'],
  ['src/paper/mechanisms/cut-layer.ts', 'm.right ?? m.left', 'A layer without either depth is refused.'],
  ['src/paper/mechanisms/rider.ts', '(after.turn', COMPLETED],
  ['src/paper/mechanisms/rider.ts', '(before.turn', COMPLETED],
  ['src/paper/answers/mend.ts', 'model.builds[index]?.host', INDEXED],
  ['src/paper/answers/mend.ts', '?.host ?? 0]?.length', INDEXED],
  ['src/paper/answers/seek/find.ts', 'model.builds[owner]?.firstCrease', INDEXED],
  ['src/paper/answers/tip.ts', 'step[i]', INDEXED],
  ['src/paper/checks/clear-motion.ts', 'model.creases[host]?.owner', INDEXED],
  [
    'src/paper/checks/clear-motion.ts',
    'first.end.why?.crease',
    'What would go through paper names its crease.',
  ],
  ['src/paper/checks/clear-motion.ts', 'model.panels[panel]?.owner', INDEXED],
  [
    'src/paper/checks/stops.ts',
    'why.crease',
    'Asked only of what would go through paper, and that names its crease.',
  ],
  ['src/paper/checks/lies-flat.ts', 'creases[host]?.owner', INDEXED],
  ['src/paper/checks/repair.ts', 'from.get(a.id)', INDEXED],
  ['src/paper/checks/repair.ts', 'from.get(b.id)', INDEXED],
  ['src/paper/checks/thickness.ts', 'model.panels[panel]?.owner', INDEXED],
  ['src/paper/design/text.ts', 'codePointAt(0)', 'A letter of a text always has a code.'],
  ['src/paper/model/joints.ts', 'model.panels[panel]?.piece', INDEXED],
  ['src/paper/model/model.ts', 'under?.piece', INDEXED],
  ['src/paper/model/model.ts', 'builds[index]?.tipCrease', 'There is no crease for it either way.'],
  ['src/paper/model/model.ts', 'panels[hostPanel', 'What is stuck on a panel has one.'],
  ['src/paper/motion/clearance.ts', 'model.panels[leaf.panel]?.owner', INDEXED],
  ['src/paper/motion/clearance.ts', 'model.builds[owner]?.host', INDEXED],
  ['src/paper/motion/clearance.ts', 'builds[owner]?.firstPanel', INDEXED],
  ['src/paper/motion/kept.ts', 'panels[hostPanel]?.owner)', INDEXED],
  ['src/paper/motion/motion.ts', 'model.creases[crease]?.owner', INDEXED],
  ['src/paper/motion/range.ts', 'creases[crease]?.owner', INDEXED],
  ['src/paper/motion/range.ts', 'builds[under]?.host', INDEXED],
  ['src/paper/stuck/trim.ts', 'builds[owner]?.firstPanel', INDEXED],
  ['src/paper/stuck/trim.ts', '?.stuckOn', 'The face of a piece is always stuck on a panel.'],
  ['src/paper/stuck/trim.ts', 'fault.opening', 'That check always names the opening.'],
  ['src/paper/stuck/trim-hits.ts', 'fault.opening', 'That check always names the opening.'],
]

/** @param before the file up to the mutant */
const isFallback = (mutant: Mutant, before: string): boolean =>
  (mutant.kind === 'constant' || mutant.kind === 'sign') &&
  FALLBACKS.some(
    ([file, what]) =>
      file === mutant.file && (before.endsWith(`${what} ?? `) || before.endsWith(`${what} ?? -`)),
  )

/** Which of the mutants alike on its line this one is, from 1. */
const nthOf = (mutant: Mutant, all: readonly Mutant[]): number =>
  all.filter(
    ({ line, was, now, start }) =>
      line === mutant.line && was === mutant.was && now === mutant.now && start <= mutant.start,
  ).length

/**
 * @param whole the text of its file
 * @param all all mutants of its file
 */
export const isNamed = (mutant: Mutant, whole: string, all: readonly Mutant[]): boolean => {
  const text = (whole.split('\n')[mutant.line - 1] ?? '').trim()
  return isFallback(mutant, whole.slice(0, mutant.start)) || isAlike(mutant, text, all)
}

const isAlike = (mutant: Mutant, text: string, all: readonly Mutant[]): boolean =>
  EQUIVALENTS.some(
    ({ file, line, was, now, nth }) =>
      file === mutant.file &&
      line === text &&
      was === mutant.was &&
      now === mutant.now &&
      (nth === undefined || nth === nthOf(mutant, all)),
  )

/** Entries of the given files whose line is no longer there. */
export const stale = (texts: ReadonlyMap<string, string>): string[] => [
  ...EQUIVALENTS.filter(({ file, line }) => {
    const text = texts.get(file)
    return text !== undefined && !text.split('\n').some((one) => one.trim() === line)
  }).map(({ file, line, was, now }) => `${file}: ${line} (${was} -> ${now})`),
  ...FALLBACKS.filter(([file, what]) => texts.get(file)?.includes(`${what} ?? `) === false).map(
    ([file, what]) => `${file}: ${what} ?? ...`,
  ),
]
