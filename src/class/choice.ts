/** What a teacher chooses, and the ranges of it. */
import * as says from '../../content/words/class/choice.ts'
import type { PaperName } from '../sheet/index.ts'
import { paperNamed, papers } from '../sheet/index.ts'
import type { Ages, Minutes } from './words.ts'
import { AGES, MINUTES } from './words.ts'

export interface Choice {
  readonly pupils: number
  readonly groups: number
  readonly ages: Ages
  readonly minutes: Minutes
  readonly paper: PaperName
  /** The size that differs from sheet to sheet, as `beak.cut`; null: all sheets are alike. */
  readonly differs: string | null
  /** Large print and wide spacing. */
  readonly large: boolean
  /** What is drawn on the card is printed as lines to colour in. */
  readonly picture: boolean
  readonly certificate: boolean
}

/** All ages there are lessons for, in one line. */
export const AGES_NAMES = AGES.join(', ')

export const MOST_PUPILS = 60

export const USUAL: Choice = {
  pupils: 30,
  groups: 10,
  ages: '10-13',
  minutes: 45,
  paper: 'a4',
  differs: null,
  large: false,
  picture: false,
  certificate: false,
}

/** What was given for one field, or a sentence that names the field and what is allowed. */
export type Read<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly sentence: string }

function wholeNumber(
  text: string,
  most: number,
  refused: (most: number, given: string) => string,
): Read<number> {
  const value = /^\s*\d{1,4}\s*$/.test(text) ? Number(text) : Number.NaN
  return value >= 1 && value <= most
    ? { ok: true, value }
    : { ok: false, sentence: refused(most, text.trim().slice(0, 20)) }
}

/** How many pupils. */
export const readPupils = (text: string): Read<number> => wholeNumber(text, MOST_PUPILS, says.pupils)

/** In how many groups: no more than there are pupils. */
export const readGroups = (text: string, pupils: number): Read<number> =>
  wholeNumber(text, pupils, says.groups)

export function readAges(text: string): Read<Ages> {
  const value = AGES.find((one) => one === text)
  return value ? { ok: true, value } : { ok: false, sentence: says.ages(AGES, text) }
}

export function readMinutes(text: string): Read<Minutes> {
  const value = MINUTES.find((one) => String(one) === text.trim())
  return value ? { ok: true, value } : { ok: false, sentence: says.minutes(MINUTES, text) }
}

export function readPaper(text: string): Read<PaperName> {
  const paper = paperNamed(text)
  return paper
    ? { ok: true, value: paper.name }
    : {
        ok: false,
        sentence: says.paper(
          papers.map(({ name }) => name),
          text,
        ),
      }
}

/** Letters for groups that nobody takes for a one or a nought. */
const LETTERS = 'ABCDEFGHJKLMNPQRSTUVWXYZ'

/** The letter of a group, counted from 0: A to Z without I and O, then AA and on. */
export function groupLetter(k: number): string {
  const last = LETTERS[k % LETTERS.length] ?? ''
  return k < LETTERS.length ? last : `${groupLetter(Math.floor(k / LETTERS.length) - 1)}${last}`
}

/** One sheet of the class: its code, and which size of all it has, counted from the smallest. */
export interface Place {
  /** As on the sheet: A1, A2, … B1; the letter is the group. */
  readonly code: string
  readonly group: string
  /** 0 for the smallest size. */
  readonly nth: number
}

/**
 * Which sheet each pupil has, group by group. Each group has small sizes and large ones, so that it sees by itself
 * which way the curve goes.
 */
export function placesFor({ pupils, groups }: Pick<Choice, 'pupils' | 'groups'>): readonly Place[] {
  const places: Place[] = []
  for (let g = 0; g < groups; g++)
    for (let k = 0, nth = g; nth < pupils; k++, nth += groups)
      places.push({ code: `${groupLetter(g)}${k + 1}`, group: groupLetter(g), nth })
  return places
}
