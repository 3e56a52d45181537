// Every figure of every chapter as it is seen at a desk, on a phone and through a projector: its words
// lie inside the frame and off one another and off the dots, at many openings and while a hand drags.
// How wide words are is checked against the font itself in words.test.ts.
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { chart } from '../../src/drawing/chart/chart.ts'
import { pointInSection, pointInView, pointOnSheet } from '../../src/drawing/page-point/page-point.ts'
import { pattern } from '../../src/drawing/pattern/pattern.ts'
import type { Rect } from '../../src/drawing/pen/lettering.ts'
import { wordRect } from '../../src/drawing/pen/lettering.ts'
import type { Drawing, WordMark } from '../../src/drawing/pen/marks.ts'
import { section } from '../../src/drawing/section/section.ts'
import type { Camera } from '../../src/drawing/view/camera.ts'
import { view } from '../../src/drawing/view/view.ts'
import type { Design } from '../../src/paper/index.ts'
import { change, check, handlesOf } from '../../src/paper/index.ts'
import { chapter, slugs } from '../site/chapters.ts'

type Room = readonly [width: number, height: number]

/** A screen with one figure at a time. */
const oneByOne = (screen: string, text: number, room: Room) => ({
  screen,
  text,
  view: room,
  sheet: room,
  section: room,
  chart: room,
})

/** The stages as the style sheet lays them out, px: the card, the sheet, the section and the chart. */
const SCREENS = [
  {
    screen: 'desk',
    text: 15,
    view: [590, 352],
    sheet: [424, 352],
    section: [590, 296],
    chart: [424, 296],
  },
  oneByOne('phone', 15, [344, 318]),
  oneByOne('projector', 36, [899, 361]),
  oneByOne('large projector', 54, [1347, 541]),
  oneByOne('projector, side by side,', 36, [596, 413]),
  oneByOne('large projector, side by side,', 54, [895, 620]),
] as const

const sized = ([width, height]: Room) => ({ width, height })

const CONTENT = new URL('../../content/chapters/', import.meta.url)

/** What the front matter says of the bench's camera and handles. */
function front(slug: string): { readonly camera: Camera; readonly handles: readonly string[] } {
  const [head = ''] = readFileSync(new URL(`${slug}.mdx`, CONTENT), 'utf8').split('\n---\n')
  const [, turn, tilt] = /camera: \{ turn: (-?[\d.]+), tilt: (-?[\d.]+) \}/.exec(head) ?? []
  return {
    camera: { turn: Number(turn ?? 24), tilt: Number(tilt ?? 34) },
    handles: [...head.matchAll(/\{ id: ([\w-]+), handle: ([\w-]+)/g)].map(
      ([, id, handle]) => `${id}/${handle}`,
    ),
  }
}

const meet = (a: Rect, b: Rect): readonly [number, number] => [
  Math.min(a[0] + a[2], b[0] + b[2]) - Math.max(a[0], b[0]),
  Math.min(a[1] + a[3], b[1] + b[3]) - Math.max(a[1], b[1]),
]

/** Words that leave the frame or cover one another, and rings that leave it. */
function clumsy({ marks, box }: Drawing): readonly string[] {
  const found: string[] = []
  const leaves = ([x, y, w, h]: Rect): boolean =>
    x < box[0] || y < box[1] || x + w > box[0] + box[2] || y + h > box[1] + box[3]
  const words = marks.filter((mark): mark is WordMark => mark.mark === 'word')
  const rects = words.map(wordRect)
  rects.forEach((rect, k) => {
    const said = words[k]?.text ?? ''
    if (leaves(rect)) found.push(`${said} leaves the frame`)
    for (const [m, other] of rects.entries()) {
      const [across, down] = meet(rect, other)
      // A hair of white space may be shared.
      if (m > k && across > 1.5 && down > 2.5) found.push(`${said} covers ${words[m]?.text}`)
    }
    for (const mark of marks) {
      if (mark.mark !== 'dot' || mark.role !== 'handle') continue
      const core: Rect = [mark.at[0] - 5, mark.at[1] - 5, 10, 10]
      const [across, down] = meet(rect, core)
      if (across > 1 && down > 1) found.push(`${said} covers the dot ${mark.of}`)
    }
  })
  for (const mark of marks) {
    if (mark.mark !== 'dot' || mark.role !== 'fault' || mark.of === 'sheet') continue
    const { at, radius } = mark
    if (leaves([at[0] - radius, at[1] - radius, 2 * radius, 2 * radius]))
      found.push(`the ring of ${mark.of} leaves the frame`)
  }
  return found
}

const OPENINGS = [0, 8, 30, 60, 75, 90, 100, 110, 120, 135, 150, 165, 180]

/** The mechanism's first length made so large that the checks fail far past the page. */
function tooLarge(design: Design, id: string): Design {
  const [first] = handlesOf(design).filter((handle) => handle.id === id)
  const m = design.mechanisms.find((one) => one.id === id)
  if (!first || !m) return design
  if ('cut' in m) return change(design, id, { cut: design.card.width - 1 })
  if ('ridge' in m) return change(design, id, { ridge: 1.6 * design.card.height })
  return design
}

describe.each(slugs)('the figures of %s', (slug) => {
  const { design, config } = chapter(slug)
  const { camera, handles } = front(slug)
  const { point } = config
  const lead = config.lead ?? design.mechanisms[0]?.id
  const openings = [...OPENINGS, config.opening ?? 90]

  it.each(SCREENS)('keep their words apart and inside at a $screen, at every opening', (screen) => {
    const { text } = screen
    const look = { text, unit: 'mm' } as const
    for (const opening of openings) {
      const found = (name: string, drawing: Drawing) =>
        expect(clumsy(drawing), `${name} at ${opening}°`).toEqual([])
      const standing = view(design, opening, camera, sized(screen.view), {
        ...(lead === undefined ? {} : { rise: [lead] }),
        handle: true,
        text,
      })
      found('view', point ? pointInView(standing, point, opening, look) : standing)
      const cut = section(design, opening, lead ?? point?.[1] ?? 0, sized(screen.section), { text })
      found('section', point ? pointInSection(cut, point, opening, look) : cut)
      const of = lead === undefined ? {} : { of: [lead] }
      found(
        'chart',
        chart(design, opening, sized(screen.chart), { ...of, ...(point ? { point } : {}), text }),
      )
    }
  })

  it.each(SCREENS)('keep the words of the flat sheet apart and inside at a $screen', (screen) => {
    const { text } = screen
    for (const held of [undefined, ...handles]) {
      const sheet = pattern(design, sized(screen.sheet), {
        handles,
        text,
        ...(held === undefined ? {} : { held: { handle: held, words: 'first cut 42.0 mm' } }),
      })
      const drawn = point ? pointOnSheet(sheet, point, design.card, { text, unit: 'mm' }) : sheet
      expect(clumsy(drawn), held ?? 'at rest').toEqual([])
    }
  })

  it.each(SCREENS)('point at failed checks from inside the frame at a $screen', (screen) => {
    if (lead === undefined) return
    const large = tooLarge(design, lead)
    const faults = check(large, { repairs: false })
    for (const opening of [0, 45, 90, 180]) {
      const options = { rise: [lead], handle: true, faults, text: screen.text }
      const drawn = view(large, opening, camera, sized(screen.view), options)
      expect(clumsy(drawn), `view at ${opening}°`).toEqual([])
    }
  })
})
