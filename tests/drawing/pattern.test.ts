import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { Pattern } from '../../src/drawing/pattern/pattern.ts'
import { pattern } from '../../src/drawing/pattern/pattern.ts'
import { wordRect } from '../../src/drawing/pen/lettering.ts'
import type { DotMark, PathMark, Point, Role, WordMark } from '../../src/drawing/pen/marks.ts'
import { change, handlesOf, parseDesign, pieces } from '../../src/paper/index.ts'
import { design } from '../paper/shared/designs.ts'
import { beak, heron, lantern, moth, owl, pond } from './garden.ts'

const size = { width: 600, height: 440 }

const dummy = (name: string) =>
  parseDesign(
    JSON.parse(
      readFileSync(new URL(`../../content/dummies/${name}.hingebook.json`, import.meta.url), 'utf8'),
    ),
  )

/** Sheets with dots close to one another, at the sizes of a desk, a phone and a projector. */
const NEAR = ['eyes', 'house', 'tree', 'lilies', 'scene', 'layers'].flatMap((name) => [
  [name, 370, 293, 15] as const,
  [name, 897, 684, 53] as const,
])

const paths = ({ marks }: Pattern, role: Role, of?: string): readonly PathMark[] =>
  marks.filter(
    (mark): mark is PathMark =>
      mark.mark === 'path' && mark.role === role && (of === undefined || mark.of === of),
  )

