/**
 * The words an author may use in a chapter, and what each takes: one line per attribute, one table for all.
 * The build checks every chapter against this table (grammar.ts) and the contributor's guide lists it.
 */
import faults from '../../../content/faults.json' with { type: 'json' }
import { stepStates } from '../../drawing/steps/steps.ts'

/** What an attribute holds: words, a number, a bare flag, one of a few words, or a value in braces. */
export type Takes = 'words' | 'number' | 'flag' | 'value' | readonly string[]

export interface Attribute {
  readonly takes: Takes
  readonly needed?: true
  /** One sentence: what it does. */
  readonly says: string
}

export interface Word {
  /** One sentence: what it is for. */
  readonly says: string
  /** Where it may stand: `chapter` is the top of the file, `anywhere` is inside any cell's text. */
  readonly stands: readonly string[]
  /** The words it may hold beside or instead of plain text; absent: whatever may stand anywhere. */
  readonly holds?: readonly string[]
  /** How many of which word it needs at least. */
  readonly needs?: Readonly<Record<string, number>>
  /** Which of the words it holds stand before all others. */
  readonly first?: readonly string[]
  /** Plain text may stand directly inside it. */
  readonly text: boolean
  readonly attributes: Readonly<Record<string, Attribute>>
}

export const ANYWHERE = 'anywhere'

export const CHAPTER = 'chapter'

const id: Attribute = { takes: 'words', says: 'The mechanism it speaks of, by its id in the dummy.' }

const at: Attribute = { takes: 'number', says: 'The opening, in degrees from 0 (shut) to 180 (flat).' }

/** The signs by which a maker finds what is wrong. */
const FAULTS = Object.keys(faults)

/** The cells, in the order in which a chapter has them. Every chapter has each of them once. */
export const CELLS: readonly string[] = [
  'TryIt',
  'Predict',
  'Why',
  'MakeIt',
  'MeasureYours',
  'Challenge',
  'GoesWrong',
  'Recall',
  'ForTeachers',
]

/** The one cell of a plan. */
export const PLAN_CELLS: readonly string[] = ['Plan']

