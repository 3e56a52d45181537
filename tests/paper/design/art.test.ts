// Art, papers and the cover in a design file: what is kept, and what is refused in which words.
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { check, DesignError, PAPER_COLOURS, parseDesign, pieces, poseAt } from '../../../src/paper/index.ts'
import { A6, vFold } from '../shared/designs.ts'

const file = (more: object, card: object = {}) => ({
  hingebook: 1,
  title: 'Heron',
  card: { ...A6, ...card },
  mechanisms: [vFold('beak', 'gutter', 110, -40, 45)],
  ...more,
})

const eye = {
  on: 'beak/left',
  shape: [
    [3, 8],
    [6, 8],
    [6, 12],
  ],
  fill: 'amber',
}

const withArt = (more: object) => file({ art: [{ ...eye, ...more }] })

function refusal(json: unknown): string {
  try {
    parseDesign(json)
  } catch (error) {
    if (!(error instanceof DesignError)) throw error
    return error.message
  }
  throw new Error('it was read without complaint')
}

describe('art', () => {
  test('gets its defaults, and reads back as it was written', () => {
    const read = parseDesign(withArt({}))
    expect(read.art).toEqual([
      {
        ...eye,
        also: [],
        face: 'front',
        closed: true,
        curve: false,
        line: false,
        lineColour: 'ink',
        lineWidth: 0.6,
        glows: false,
      },
    ])
    expect(parseDesign(JSON.parse(JSON.stringify(read)))).toEqual(read)
  })

  test('with no fill is a line', () => {
    const [line] = parseDesign(withArt({ fill: null, closed: false })).art ?? []
    expect(line).toMatchObject({ fill: null, line: true })
  })

  test('is left out where the file has none', () => {
    expect(Object.keys(parseDesign(file({})))).toEqual(['hingebook', 'title', 'card', 'mechanisms'])
  })

  test('weighs nothing: shape, pieces and checks are those of the bare card', () => {
    const [bare, drawn] = [parseDesign(file({})), parseDesign(withArt({ also: ['page/right'] }))]
    expect(poseAt(drawn, 96)).toEqual(poseAt(bare, 96))
    expect(pieces(drawn)).toEqual(pieces(bare))
    expect(check(drawn)).toEqual(check(bare))
  })

  test.each([
    [
      { on: 'wing/left' },
      'art[0].on must name a panel of this design (page/left, page/right, beak/left, beak/right), not "wing/left".',
    ],
    [
      { also: ['gutter'] },
      'art[0].also[0] must name a panel of this design (page/left, page/right, beak/left, beak/right), not "gutter".',
    ],
    [{ also: 'page/left' }, 'art[0].also must be a list of at most 10 panels, not "page/left".'],
    [{ face: 'inside' }, 'art[0].face must be one of front, back, not "inside".'],
    [
      { colour: 'red' },
      'art[0].colour is not known here: use on, also, face, shape, closed, curve, fill, line, lineColour, lineWidth, glows, picture, trace.',
    ],
    [{ fill: '#ff0000' }, `art[0].fill must be one of ${PAPER_COLOURS.join(', ')}, not "#ff0000".`],
    [{ lineColour: null }, `art[0].lineColour must be one of ${PAPER_COLOURS.join(', ')}, not null.`],
    [{ lineWidth: 0 }, 'art[0].lineWidth must be from 0.1 to 20 mm, not 0.'],
    [{ lineWidth: 21 }, 'art[0].lineWidth must be from 0.1 to 20 mm, not 21.'],
    [{ curve: 1 }, 'art[0].curve must be true or false, not 1.'],
    [
      {
        shape: [
          [0, 0],
          [1, 1],
        ],
      },
      'art[0].shape must hold at least 3 points, not 2.',
    ],
    [{ shape: [[0, 0]], closed: false, fill: null }, 'art[0].shape must hold at least 2 points, not 1.'],
    [
      {
        shape: [
          [0, 0],
          [1, 1],
          [2001, 0],
        ],
      },
      'art[0].shape[2] must be a point [across, along] in mm, each from -2000 to 2000, not [2001,0].',
    ],
    [{ fill: null, line: false }, 'art[0].line must be true where there is no fill: else nothing is seen.'],
  ])('is refused: %j', (more, sentence) => {
    expect(refusal(withArt(more))).toBe(sentence)
  })

  test('is bounded, in shapes and in points', () => {
    const many = (count: number, shape: unknown) =>
      file({ art: Array.from({ length: count }, () => ({ ...eye, shape })) })
    const long = Array.from({ length: 200 }, (_, k) => [k / 10, (k * k) % 7])
    expect(parseDesign(many(1500, eye.shape)).art).toHaveLength(1500)
    expect(refusal(many(1501, eye.shape))).toBe('art must hold at most 1500 shapes, not 1501.')
    expect(parseDesign(many(75, long)).art).toHaveLength(75)
    expect(refusal(many(76, long))).toBe('art must hold at most 15000 points in all, not 15200.')
    expect(refusal(file({ art: {} }))).toBe('art must be a list in square brackets, not {}.')
  })
})