describe('pattern', () => {
  it('goes from the sheet to the screen and back', () => {
    for (const face of ['inside', 'outside'] as const) {
      const drawn = pattern(heron, size, { face })
      for (const spot of [
        [0, 0],
        [-105, 148],
        [37.5, 60],
      ] as const) {
        const back = drawn.toSheet(drawn.fromSheet(spot))
        expect(back[0]).toBeCloseTo(spot[0], 9)
        expect(back[1]).toBeCloseTo(spot[1], 9)
      }
    }
  })

  it('shows glued pieces beside the card in one scale, each in a frame of its own', () => {
    for (const one of [moth, owl, pond])
      for (const face of ['inside', 'outside'] as const) {
        const drawn = pattern(one, size, { face })
        const step = (piece: string): number =>
          Math.hypot(
            drawn.fromSheet([10, 0], piece)[0] - drawn.fromSheet([0, 0], piece)[0],
            drawn.fromSheet([10, 0], piece)[1] - drawn.fromSheet([0, 0], piece)[1],
          )
        const [squares] = paths(drawn, 'square')
        for (const { id, outline } of pieces(one)) {
          expect(step(id)).toBeCloseTo(step('card'), 9)
          for (const spot of outline) {
            const at = drawn.fromSheet(spot, id)
            expect(at[0]).toBeGreaterThan(0)
            expect(at[0]).toBeLessThan(size.width)
            expect(at[1]).toBeGreaterThan(0)
            expect(at[1]).toBeLessThan(size.height)
            const back = drawn.toSheet(at, id)
            expect(back[0]).toBeCloseTo(spot[0], 9)
            expect(back[1]).toBeCloseTo(spot[1], 9)
          }
          // The squares are true for every piece: one of their corners is its 0, 0.
          const lines = squares?.runs.map(([a]) => drawn.toSheet(a as Point, id)) ?? []
          expect(lines.some(([x]) => Math.abs(x) < 1e-9)).toBe(true)
          expect(lines.some(([, y]) => Math.abs(y) < 1e-9)).toBe(true)
        }
      }
  })

  it('draws equal pieces of one mechanism once, and says how many', () => {
    const words = pattern(pond, size).marks.flatMap((mark) => (mark.mark === 'word' ? [mark.text] : []))
    expect(words).toContain('pond wall, 3 times')
    expect(paths(pattern(pond, size), 'cut', 'pond/wall-1')).toHaveLength(1)
    expect(paths(pattern(pond, size), 'cut', 'pond/wall-2')).toHaveLength(0)
  })

  it('shows every line of every piece of an owl, and a fault where its piece is', () => {
    const drawn = pattern(owl, size, {
      legend: false,
      faults: [
        {
          name: 'narrow',
          ok: false,
          value: 1,
          unit: 'mm',
          limit: 5,
          sense: 'at-least',
          ids: ['tail'],
          piece: 'tail/piece',
          flat: [
            [0, 0],
            [0, 20],
          ],
          sentence: 'Thin.',
        },
      ],
    })
    for (const { lines } of pieces(owl))
      for (const { kind, of } of lines)
        if (of !== 'page' && kind !== 'glue') expect(paths(drawn, kind, of).length, of).toBeGreaterThan(0)
    // The body's tabs are glued by their backs, the places on the card and on the body on their fronts.
    expect(paths(drawn, 'behind').map(({ of }) => of)).toEqual(['body/right', 'body/left'])
    expect(paths(drawn, 'glue', 'body-hatch')).toHaveLength(2)
    expect(paths(drawn, 'place', 'body')).toHaveLength(2)
    const run = paths(drawn, 'fault')[0]?.runs[0] ?? []
    expect(run).toEqual([drawn.fromSheet([0, 0], 'tail/piece'), drawn.fromSheet([0, 20], 'tail/piece')])
  })

  it('draws one square for 10 mm, with a corner at the foot of the gutter', () => {
    const drawn = pattern(heron, size)
    const [squares] = paths(drawn, 'square')
    const corners = squares?.runs.map(([a]) => drawn.toSheet(a as Point)) ?? []
    const columns = corners.map(([x]) => x / 10).filter((x) => Math.abs(x - Math.round(x)) < 1e-9)
    expect(columns.length).toBeGreaterThan(20)
    expect(columns.some((x) => Math.abs(x) < 1e-9)).toBe(true)
  })

  it('shows every line of the piece, once', () => {
    const drawn = pattern(lantern, size, { legend: false })
    for (const { kind, of } of pieces(lantern)[0]?.lines ?? [])
      if (of !== 'page') expect(paths(drawn, kind, of).length).toBeGreaterThan(0)
  })

  it('mirrors the sheet and turns the folds over when it is seen from outside', () => {
    const inside = pattern(lantern, size)
    const outside = pattern(lantern, size, { face: 'outside' })
    for (const name of ['body/left', 'ledge/ridge']) {
      const before = inside.marks.find(
        (mark) => mark.mark === 'path' && mark.of === name && mark.role !== 'paper',
      )
      const after = outside.marks.find(
        (mark) => mark.mark === 'path' && mark.of === name && mark.role !== 'paper',
      )
      expect(before?.role).not.toBe(after?.role)
      expect([before?.role, after?.role].sort()).toEqual(['mountain', 'valley'])
    }
    expect(outside.fromSheet([46, 30])[0]).toBeCloseTo(size.width - inside.fromSheet([46, 30])[0], 9)
  })

  it('tints each mechanism’s paper, where it is cut from', () => {
    const owl = {
      id: 'owl',
      kind: 'glued-v-fold',
      on: 'gutter',
      apex: 100,
      toward: -1,
      base: 50,
      facet: 60,
      foot: 60,
      ridge: 60,
    }
    expect(paths(pattern(design([owl]), size), 'paper').map(({ of }) => of)).toEqual([
      'owl/left',
      'owl/right',
    ])
    expect(paths(pattern(beak, size), 'paper').map(({ of }) => of)).toEqual([
      'beak/left',
      'beak/right',
      'jaw/left',
      'jaw/right',
    ])
  })

  it('puts a handle where the kernel has one, and only one at each place', () => {
    const drawn = pattern(beak, size, { handles: true })
    const dots = drawn.marks.flatMap((mark) => (mark.mark === 'dot' && mark.role === 'handle' ? [mark] : []))
    for (const { id, name, at, piece } of handlesOf(beak)) {
      const [x, y] = drawn.fromSheet(at, piece)
      expect(dots.filter((dot) => Math.hypot(dot.at[0] - x, dot.at[1] - y) < 1)).toHaveLength(1)
      expect(`${id}/${name}`).toBeTruthy()
    }
    expect(new Set(dots.map(({ of }) => of)).size).toBe(dots.length)
  })

  it('names in its legend the kinds of line that are there, and no others', () => {
    const words = ({ marks }: Pattern) =>
      marks.flatMap((mark) => (mark.mark === 'word' && mark.role === 'note' ? [mark.text] : []))
    expect(words(pattern(beak, size))).toEqual(['cut', 'valley', 'mountain', '10 mm'])
    expect(words(pattern(lantern, size))).toContain('fold pressed flat')
    expect(words(pattern(beak, size, { legend: false }))).toEqual([])
  })

  it('leaves out the label of the handle that is held, and the angle of a held fold', () => {
    const said = (held?: string): readonly (string | undefined)[] =>
      pattern(beak, size, {
        handles: true,
        ...(held === undefined ? {} : { held: { handle: held, words: 'slit 42.0 mm, lean 0.0 mm' } }),
      }).marks.flatMap((mark) => (mark.mark === 'word' && mark.role === 'handle' ? [mark.of] : []))
    expect(said()).toEqual(expect.arrayContaining(['beak/slit-end', 'beak/wedge']))
    expect(said('beak/slit-end')).not.toContain('beak/slit-end')
    expect(said('beak/slit-end')).toContain('beak/wedge')
    expect(said('beak/fold-line')).not.toContain('beak/wedge')
  })

  it('keeps its pieces where they lay while one is dragged, as long as there is room', () => {
    const at = (ridge: number) => change(moth, 'moth', { ridge })
    const ridge = 40
    const first = pattern(at(ridge), size, { handles: true })
    for (let more = 0; more <= 30; more += 0.5) {
      const { layout } = pattern(at(ridge + more), size, { handles: true, stay: first.layout })
      expect(layout.scale).toBe(first.layout.scale)
      expect(layout.shifts).toEqual(first.layout.shifts)
    }
    const far = pattern(at(300), size, { handles: true, stay: first.layout })
    expect(far.layout.scale).toBeLessThan(first.layout.scale)
  })
})