export const WORDS: Readonly<Record<string, Word>> = {
  TryIt: {
    says: 'The widget, first thing on the page; its text says what to do with it.',
    stands: [CHAPTER],
    text: true,
    attributes: {},
  },
  Predict: {
    says: 'A question to answer before looking: text, then two or more Guess, then an Answer if all guesses share one.',
    stands: [CHAPTER],
    holds: ['Guess', 'Answer'],
    needs: { Guess: 2 },
    text: true,
    attributes: {},
  },
  Guess: {
    says: 'One possible answer; its text is what there is to say to whoever chose it.',
    stands: ['Predict', 'Question'],
    text: true,
    attributes: {
      says: { takes: 'words', needed: true, says: 'The guess itself, as short as a button.' },
      right: { takes: 'flag', says: 'Marks the guess that is right.' },
    },
  },
  Answer: {
    says: 'What everyone reads after guessing.',
    stands: ['Predict'],
    text: true,
    attributes: {},
  },
  Why: {
    says: 'Why it works, in plain words; the maths stands in Formula.',
    stands: [CHAPTER],
    holds: ['Formula'],
    text: true,
    attributes: {},
  },
  Formula: {
    says: 'A formula, folded away, set as MathML when the site is built; its text says what the letters mean.',
    stands: ['Why', 'ForTeachers'],
    text: true,
    attributes: {
      tex: { takes: 'words', needed: true, says: 'The formula in TeX.' },
      title: { takes: 'words', needed: true, says: 'What the formula gives, as the line to press.' },
      source: {
        takes: 'words',
        needed: true,
        says: 'The rule of mathematics, or the standard, that it follows from.',
      },
    },
  },
  Sign: {
    says: 'A letter or short formula in a line of text.',
    stands: [ANYWHERE],
    text: false,
    attributes: { tex: { takes: 'words', needed: true, says: 'The letter in TeX.' } },
  },
  MakeIt: {
    says: 'How to make it: TakeCare first, then Step after Step. The template stands at the top by itself.',
    stands: [CHAPTER],
    holds: ['Step', 'TakeCare', 'SideBench'],
    needs: { Step: 1, TakeCare: 1 },
    first: ['TakeCare'],
    text: true,
    attributes: {},
  },
  Step: {
    says: 'One step: a figure which the model draws in the named state, and the words to do it by.',
    stands: ['MakeIt'],
    text: true,
    attributes: {
      shows: { takes: stepStates, needed: true, says: 'The state of the card in the figure.' },
      at: {
        ...at,
        says: 'The opening of the card in the figure, in degrees, where the state leaves it open.',
      },
      only: {
        takes: 'words',
        says: 'Ids of the mechanisms that the step is about, parted by spaces, on any fold; if left out all that are cut on the gutter, or all that are glued.',
      },
      there: {
        takes: 'words',
        says: 'Ids of what is in its place already, or "nothing"; if left out all that stand before them in the dummy.',
      },
      dots: {
        takes: 'flag',
        says: 'The point of a bare card is drawn on both pages, where the bench has it at first.',
      },
      turn: {
        takes: 'number',
        says: 'From where the card is seen, degrees round it, together with tilt; if left out from the place of all steps, and the open card as its bench shows it.',
      },
      tilt: { takes: 'number', says: 'The same, degrees above the table.' },
    },
  },
  TakeCare: {
    says: 'A caution: blades, heat, an adult, the rules of the school.',
    stands: ['MakeIt', 'Plan'],
    text: true,
    attributes: {},
  },
  SideBench: {
    says: 'A small bench for another design that the chapter makes, with its own template; its text stands beside it.',
    stands: ['MakeIt'],
    text: true,
    attributes: {
      dummy: { takes: 'words', needed: true, says: 'The design, by its file’s name in content/dummies.' },
      subject: { takes: 'words', says: 'The mechanism whose rise is read; the first one if left out.' },
      opening: { ...at, says: 'The opening at first, in degrees; 90 if left out.' },
      sizes: {
        takes: 'words',
        says: 'What can be set, parted by spaces: a mechanism and its number, as in lower.ridge.',
      },
      handles: {
        takes: 'words',
        says: 'What can be dragged on its sheet, as in lower.tip; everything if left out.',
      },
      turn: { takes: 'number', says: 'From where it is seen: degrees round the card.' },
      tilt: { takes: 'number', says: 'From where it is seen: degrees above the table.' },
    },
  },
  MeasureYours: {
    says: 'The reader types what a ruler reads on their own card, and the model says how far off it is and why.',
    stands: [CHAPTER],
    text: true,
    attributes: {
      id: {
        takes: 'words',
        says: 'The mechanism that is measured; the one the chapter is about if left out.',
      },
      at: { takes: 'number', says: 'The opening at which the reader measures, in degrees; 90 if left out.' },
    },
  },
  Challenge: {
    says: 'Tasks which the kernel judges, two or more Goal, and an OpenTask that nobody judges.',
    stands: [CHAPTER],
    holds: ['Goal', 'OpenTask'],
    needs: { Goal: 2, OpenTask: 1 },
    first: ['Goal'],
    text: true,
    attributes: {},
  },
  Goal: {
    says: 'One task; its text tells the reader what to reach.',
    stands: ['Challenge'],
    text: true,
    attributes: {
      wants: {
        takes: 'value',
        needed: true,
        says: 'What the kernel judges, as in {{ measure: "rise", at: 90, atLeast: 40 }}.',
      },
    },
  },
  OpenTask: {
    says: 'A task without a number to hit: something of the reader’s own.',
    stands: ['Challenge'],
    text: true,
    attributes: {},
  },
  GoesWrong: {
    says: 'What goes wrong, each with its cure: two or more Slip.',
    stands: [CHAPTER],
    holds: ['Slip'],
    needs: { Slip: 2 },
    text: true,
    attributes: {},
  },
  Slip: {
    says: 'One thing that goes wrong; its text is the cure. Without `shows` and `opening` it has no picture.',
    stands: ['GoesWrong'],
    text: true,
    attributes: {
      sign: { takes: 'words', needed: true, says: 'What the reader sees.' },
      fault: {
        takes: FAULTS,
        needed: true,
        says: 'Where it stands among the signs of the page that finds faults (content/faults.json).',
      },
      shows: {
        takes: stepStates,
        says: 'The state of making in its small picture, for what is wrong before the card is done; else `opening`.',
      },
      at: {
        ...at,
        says: 'The opening of the card in that state, in degrees, where it leaves the card open.',
      },
      only: {
        takes: 'words',
        says: 'Ids of the mechanisms that it is about, parted by spaces, as in a Step.',
      },
      opening: {
        takes: 'number',
        says: 'The opening of the standing card in its small picture, in degrees; a card that stops before is drawn where it stops.',
      },
      set: {
        takes: 'value',
        says: 'What was made wrongly: fields of mechanisms, by their ids, as a design file has them; null takes a field or a mechanism away.',
      },
      marks: {
        takes: 'words',
        says: 'The check that the standing card fails: it marks the place, or says that `where` is one.',
      },
      where: {
        takes: 'words',
        says: 'Places to mark that no check knows, parted by spaces: a crease, as in gutter or beak/ridge, its /start or /end or so many mm from its start (beak/ridge/20), the same with a tear (tear:beak/right/end), or a part.',
      },
      camera: {
        takes: 'value',
        says: 'From where the standing card is seen, as in {{ turn: -20, tilt: 30 }}.',
      },
      stand: {
        takes: ['gutter', 'left', 'right', 'edge'],
        says: 'How it rests on the table.',
      },
      near: {
        takes: 'number',
        says: 'How many times nearer what is marked is seen than the whole card.',
      },
      crooked: {
        takes: 'number',
        says: 'Degrees by which the gutter of a card without parts is folded off its middle line.',
      },
      dots: { takes: 'flag', says: 'The point of a bare card is drawn on both pages, as in a Step.' },
    },
  },
  Recall: {
    says: 'What is left of it without looking back: two Question, one on this chapter, one on an earlier one.',
    stands: [CHAPTER],
    holds: ['Question'],
    needs: { Question: 2 },
    text: true,
    attributes: {},
  },
  Question: {
    says: 'One question of the recall, with two or more Guess.',
    stands: ['Recall'],
    holds: ['Guess'],
    needs: { Guess: 2 },
    text: true,
    attributes: {
      asks: { takes: 'words', needed: true, says: 'The question.' },
      from: { takes: 'words', says: 'The earlier chapter it is about, by its file’s name.' },
    },
  },
  ForTeachers: {
    says: 'Time, materials, misconceptions, standards: for whoever leads the lesson.',
    stands: [CHAPTER],
    holds: ['Formula'],
    text: true,
    attributes: {},
  },
  Num: {
    says: 'A number of the dummy, computed by the kernel when the site is built.',
    stands: [ANYWHERE],
    text: false,
    attributes: {
      of: {
        takes: 'words',
        needed: true,
        says: 'What is read off: rise, stand-off, reach, aside, gape, margin, stop, shuts-to, thickness, layers, angle, apart, highest-rise, highest-opening, a size of the card, or a field of the mechanism.',
      },
      id,
      at,
      and: { takes: 'words', says: 'The other mechanism, for gape.' },
      crease: { takes: 'words', says: 'The crease, for angle.' },
      across: { takes: 'number', says: 'Distance of the point from the gutter, in mm, for apart.' },
      dummy: { takes: 'words', says: 'Another dummy than the chapter’s own, by file name.' },
      with: { takes: 'value', says: 'Fields to change first, as in {{ cut: 46 }}.' },
      decimals: { takes: 'number', says: 'Digits after the point; 1 if left out.' },
      bare: { takes: 'flag', says: 'Leaves the unit out.' },
    },
  },
  Phrase: {
    says: 'Words that move the card on the bench when they are pressed, and put it back.',
    stands: [ANYWHERE],
    text: true,
    attributes: {
      opening: { ...at, says: 'The opening that it sets, in degrees from 0 (shut) to 180 (flat).' },
      id: { takes: 'words', says: 'The mechanism that it changes, by its id in the dummy; set says how.' },
      set: {
        takes: 'value',
        says: 'What the numbers of that mechanism become in the chapter’s own card, as in {{ cut: 46 }}.',
      },
      across: { takes: 'number', says: 'How far the point of a bare card goes from the gutter, in mm.' },
    },
  },
  Term: {
    says: 'A word of the trade, which says what it means when pressed.',
    stands: [ANYWHERE],
    text: true,
    attributes: {
      word: { takes: 'words', says: 'The word as it stands in the glossary, if the text differs.' },
    },
  },
  Plan: {
    says: 'A plan from a wish to a print: PlanStep after PlanStep, followed on the planning page. It stands in a plan alone.',
    stands: [CHAPTER],
    holds: ['PlanStep', 'TakeCare'],
    needs: { PlanStep: 3, TakeCare: 1 },
    text: true,
    attributes: {},
  },
  PlanStep: {
    says: 'One step of a plan: the card as it stands afterwards, and what to press.',
    stands: ['Plan'],
    text: true,
    attributes: {
      dummy: {
        takes: 'words',
        needed: true,
        says: 'The design in the picture, as a file of content/dummies.',
      },
      at: { takes: 'number', says: 'The opening in the picture, in degrees; 90 if left out.' },
      only: {
        takes: 'words',
        says: 'The mechanisms that are there by then, by id, parted by spaces; all if left out.',
      },
      lit: {
        takes: 'words',
        says: 'The mechanisms that are new, by id, parted by spaces: the rest is dimmed.',
      },
      set: { takes: 'value', says: 'Sizes that are other than in the file: by mechanism, or by card.' },
    },
  },
}
