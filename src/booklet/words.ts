/** What a step of the booklet says. */

import { only } from '../drawing/steps/scene.ts'
import { spineSays } from '../making/spine.ts'
import type { Design } from '../paper/index.ts'
import {
  isUneven,
  measure,
  modelOf,
  nameOf,
  openingRange,
  ownerOf,
  pieces,
  rimOf,
  threaded,
} from '../paper/index.ts'
import { letteredJoints } from '../sheet/marks/joint-places.ts'
import type { Work } from './order.ts'

export interface Words {
  readonly title: string
  readonly text: readonly string[]
  /** Which letters of the sheet lie on one another. */
  readonly letters?: string
  /** What the hands take. */
  readonly tools: string
  /** Where a blade, hot glue or small fingers come in. */
  readonly caution?: string
  /** A number of the model to hold a ruler to. */
  readonly check?: string
}

const BLADE = 'A craft knife is a job for an adult. Pass scissors with the handles first.'

const GLUE = 'Hot glue is a job for an adult. A glue stick will do.'

const listed = (ids: readonly string[]): string => {
  const names = ids.map(nameOf)
  return names.length < 3 ? names.join(' and ') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`
}

const the = (ids: readonly string[]): string => (ids.length === 0 ? 'the card' : `the ${listed(ids)}`)

/** More parts than these are counted in a title, and named below it. */
const NAMED = 8

const titled = (ids: readonly string[]): string => (ids.length > NAMED ? `${ids.length} parts` : the(ids))

/** The sentence that names them. */
const named = (ids: readonly string[]): readonly string[] =>
  ids.length > NAMED ? [`They are ${the(ids)}.`] : []

const mm = (value: number): string => `${value.toFixed(0)}\u00a0mm`

/** The opening at which a ruler is held: a right angle, or the nearest that the card reaches. */
function readAt(design: Design): number {
  const [least, most] = openingRange(design)
  return Math.round(Math.min(Math.max(90, least), most))
}

/** How high the highest of some tips stands, once they are there. */
function checkOf(design: Design, done: readonly string[], of: readonly string[]): string | undefined {
  const part = only(design, done)
  const opening = readAt(part)
  if (opening < 20) return undefined
  const { tips } = measure(part, opening)
  const read = of.flatMap((id) => {
    const tip = tips[id]
    return tip && tip.rise >= 1 ? [{ id, rise: tip.rise }] : []
  })
  const [best] = [...read].sort((a, b) => b.rise - a.rise)
  if (!best) return undefined
  return `Hold the card open at ${opening}°: the tip of the ${nameOf(best.id)} stands ${mm(best.rise)} above the page.`
}

/** Strips that go away from the reader: those on a ridge, which points at them. */
const inwards = (design: Design, of: readonly string[]): readonly string[] =>
  design.mechanisms.flatMap(({ id, on }) => (of.includes(id) && on.endsWith('/ridge') ? [id] : []))

/** Where a part hangs, in words: `the left page`, `the right side of the moth`. */
function placeOf(design: Design, id: string): string {
  const on = design.mechanisms.find((m) => m.id === id)?.on ?? ''
  const [owner = '', part = ''] = on.split('/')
  if (on === 'gutter') return 'the gutter'
  if (owner === 'page') return `the ${part} page`
  return part === 'ridge' ? `the ridge of the ${nameOf(owner)}` : `the ${part} side of the ${nameOf(owner)}`
}

/** The letters of the joints of some parts: all, or those on one side. */
function lettersOf(design: Design, of: readonly string[], side?: 'left' | 'right'): string | undefined {
  const found = letteredJoints(design).filter(
    (joint) => of.includes(ownerOf(joint.of)) && (side === undefined || joint.of.endsWith(`/${side}`)),
  )
  const letters = [...new Set(found.map(({ letter }) => letter))]
  if (letters.length === 0) return undefined
  const each = letters.map((letter) => `${letter} on ${letter}`)
  return `${each.length < 2 ? each.join('') : `${each.slice(0, -1).join(', ')} and ${each.at(-1)}`}.`
}

const withLetters = (letters: string | undefined): Pick<Words, 'letters'> =>
  letters === undefined ? {} : { letters }

/** Built on the outside of a fold, where a reader of the open card does not see it. */
const isOutside = (design: Design, id: string): boolean =>
  design.mechanisms.some((m) => m.id === id && 'side' in m && m.side === 'outside')

/** The words of one piece of work. */
export function wordsOf(design: Design, work: Work): Words {
  const { does, of, there } = work
  const done = [...there, ...of]
  switch (does) {
    case 'cut-out': {
      const more = pieces(design).length > 1
      return {
        title: more ? 'Cut out the card and score its folds' : 'Cut the card out and score its folds',
        text: [
          'Print the sheet at 100 % and hold a ruler to its check lines.',
          'Go along every fold with a ruler and a dry ball pen before you cut: small ones cannot be reached later.',
          'Valley folds are dashed, mountain folds dash and dot. Solid lines are cut.',
        ],
        tools: 'sheet, ruler, dry ball pen, scissors',
        caution: `Your school’s own rules come first. ${BLADE}`,
      }
    }
    case 'colour':
      return {
        title: 'Colour it now',
        text: ['Draw and colour while all lies flat. Later you reach only half of it.'],
        tools: 'pencils or pens',
      }
    case 'slits':
      return {
        title: `Cut the slits for ${titled(of)}`,
        text: [
          ...named(of),
          'Lay the open card on a mat. Cut along each short line with a knife and a ruler, and no farther.',
          'Each slit is a hair longer than the tab that goes through it. It cannot be cut with scissors: it starts inside the paper.',
        ],
        tools: 'craft knife, ruler, mat',
        caution: BLADE,
      }
    case 'cut': {
      const onGutter = design.mechanisms.every((m) => !of.includes(m.id) || m.on === 'gutter')
      const uneven = only(design, of)
        .mechanisms.filter(isUneven)
        .map(({ id }) => id)
      return {
        title: `Cut ${titled(of)}`,
        text: [
          ...named(of),
          onGutter
            ? 'Fold the card along the gutter with the lines outside. Cut each slit from the fold, through both layers. Stop at the end of the line.'
            : `Pinch ${of.length === 1 ? placeOf(design, of[0] ?? '') : 'each fold'} flat, so that its two layers lie on one another. Cut from the fold, through both layers.`,
          ...(uneven.length > 0
            ? [
                `${uneven.length < of.length ? `The ${listed(uneven)} ${uneven.length === 1 ? 'is' : 'are'}` : of.length === 1 ? 'It is' : 'They are'} cut deeper on one side. Stop at the shorter end, open the card, and cut on.`,
              ]
            : []),
        ],
        tools: 'scissors',
        caution: BLADE,
      }
    }
    case 'crease':
      return {
        title: `Crease ${titled(of)} both ways`,
        text: [
          ...named(of),
          'Keep the card shut. Fold each part over to the front and press. Fold it over to the back and press.',
        ],
        tools: 'a thumbnail or a spoon',
      }
    case 'push': {
      const inner = inwards(design, of)
      return {
        title: `Push ${titled(of)} through`,
        text: [
          ...named(of),
          'Hold the card half open, lines inside. Push each part from behind until its middle fold comes towards you.',
          ...(inner.length > 0
            ? [
                `A ridge points at you, so what is on it goes the other way: push ${the(inner)} in, away from you.`,
              ]
            : []),
          'Shut the card and press, so that the new folds are sharp.',
        ],
        tools: 'fingers, the tip of a pencil',
        ...withCheck(checkOf(design, done, of)),
      }
    }
    case 'pieces':
      return {
        title: of.length === 1 ? `Cut out ${the(of)}` : 'Cut out the other pieces',
        text: [
          `Score the folds, then cut out ${the(of)} with their tabs.`,
          'Fold each piece along its folds, both ways. The hatched places get glue; where there are dots, glue goes on the other face.',
          'Each letter has a twin: that is where it goes.',
          ...(threaded(design).some((id) => !threaded(design, 'card').includes(id))
            ? ['Cut the slits in them too, while they lie flat on a mat.']
            : []),
        ],
        tools: 'scissors, ruler, dry ball pen',
        caution: BLADE,
      }
    case 'thread':
      return {
        title: `Push the tabs of ${titled(of)} through`,
        text: [
          `Do not glue yet. Push each tab of ${the(of)} through its slit, until the edge beside it stands on the card.`,
          `Turn the card over. Bend the tabs away from ${placeOf(design, of[0] ?? '')}, so that they lie flat, and glue them there.`,
          'Turn it back, shut it and press. What shows on the other side is hidden by a cover, or by a sheet glued over it.',
        ],
        tools: 'glue',
        ...withLetters(lettersOf(design, of)),
        caution: GLUE,
        ...withCheck(checkOf(design, done, of)),
      }
    case 'lay':
      return {
        title: `Stick one side of ${titled(of)}`,
        text: [
          ...(isOutside(design, of[0] ?? '')
            ? [`It goes on the outside of ${placeOf(design, of[0] ?? '')}: turn the card so that you see it.`]
            : [
                `It goes ${placeOf(design, of[0] ?? '') === 'the gutter' ? 'over' : 'on'} ${placeOf(design, of[0] ?? '')}.`,
              ]),
          `Fold it and lay it to the left, its left joint right on its line${lettersOf(design, of) ? ', letter on letter' : ''}. Stick that joint alone.`,
        ],
        tools: 'glue or tape',
        ...withLetters(lettersOf(design, of, 'left')),
        caution: GLUE,
      }
    case 'close':
      return {
        title: 'Let the card find the other side',
        text: [
          `Make the right joint of ${the(of)} sticky. Shut the card on it and press. It sticks just where it should.`,
          'Open the card while the glue is wet and look.',
        ],
        tools: 'glue or tape',
        ...withLetters(lettersOf(design, of, 'right')),
        caution: GLUE,
        ...withCheck(checkOf(design, done, of)),
      }
    case 'tape':
      return {
        title: `Tape the joints of ${titled(of)}`,
        text: ['Run tape along the whole of each joint, right into the corner, and not across the gutter.'],
        tools: 'tape',
      }
    case 'pop':
      return {
        title: `If ${titled(of)} stays down, push it up`,
        text: [
          'A part like this has two states. Put a finger behind its ridge and help both sides past the middle.',
        ],
        tools: 'a finger',
      }
    case 'stand':
      return {
        title: `Set up ${titled(of)}`,
        text: [
          threaded(design).includes(of[0] ?? '')
            ? 'Work with the card open flat. Push the lower tab of each wall through its slit, and glue it behind, letter on letter.'
            : 'Work with the card open flat. Glue the walls on the card first, letter on letter, all tabs pointing out.',
          'Then glue the platform on the walls, its fold right over the gutter.',
        ],
        tools: 'glue',
        ...withLetters(lettersOf(design, of)),
        caution: GLUE,
        ...withCheck(checkOf(design, done, of)),
      }
    case 'stick':
      return {
        title: `Stick on ${titled(of)}`,
        text: [
          ...named(of),
          `${of.length === 1 ? 'It goes' : 'They go'} on ${[...new Set(of.map((id) => placeOf(design, id)))].join(', ')}. Put glue on the hatched place only, and none over a fold.`,
          'Press, then shut the card once to see that nothing is in the way.',
        ],
        tools: 'glue stick or double-sided tape',
        ...withLetters(lettersOf(design, of)),
        caution: GLUE,
      }
    case 'press':
      return {
        title: 'Shut it and press',
        text: [
          'Shut the card slowly and look from its end. Help each part to lie flat. When nothing is in the way, press hard.',
          ...(modelOf(design).pieces.length > 1 ? ['Let the glue dry under a book.'] : []),
        ],
        tools: 'a heavy book',
      }
    case 'open':
      return {
        title: 'Open it',
        text: ['Open the card slowly.'],
        tools: 'ruler',
        ...withCheck(checkOf(design, done, done)),
      }
    case 'cover':
      return {
        title: 'Glue the cover behind',
        text: [
          `${spineSays(design)}Fold the cover. Put glue on the rim alone, ${mm(rimOf(design.card))} wide: nothing that moves may stick.`,
          'Lay the card in it, gutter on gutter. Shut both and let them dry.',
        ],
        tools: 'glue',
        ...withLetters(lettersOf(design, ['cover'])),
        caution: GLUE,
      }
  }
}

const withCheck = (check: string | undefined): Pick<Words, 'check'> => (check === undefined ? {} : { check })