describe('a sheet of one mechanism', () => {
  const wholeOf = (design: typeof owl, only?: string) => {
    const drawn = pattern(design, size, { handles: true, ...(only === undefined ? {} : { only }) })
    return { ...drawn, names: drawn.marks.flatMap((mark) => (mark.mark === 'word' ? [mark.text] : [])) }
  }

  it('shows its own pieces and what it sits on, larger than among all', () => {
    const [all, one] = [wholeOf(owl), wholeOf(owl, 'body')]
    expect(all.names).toContain('left wing')
    expect(one.names).toContain('body')
    expect(one.names).not.toContain('left wing')
    expect(one.layout.scale).toBeGreaterThan(all.layout.scale)
  })

  it('shows the piece that a guest is glued to', () => {
    expect(wholeOf(owl, 'left-wing').names).toEqual(expect.arrayContaining(['body', 'left wing']))
  })

  it('keeps the lines of others, quietly', () => {
    const quiet = wholeOf(owl, 'left-wing').marks.filter((mark) => mark.mark === 'path' && mark.quiet)
    expect(quiet.length).toBeGreaterThan(0)
    for (const mark of quiet) expect(mark.of).not.toMatch(/^left-wing/)
    expect(wholeOf(owl).marks.some((mark) => mark.mark === 'path' && mark.quiet)).toBe(false)
  })

  it('calls handles by what a chapter calls them where their own names are the same', () => {
    const drawn = pattern(beak, size, {
      handles: ['beak/apex', 'jaw/apex', 'beak/slit-end'],
      called: { 'beak/apex': 'Upper apex', 'jaw/apex': 'Lower apex', 'beak/slit-end': 'End of the slit' },
    })
    const said = drawn.marks.flatMap((mark) => (mark.mark === 'word' ? [mark.text] : []))
    expect(said).toEqual(expect.arrayContaining(['upper apex', 'lower apex']))
    expect(said.some((words) => words.startsWith('slit '))).toBe(true)
  })

  it('sets no word across a fold, a cut, the gutter or an edge, whatever the screen', () => {
    const inside = ([ax, ay]: Point, [bx, by]: Point, [x, y, w, h]: ReturnType<typeof wordRect>): number => {
      // How much of a line lies in a rectangle: Liang and Barsky 1984.
      let [from, to] = [0, 1]
      for (const [p, q] of [
        [ax - bx, ax - x],
        [bx - ax, x + w - ax],
        [ay - by, ay - y],
        [by - ay, y + h - ay],
      ] as const) {
        if (p === 0 && q < 0) return 0
        if (p < 0) from = Math.max(from, q / p)
        if (p > 0) to = Math.min(to, q / p)
      }
      return Math.max(0, to - from) * Math.hypot(bx - ax, by - ay)
    }
    for (const [name, width, height, text] of NEAR) {
      const drawn = pattern(dummy(name), { width, height }, { handles: true, legend: text < 26, text })
      const words = drawn.marks.filter(
        (mark): mark is WordMark => mark.mark === 'word' && mark.role === 'handle',
      )
      expect(words.length).toBeGreaterThan(0)
      for (const role of ['cut', 'valley', 'mountain', 'edge'] as const)
        for (const { runs, closed, of } of paths(drawn, role))
          for (const run of runs)
            for (const [k, p] of run.entries()) {
              const q = run[k + 1] ?? (closed ? run[0] : undefined)
              if (!q) continue
              for (const word of words) {
                const [x, y, w, h] = wordRect(word)
                // A guess of its width is a little generous.
                const core = [x + 0.12 * text, y, w - 0.24 * text, h] as const
                expect(inside(p, q, core), `${name} ${text}: ${word.text} on ${of}`).toBeLessThan(0.3 * text)
              }
            }
    }
  })

  it('names all numbers beside its dots or none', () => {
    for (const [name, width, height, text] of [...NEAR, ['layers', 424, 352, 15] as const]) {
      const { marks } = pattern(dummy(name), { width, height }, { handles: true, legend: text < 26, text })
      const numbers = marks.flatMap((mark) =>
        mark.mark === 'word' && mark.role === 'handle' && mark.text.endsWith(' mm') ? [mark.text] : [],
      )
      const bare = numbers.filter((number) => /^\d/.test(number))
      expect([0, numbers.length], `${name} ${text}: ${numbers}`).toContain(bare.length)
    }
  })

  it('sets each word nearer to its own dot than to any other', () => {
    const grip = (text: number) => Math.max(10, 0.7 * text)
    for (const [name, width, height, text] of NEAR) {
      const { marks } = pattern(dummy(name), { width, height }, { handles: true, legend: text < 26, text })
      const all = marks.filter((mark): mark is DotMark => mark.mark === 'dot' && mark.role === 'handle')
      for (const word of marks.filter(
        (mark): mark is WordMark => mark.mark === 'word' && mark.role === 'handle',
      )) {
        const own = all.find(({ of }) => of === word.of)
        const [x, y, w, h] = wordRect(word)
        const away = ({ at }: DotMark) =>
          Math.hypot(Math.max(x - at[0], 0, at[0] - x - w), Math.max(y - at[1], 0, at[1] - y - h))
        if (own)
          for (const dot of all)
            expect(away(own), `${name} ${text}: ${word.text}`).toBeLessThan(away(dot) + grip(text) / 4)
      }
    }
  })
})
