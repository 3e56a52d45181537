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
    line: 'const foot = toward > 0 ? start + run : start',
    was: '>',
    now: '>=',
    why: 'It is 1 or -1, and never nought.',
  },
  {
    file: 'src/paper/mechanisms/shared/fitting.ts',
    line: "(toward > 0 ? 'away from ' : 'back to ') + endsOf(room).near",
    was: '>',
    now: '>=',
    why: 'It is 1 or -1, and never nought.',
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
  ...[
    ['src/paper/plane/convex.ts', 'if (at < low) low = at', '<'],
    ['src/paper/plane/convex.ts', 'if (at > high) high = at', '>'],
    ['src/paper/plane/parting.ts', 'if (at < low) low = at', '<'],
    ['src/paper/plane/parting.ts', 'if (at > high) high = at', '>'],
    ['src/paper/answers/seek/room.ts', 'if (across < least) least = across', '<'],
  ].map(([file = '', line = '', was = '']) => ({
    file,
    line,
    was,
    now: `${was}=`,
    why: 'Of two that are alike either one is the least, and the greatest.',
  })),
  ...[
    ['src/paper/plane/parting.ts', 'for (let i = 0; i < part.length; i += 2) {'],
    ['src/paper/plane/parting.ts', 'for (let k = 0, i = 0; k < count; k++, i += 3) {'],
    ['src/paper/plane/near.ts', 'for (let k = 0; k < one.length; k += 2) {'],
    ['src/paper/motion/range.ts', 'for (let k = 0; k < angles.length; k++)'],
    ['src/paper/checks/stays-inside.ts', 'for (let i = 0; i < p.length; i += 3) {'],
    ['src/paper/answers/seek/room.ts', 'for (let i = 0; i < ring.length; i += 4) {'],
  ].map(([file = '', line = '']) => ({
    file,
    line,
    was: '<',
    now: '<=',
    why: 'Past the last there is no number, and that is neither less nor more than anything.',
  })),
  ...[
    ['src/paper/motion/paths.ts', 'for (let i = 0; i < from.length; i += 3) {'],
    [
      'src/paper/motion/paths.ts',
      'for (let k = 0; k < path.corners; k++) path.M[k] = ((path.M[k] as number) + more) * half',
    ],
    ['src/paper/motion/motion.ts', 'for (let i = 0, k = 0; i < flat.length; i += 2, k++) {'],
    ['src/paper/motion/motion.ts', 'for (let i = 0, j = k; i < flat.length; i += 2, j += 3)'],
  ].map(([file = '', line = '']) => ({
    file,
    line,
    was: '<',
    now: '<=',
    why: 'One more is written past the last corner, where nothing is read.',
  })),
  ...[
    'for (let i = 2; i < points.length; i += 3) points[i] = (points[i] as number) / stretch.width',
    'for (let i = 2; i < points.length; i += 3) if (Math.abs(points[i] as number) > TOUCH) return false',
  ].map((line) => ({
    file: 'src/paper/motion/parted.ts',
    line,
    was: '<',
    now: '<=',
    why: 'Every third number of a multiple of three, from the third on: it never comes to its end.',
  })),
  {
    file: 'src/paper/motion/parted.ts',
    line: 'const [path, back, joined] = [roomFor(0), roomFor(0), roomFor(0)]',
    was: '0',
    now: '1',
    why: 'Room is made for as many corners as come.',
  },
  {
    file: 'src/paper/motion/paths.ts',
    line: 'if (corners > path.M.length) Object.assign(path, roomFor(corners))',
    was: '>',
    now: '>=',
    why: 'Room that would just do is made anew.',
  },
  {
    file: 'src/paper/motion/parted.ts',
    line: 'if (!points) {',
    was: '!points',
    now: 'true',
    why: 'Where the corners are is worked out anew instead of remembered: the same places.',
  },
  ...[
    ['src/paper/motion/kept.ts', 'if (found !== undefined) return found', 'found !== undefined'],
    ['src/paper/checks/subject.ts', 'if (found !== undefined) return found', 'found !== undefined'],
    ['src/paper/motion/chain.ts', 'if (known) return known', 'known'],
    ['src/paper/motion/range.ts', 'if (span !== undefined) return span', 'span !== undefined'],
  ].map(([file = '', line = '', was = '']) => ({
    file,
    line,
    was,
    now: 'false',
    why: 'It is worked out anew instead of remembered: the same.',
  })),
  ...[
    ['const PLACES = 8', '8', '9'],
    ['const MOST = 8', '8', '9'],
    ['const MOST_OTHERS = 512', '512', '513'],
    ['if (own.length > PLACES) own.shift()', '>', '>='],
    ['if (own.size <= most) break', '<=', '<'],
  ].map(([line = '', was = '', now = '']) => ({
    file: 'src/paper/motion/kept.ts',
    line,
    was,
    now,
    why: 'One more or less is remembered; what is forgotten is worked out anew, and the same.',
  })),
  {
    file: 'src/paper/motion/pose.ts',
    line: 'const zero = (): Vec3 => [0, 0, 0]',
    was: '0',
    now: '1',
    why: 'It is written over before anybody reads it.',
  },
  {
    file: 'src/paper/plane/frame.ts',
    line: 'export const emptyFrame = (): Frame => new Float64Array(14)',
    was: '14',
    now: '15',
    why: 'A fifteenth number is never written or read.',
  },
  ...[
    ['const ANYWHERE: Room = { from: 0, to: 0, depth: () => 0, beyond: () => 0 }', '0', '1'],
    ['const ANY_SHARE: Share = { long: 1, deep: 1, at: 0 }', '1', '2'],
    ['const ANY_SHARE: Share = { long: 1, deep: 1, at: 0 }', '0', '1'],
  ].map(([line = '', was = '', now = '']) => ({
    file: 'src/paper/answers/seek/offers.ts',
    line,
    was,
    now,
    why: 'Only how many ways a kind has is asked, and that is the same in every room.',
  })),
  {
    file: 'src/paper/answers/seek/find.ts',
    line: 'times.set(key, (times.get(key) ?? 0) + 1)',
    was: '1',
    now: '2',
    why: 'Ranks are only compared: twice as large they stand in the same order.',
  },
  ...[
    "const vertical = up > 0 ? 'up' : 'down'",
    "const lengthwise = outward > 0 ? 'outward' : 'back'",
    '{ far: high, told: up > 0 ? says.up(mm(high)) : says.down(mm(high)) },',
    '{ far: long, told: outward > 0 ? says.outward(mm(long)) : says.back(mm(long)) },',
  ].map((line) => ({
    file: 'src/paper/measure/way.ts',
    line,
    was: '>',
    now: '>=',
    why: 'Of a way that is nought nothing is said.',
  })),
  {
    file: 'src/paper/measure/layers.ts',
    line: 'if (best.count >= most || best.count > enough) return best',
    was: '>=',
    now: '>',
    why: 'Where no more than were found can be, nothing better is found.',
  },
  {
    file: 'src/paper/model/model.ts',
    line: 'areNear(extentOf(one), extentOf(two), 0) &&',
    was: '0',
    now: '1',
    why: 'It only saves a look at what is far apart: whether they overlap is asked after it.',
  },
  {
    file: 'src/paper/checks/cuts-apart.ts',
    line: 'if (!areNear(boxes[k] as Extent, boxes[other] as Extent, 0) || !subject.wants([one.owner, two.owner]))',
    was: '0',
    now: '1',
    why: 'It only saves a look at what is far apart: how deep they overlap is asked after it.',
  },
  ...[
    [
      'src/paper/stuck/trim.ts',
      'let worst: { readonly by: number; readonly at: Vec3 } = { by: HAIR, at: [0, 0, 0] }',
    ],
    ['src/paper/checks/glue.ts', 'p: [0, 0] as Flat,'],
    ['src/paper/checks/glue.ts', 'at: [0, 0] as Flat,'],
  ].map(([file = '', line = '']) => ({
    file,
    line,
    was: '0',
    now: '1',
    why: 'Where nothing is off by anything nobody asks for the place.',
  })),
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
  ['src/paper/answers/tip.ts', 'by[i]', INDEXED],
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
  ['src/paper/motion/base.ts', 'panels[hostPanel]?.owner)', INDEXED],
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