describe('papers', () => {
  test('name what the card and the mechanisms are cut from', () => {
    const papers = { page: 'dusk', beak: 'paper' }
    expect(parseDesign(file({ papers })).papers).toEqual(papers)
  })
  test('know no other owners and no other papers', () => {
    expect(refusal(file({ papers: { jaw: 'paper' } }))).toBe('papers.jaw is not known here: use page, beak.')
    expect(refusal(file({ papers: { beak: 'gold' } }))).toBe(
      `papers.beak must be one of ${PAPER_COLOURS.join(', ')}, not "gold".`,
    )
  })
})

describe('a cover', () => {
  test('is kept, carries art and has a paper of its own', () => {
    const read = parseDesign(
      file({ papers: { cover: 'night' }, art: [{ ...eye, on: 'cover/left' }] }, { cover: true }),
    )
    expect(read.card.cover).toBe(true)
    expect(read.papers).toEqual({ cover: 'night' })
    expect(read.art?.[0]?.on).toBe('cover/left')
  })
  test('left out or false is no cover', () => {
    expect(parseDesign(file({}, { cover: false })).card).toEqual(A6)
    expect(refusal(file({ papers: { cover: 'night' } }))).toContain('papers.cover is not known here')
    expect(refusal(withArt({ on: 'cover/left' }))).toContain('must name a panel')
  })
  test('must be true or false, and needs its name', () => {
    expect(refusal(file({}, { cover: 'yes' }))).toBe('card.cover must be true or false, not "yes".')
    const named = { mechanisms: [vFold('cover', 'gutter', 110, -40, 45)] }
    expect(refusal(file(named, { cover: true }))).toContain('card.cover needs its name for itself')
  })
})

test('the guide to the file names every paper', () => {
  const guide = readFileSync(new URL('../../../content/design-file.md', import.meta.url), 'utf8')
  for (const name of PAPER_COLOURS) expect(guide).toContain(`\`${name}\``)
})

test('of more than seven panels the first seven are named', () => {
  const square = [
    [60, 60],
    [80, 60],
    [80, 80],
  ]
  const layers = ['a', 'b', 'c'].map((id, k) => ({
    ...{ id, kind: 'cut-layer', on: 'gutter', left: 9, right: 9 },
    ...{ start: 10 + 20 * k, end: 20 + 20 * k },
  }))
  const told = (mechanisms: readonly object[]) =>
    refusal({
      ...{ hingebook: 1, title: 'Night garden', card: { width: 105, height: 148 }, mechanisms },
      art: [{ ...eye, on: 'wing' }],
    })
  const star = { id: 'star', kind: 'rider', on: 'page/right', shape: square, glue: square }
  expect(told([...layers.slice(0, 2), star])).toContain(
    '(page/left, page/right, a/left, a/right, b/left, b/right, star/face)',
  )
  expect(told(layers)).toContain(
    '(page/left, page/right, a/left, a/right, b/left, b/right, c/left and so on)',
  )
})
