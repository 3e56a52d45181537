// The steps of any design: an order that hands can follow, figures in their frames, numbers that hold.
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { pictureDoes } from '../../content/words/sheet/key.ts'
import { bookPages } from '../../src/booklet/book-pages.ts'
import type { Work } from '../../src/booklet/index.ts'
import { figureOf, motionOf, orderOf, stepsText, wordsOf } from '../../src/booklet/index.ts'
import type { Drawing } from '../../src/drawing/pen/marks.ts'
import { making } from '../../src/making/making.ts'
import { spineOf } from '../../src/making/spine.ts'
import type { Design } from '../../src/paper/index.ts'
import { jointsOf, kindOf, ownerOf, parseDesign, settingOf, tabbed, withTabs } from '../../src/paper/index.ts'
import type { SheetLines } from '../../src/sheet/index.ts'
import { faultSays, layOut } from '../../src/sheet/index.ts'
import { stepsFor } from '../../src/sheet/marks/instructions.ts'
import { letteredJoints } from '../../src/sheet/marks/joint-places.ts'
import { designs, ladder, runs } from '../paper/shared/designs.ts'
import { gardens } from '../paper/shared/gardens.ts'
import { beak, card, dummies, dummy, moth } from '../sheet/designs.ts'

const MAKES: ReadonlySet<Work['does']> = new Set(['push', 'thread', 'close', 'stand', 'stick'])

const isCut = (design: Design, id: string): boolean => {
  const m = design.mechanisms.find((one) => one.id === id)
  return m !== undefined && kindOf(m).stock.from === 'host'
}

/** The piece of card that a mechanism is on: the card, or the nearest of those that it stands on with card of its own. */
function pieceUnder(design: Design, id: string): string {
  const m = design.mechanisms.find((one) => one.id === id)
  const host = ownerOf(m?.on ?? '')
  if (!design.mechanisms.some((one) => one.id === host)) return 'card'
  return isCut(design, host) ? pieceUnder(design, host) : host
}

function expectFollowable(design: Design): void {
  const works = orderOf(design)
  const made: string[] = []
  const gluedOn = new Set<string>()
  for (const { does, of, there, inHand = [] } of works) {
    // What is said to be there has been made, and all of it is said.
    if (of.length > 0 && does !== 'pieces' && does !== 'slits')
      expect([...there].sort()).toEqual(made.filter((id) => !of.includes(id)).sort())
    for (const id of of) {
      const host = ownerOf(design.mechanisms.find((m) => m.id === id)?.on ?? '')
      if (does !== 'pieces' && does !== 'slits' && design.mechanisms.some((m) => m.id === host))
        if (inHand.includes(host))
          // A platform in the hand is not set up yet: what is under it can still be reached.
          expect(made).not.toContain(host)
        else expect(made).toContain(host)
      // No cut is made in a piece on which something has been glued: it could lie under it.
      if (does === 'cut') expect(gluedOn.has(pieceUnder(design, id))).toBe(false)
      // A slit for a tab is cut while nothing is glued at all.
      if (does === 'slits') expect(gluedOn.size).toBe(0)
      if (does === 'lay' || does === 'thread' || does === 'stand' || does === 'stick')
        gluedOn.add(pieceUnder(design, id))
    }
    if (MAKES.has(does)) made.push(...of)
  }
  // A tab through a platform is glued beneath it, between walls that leave no room for a finger: before it is set up.
  for (const { owner, host, isThrough } of jointsOf(design)) {
    const { id = '', on = '' } = design.mechanisms[owner] ?? {}
    const platform = works.findIndex((work) => work.does === 'stand' && work.of.includes(ownerOf(host.piece)))
    if (isThrough && platform >= 0 && ownerOf(on) === ownerOf(host.piece))
      expect(made.indexOf(id), id).toBeLessThan(made.indexOf(ownerOf(host.piece)))
  }
  expect([...made].sort()).toEqual(design.mechanisms.map(({ id }) => id).sort())
  expect(works.at(-1)?.does).toBe(design.card.cover ? 'cover' : 'open')
}

describe('the order of work', () => {
  test.each(dummies)('of %s can be followed', (_, design) => expectFollowable(design))

  test.each(ladder)('of $name can be followed', ({ design }) => expectFollowable(design))

  test.each(dummies)('of %s can be followed with its tabs through slits', (_, design) =>
    expectFollowable(withTabs(design, 'slit')),
  )

  test('of random cards can be followed', () => {
    fc.assert(fc.property(gardens(8), expectFollowable), runs(200))
  })

  test('of random cards whose tabs go through slits can be followed', () => {
    let told = 0
    fc.assert(
      fc.property(designs({ most: 4, kinds: ['glued-v-fold', 'glued-tent', 'cut-v-fold'] }), (design) => {
        const mechanisms = design.mechanisms.map((m) => ('tab' in m ? { ...m, tab: 5 } : m))
        const made = withTabs(parseDesign({ ...design, mechanisms }), 'slit')
        if (tabbed(made).length > 0) told += 1
        expectFollowable(made)
      }),
      runs(60),
    )
    expect(told).toBeGreaterThan(10)
  })

  test('by hand: tabs that go through slits, on the card and on a piece', () => {
    const fold = { kind: 'glued-v-fold', toward: 1, base: 45, facet: 50, tab: 6, tabs: 'slit' }
    const made = parseDesign({
      hingebook: 1,
      title: 'Owl',
      card: { width: 105, height: 148, caliper: 0.25 },
      mechanisms: [
        { ...fold, id: 'owl', on: 'gutter', apex: 40, foot: 60, ridge: 60 },
        { ...fold, id: 'tuft', on: 'owl/ridge', apex: 20, foot: 25, ridge: 20 },
      ],
    })
    const told = orderOf(made).map(({ does, of }) => [does, ...of].join(' '))
    expect(told.filter((one) => !one.startsWith('pop'))).toEqual([
      'cut-out',
      'slits owl',
      'pieces owl tuft',
      'thread owl',
      'thread tuft',
      'press',
      'open',
    ])
    const text = stepsText(made)
    expect(text).toContain('Bend the tabs away from the gutter')
    expect(text).toContain('Bend the tabs away from the ridge of the owl')
    expect(text).toContain('Cut the short slits in them too')
    expect(text).toMatch(/knife.*adult|adult.*knife/i)
    // Pushed through from the front, tabs cannot be pressed on by shutting the card.
    expect(text).not.toContain('Shut the card on it')
  })

  test('by hand: what goes through a platform is glued beneath it before that is set up, in the hand', () => {
    const made = withTabs(dummy('garden'), 'slit')
    const works = orderOf(made)
    const told = works.map(({ does, of }) => [does, ...of].join(' '))
    const [thread, stand, pop] = ['thread body', 'stand lawn', 'pop body'].map((one) => told.indexOf(one))
    expect(thread).toBeGreaterThan(told.indexOf('push reed-1 left-eye window right-eye'))
    expect(stand).toBe((thread as number) + 1)
    expect(pop).toBe((thread as number) + 2)
    expect(works[thread as number]?.inHand).toEqual(['lawn'])
    const { text, check } = wordsOf(made, works[thread as number] as Work)
    expect(text[0]).toContain('before the lawn is set up')
    expect(text.join(' ')).not.toContain('cover')
    expect(check).toBeUndefined()
    // Nothing of the card is drawn, and the platform without its walls.
    const panels = (at: number): string[] =>
      figureOf(made, works[at] as Work, { width: 340, height: 250 }).marks.flatMap((mark) =>
        mark.mark === 'path' && mark.of ? [mark.of] : [],
      )
    expect(panels(thread as number).some((of) => of.startsWith('lawn/'))).toBe(true)
    expect(panels(thread as number).filter((of) => /^page|wall/.test(of))).toEqual([])
    expect(panels(stand as number).some((of) => of.startsWith('page/'))).toBe(true)
    const moves = motionOf(made, works[thread as number] as Work, { width: 340, height: 250 })
    expect(moves?.told(0)).toMatch(/over the platform$/)
    expect(moves?.says).not.toContain('card')
    // A tab through the card itself does come out where a cover hides it.
    expect(stepsText(withTabs(dummy('hedgehog'), 'slit'))).toContain('behind is hidden by a cover')
    expect(orderOf(dummy('garden')).some(({ inHand }) => inHand)).toBe(false)
  })

  test('by hand: a strip in a platform is cut, and an upper platform set up, before the lower one stands', () => {
    const { mechanisms, art: _, papers: __, ...rest } = withTabs(dummy('garden'), 'slit')
    const [lawn, body] = mechanisms
    const strip = { id: 'step', kind: 'cut-layer', on: 'lawn/ridge', start: 10, end: 16, left: 8, right: 8 }
    const upper = {
      ...lawn,
      id: 'upper',
      on: 'lawn/ridge',
      start: 18,
      end: 30,
      left: 30,
      right: 30,
      walls: [-20, 20],
    }
    const made = parseDesign({ ...rest, mechanisms: [lawn, body, strip, upper] })
    expectFollowable(made)
    const told = orderOf(made).map(({ does, of, inHand = [] }) =>
      [does, ...of, ...inHand.map((id) => `(${id})`)].join(' '),
    )
    expect(told.slice(told.findIndex((one) => one.startsWith('pieces')) + 1, -3)).toEqual([
      'cut step (lawn)',
      'push step (lawn)',
      'thread body (lawn)',
      'stand upper (lawn)',
      'stand lawn',
      'pop body',
    ])
    expect(() => stepsText(made)).not.toThrow()
    for (const work of orderOf(made))
      expect(figureOf(made, work, { width: 340, height: 250 }).marks).not.toEqual([])
  })

  test('a platform that is set up takes along what is on it', () => {
    // Held over its walls, both are higher by as much: what is under the platform's edge stays under it.
    const made = withTabs(dummy('garden'), 'slit')
    const ids = made.mechanisms.slice(0, 2).map(({ id }) => id)
    const high = (off: number) =>
      making(made, { opening: 180, through: ids, cut: [], lifted: { lawn: off } }).flatMap(
        ({ panel, points }) => (panel.startsWith('back/') ? points.map(([, , z]) => z) : []),
      )
    high(32).forEach((z, k) => {
      expect(z - (high(0)[k] as number)).toBeCloseTo(32, 6)
    })
  })

  test('of the tabs of a platform those are pushed through that have a slit', () => {
    // Its middle wall stands on the gutter: a slit there would cut the fold. Of three lower tabs two go through.
    for (const name of ['pond', 'hedgehog', 'garden']) {
      const made = withTabs(dummy(name), 'slit')
      const through = letteredJoints(made).filter(({ isThrough, of }) => isThrough && /foot/.test(of))
      expect(through).toHaveLength(2)
      const text = stepsText(made)
      expect(text).toContain(
        `Push the lower tabs ${through[0]?.letter} and ${through[1]?.letter} through their slits`,
      )
      expect(text).toContain('No other tab has a slit: glue the other lower ones on the card')
      expect(stepsText(dummy(name))).not.toContain('has a slit')
    }
  })

  test('by hand: a moth with a star, then its cover', () => {
    const { mechanisms, ...rest } = moth()
    const works = orderOf({ ...rest, mechanisms, card: { ...rest.card, cover: true } })
    const told = works.map(({ does, of }) => [does, ...of].join(' '))
    expect(told.filter((one) => !/^(tape|pop)/.test(one))).toEqual([
      'cut-out',
      'pieces moth star',
      'lay moth',
      'close moth',
      'stick star',
      'press',
      'open',
      'cover',
    ])
  })

  test('what is cut from a glued piece is cut before anything is stuck on that', () => {
    const eye = { id: 'eye', kind: 'cut-v-fold', on: 'moth/ridge', apex: 10, run: 10, cut: 6 }
    const base = moth()
    const design = parseDesign({
      hingebook: 1,
      title: 'Moth',
      card: base.card,
      mechanisms: [...base.mechanisms, eye],
    })
    const told = orderOf(design).map(({ does, of }) => `${does} ${of.join(' ')}`)
    expect(told.indexOf('cut eye')).toBeGreaterThan(told.indexOf('close moth'))
    expect(told.indexOf('cut eye')).toBeLessThan(told.indexOf('stick star'))
  })
})

test('a card lies in its cover gutter on gutter, or midway between two lines where there is no fold', () => {
  const bare = moth()
  const plain = { ...bare, card: { ...bare.card, caliper: 0.1, cover: true } }
  const told = [...dummies.map(([, design]) => design), plain].flatMap((design) => {
    const cover = orderOf(design).find(({ does }) => does === 'cover')
    return cover ? [{ twice: spineOf(design) > 0, text: wordsOf(design, cover).text.join(' ') }] : []
  })
  for (const { twice, text } of told) {
    expect(text.includes('gutter midway between the two lines')).toBe(twice)
    expect(text.includes('gutter on gutter')).toBe(!twice)
  }
  expect(new Set(told.map(({ twice }) => twice)).size).toBe(2)
})

describe('the letters of the cover', () => {
  const withCover = (): Design => {
    const base = moth()
    return { ...base, card: { ...base.card, cover: true } }
  }
  /** Letters that stand on the printed card for the rim of its back. */
  const onCard = (design: Design, lines: SheetLines): readonly string[] => {
    const rim = new Set(
      letteredJoints(design).flatMap(({ of, host }) => (host.piece === 'cover' ? [of] : [])),
    )
    const pages = layOut(design, { paper: 'a4', lines })
    return pages
      .filter(({ placed }) => placed.some(({ piece }) => piece === 'card'))
      .flatMap(({ marks }) =>
        marks.flatMap((mark) =>
          mark.mark === 'word' && mark.bold && rim.has(mark.of ?? '') ? [mark.text] : [],
        ),
      )
  }

  test('are told with what to do where the card has none, as a good copy has none', () => {
    const design = withCover()
    const cover = orderOf(design).find(({ does }) => does === 'cover') as Work
    const { letters } = wordsOf(design, cover)
    expect(onCard(design, 'ticks')).toEqual([])
    const printed = [...new Set(onCard(design, 'front'))]
    expect(printed.length).toBeGreaterThan(0)
    for (const letter of printed) expect(letters).toContain(`${letter} on ${letter}`)
    expect(letters).toMatch(/If your card has none, lay reader’s ends together\.$/)
  })

  test('alone may be missing on the card: of all other joints nothing of the kind is said', () => {
    const said = orderOf(withCover()).flatMap((work) =>
      work.does === 'cover' ? [] : (wordsOf(withCover(), work).letters ?? []),
    )
    expect(said.length).toBeGreaterThan(0)
    expect(said.join()).not.toContain('If your card')
  })
})

describe('creasing both ways', () => {
  const strip = (id: string, on: string, start: number, end: number, left: number, right: number) => ({
    ...{ id, kind: 'cut-layer', on, start, end, left, right },
  })
  // Two layers that fold about one line can be folded over as one; of a strip that is deeper on one side they cannot.
  const even = strip('reed', 'gutter', 10, 40, 30, 30)
  const uneven = strip('moon', 'gutter', 60, 100, 40, 25)
  const onReed = strip('star', 'reed/ridge', 8, 22, 8, 8)
  const onMoon = strip('moth', 'moon/ridge', 8, 30, 12, 7)

  const told = (...mechanisms: readonly object[]) => {
    const design = card(105, 148, mechanisms)
    return { booklet: stepsText(design), sheet: stepsFor(design, 'front').join(' | ') }
  }

  test('is said on the sheet and in the booklet of the same strips', () => {
    const both = told(even, uneven, onReed, onMoon)
    expect(both.booklet).toContain('Crease the reed both ways')
    expect(both.booklet).toContain('Leave the moon as it is: pushing makes its folds.')
    expect(both.booklet).toContain(
      'While it is flat, fold the star over to the front and press, then to the back.',
    )
    expect(both.sheet).toContain('Deeper on one side: moon. ')
    expect(both.sheet).toContain(
      'Do not fold it over: pushing folds it. Cut the lines of reed from the fold, through both layers. Not yet: star and moth. | Fold the other cut part to the front',
    )
    expect(both.sheet).toContain('Crease (only star) and push.')

    const alike = told(even, onReed)
    expect(alike.booklet).toContain('fold the part over to the front')
    expect(alike.booklet).not.toContain('pushing makes')
    expect(alike.sheet).toContain('Fold the cut part to the front')
    expect(alike.sheet).toContain('cut from it. Crease and push.')

    const deeper = told(uneven, onMoon)
    expect(deeper.booklet).not.toMatch(/Crease|over to the front/)
    expect(deeper.sheet).not.toMatch(/crease|to the front/)
  })

  test.each(dummies)('of %s is told on the sheet where the booklet tells it', (_, design) => {
    const strips = (design: Design) => orderOf(design).some(({ does }) => does === 'crease')
    expect(
      stepsFor(design, 'front').some((step) => /^Fold (each|the) .* to the front and press/.test(step)),
    ).toBe(strips(design))
  })
})

describe('figures', () => {
  test.each(dummies)('of %s stay in their frames', (_, design) => {
    const size = { width: 340, height: 250 }
    for (const work of orderOf(design)) {
      const { marks, says } = figureOf(design, work, size)
      expect(says).not.toBe('')
      expect(marks.length).toBeGreaterThan(0)
      for (const mark of marks) {
        // Shadows on the table may run out.
        if (mark.mark !== 'path' || mark.role === 'shadow') continue
        for (const [x, y] of mark.runs.flat()) {
          expect(x, `${work.does} ${work.of}`).toBeGreaterThan(-8)
          expect(x, `${work.does} ${work.of}`).toBeLessThan(size.width + 8)
          expect(y, `${work.does} ${work.of}`).toBeGreaterThan(-8)
          expect(y, `${work.does} ${work.of}`).toBeLessThan(size.height + 8)
        }
      }
    }
  })
})

/** The figure of the step that does something to a part. */
function figureFor(design: Design, does: Work['does'], part: string): Drawing {
  const work = orderOf(design).find((one) => one.does === does && one.of.includes(part))
  if (!work) throw new Error(`${does} ${part} is a step`)
  return figureOf(design, work, { width: 340, height: 250 })
}

describe('figures show what the words say', () => {
  test('both joints of a part that is taped have their word, in every card', () => {
    for (const [name, design] of dummies)
      for (const work of orderOf(design).filter(({ does }) => does === 'tape')) {
        const { marks } = figureOf(design, work, { width: 340, height: 250 })
        const words = marks.flatMap((mark) => (mark.mark === 'word' ? [mark.text] : []))
        // A fold is bridged from its one side to its other: such a part has two joints.
        expect(words, `${name} ${work.of}`).toEqual(work.of.flatMap(() => ['tape', 'tape']))
      }
  })

  test('no page swings on what sits on the outside of a fold: the fold is pinched, and the piece pressed on it', () => {
    const owl = dummy('owl')
    expect(figureFor(owl, 'close', 'body').says).toContain('right page comes over')
    expect(figureFor(owl, 'lay', 'tail').says).toContain('fold is pinched')
    expect(figureFor(owl, 'close', 'tail').says).toContain('one half on each side, and is pressed')
    // Both show the card alike, and an arrow that ends where the piece is, or comes to be.
    const ends = (['lay', 'close'] as const).map((does) => {
      const { marks } = figureFor(owl, does, 'tail')
      const pages = marks.flatMap((mark) =>
        mark.mark === 'path' && mark.role === 'facet' && mark.of?.startsWith('page/') ? mark.runs.flat() : [],
      )
      const arrow = marks.find((mark) => mark.mark === 'path' && mark.role === 'hand')
      if (arrow?.mark !== 'path') throw new Error('an arrow is drawn')
      const corner = [Math.min(...pages.map(([x]) => x)), Math.max(...pages.map(([, y]) => y))]
      return { corner, end: arrow.runs[0]?.at(-1) as readonly [number, number] }
    })
    expect(ends[0]?.corner).toEqual(ends[1]?.corner)
    const [a, b] = ends.map(({ end }) => end) as [readonly [number, number], readonly [number, number]]
    expect(Math.hypot(a[0] - b[0], a[1] - b[1])).toBeLessThan(40)
  })

  test('of what sits on the outside of the gutter the card is shut', () => {
    const { mechanisms, ...rest } = dummy('owl-body')
    const [body] = mechanisms
    const made = parseDesign({ ...rest, art: [], papers: {}, mechanisms: [{ ...body, side: 'outside' }] })
    for (const does of ['lay', 'close'] as const) {
      const { marks } = figureFor(made, does, made.mechanisms[0]?.id ?? '')
      const pages = marks.flatMap((mark) =>
        mark.mark === 'path' && mark.of?.startsWith('page/') ? mark.runs.flat() : [],
      )
      const wide = Math.max(...pages.map(([x]) => x)) - Math.min(...pages.map(([x]) => x))
      expect(wide, does).toBeLessThan(200)
    }
  })
})

describe('words', () => {
  const lantern = card(105, 148, [
    { id: 'lantern', kind: 'cut-layer', on: 'gutter', start: 40, end: 80, left: 32, right: 32 },
  ])

  const checks = (design: Design): string[] =>
    orderOf(design).flatMap((work) => wordsOf(design, work).check ?? [])

  test('tell a height that a ruler finds', () => {
    // A layer cut 32 mm deep on both sides, the card at a right angle: a square prism, so its ridge is 32 mm up.
    expect(checks(lantern)).toEqual([
      'Hold the card open at 90°: from the page up to the tip of the lantern a ruler shows 32\u00a0mm.',
      'Hold the card open at 90°: from the page up to the tip of the lantern a ruler shows 32\u00a0mm.',
    ])
  })

  test('tell from which page a ruler reads where the two differ', () => {
    // A layer cut 46 mm deep into the left page and 36 mm into the right one, the card at a right angle: with the pages
    // its section is a rectangle, so its ridge is 36 mm from the left page and 46 mm from the right one.
    const ledge = (left: number, right: number): Design =>
      card(105, 148, [{ id: 'ledge', kind: 'cut-layer', on: 'gutter', start: 40, end: 80, left, right }])
    expect(checks(ledge(46, 36))[0]).toContain(
      'from the left page up to the tip of the ledge a ruler shows 36',
    )
    expect(checks(ledge(36, 46))[0]).toContain(
      'from the right page up to the tip of the ledge a ruler shows 36',
    )
  })

  test('hold the card no farther open than it goes', () => {
    // Facets of 45 on bases of 60 degrees are pulled tight at arccos(-1/3) = 109.47 degrees: a right angle is reached.
    const { mechanisms, ...rest } = moth()
    const tight = { ...rest, mechanisms: mechanisms.slice(0, 1) } as Design
    for (const check of checks(tight)) expect(check).toMatch(/^Hold the card open at 90°/)
  })

  test('caution at blades and at hot glue, always', () => {
    for (const [, design] of dummies)
      for (const work of orderOf(design)) {
        const { caution = '', tools } = wordsOf(design, work)
        if (/scissors/.test(tools)) expect(caution).toContain('an adult')
        if (/\bglue\b/.test(tools)) expect(caution).toContain('Hot glue is a job for an adult')
      }
  })

  test('as text are numbered from one and hold no space that cannot be broken', () => {
    const text = stepsText(lantern)
    expect([...text.matchAll(/^(\d+)\./gm)].map(([, n]) => n)).toEqual(
      orderOf(lantern).map((_, k) => String(k + 1)),
    )
    expect(text).not.toContain('\u00a0')
    expect(text.split('\n')[0]).toBe('Owl')
  })

  test('say where a part goes that is built on the outside of a fold, and which way a ridge is pushed', () => {
    const owl = dummies.find(([name]) => name.startsWith('owl.'))?.[1]
    const eyes = dummies.find(([name]) => name.startsWith('eyes.'))?.[1]
    if (!owl || !eyes) throw new Error('owl and eyes are there')
    // Its halves lie on both faces of the folded body when the card is shut: it is set over it as a saddle is.
    expect(stepsText(owl)).toMatch(
      /It goes on the outside of the ridge of the body.*\n.*Pinch the ridge of the body flat\.\n.*set it over the fold/,
    )
    expect(stepsText(owl)).toContain('Stick the other joint of the tail on its line too')
    expect(stepsText(owl)).not.toContain('right joint of the tail')
    expect(stepsText(eyes)).toMatch(/Push the .*lid.* in, away from you: their middle folds are valleys/)
    // A flame cut on the middle fold of a window, which goes in, comes out: its own middle fold is a mountain.
    const lantern = stepsText(dummy('lantern'))
    expect(lantern).toContain('Push the window in, away from you: its middle fold is a valley.')
    expect(lantern).not.toMatch(/Push the flame in/)
  })

  test('say on which face a piece is stuck, and where its glue goes', () => {
    const stuck = (...faces: readonly ('front' | 'back')[]) => {
      const { mechanisms, ...rest } = moth()
      const stars = faces.map((face, k) => ({ ...mechanisms[1], id: `star-${'ab'[k]}`, face }))
      return stepsText(parseDesign({ ...rest, mechanisms: [mechanisms[0], ...stars] }))
    }
    expect(stuck('front')).toMatch(
      /It goes on the left side of the moth\.\s+Put glue on the hatched place only/,
    )
    expect(stuck('back')).toMatch(
      /It goes on the back of the left side of the moth\.\s+Put glue on the other face of the dotted place/,
    )
    expect(stuck('front', 'back')).toContain('where there are dots, on the other face. None')
  })

  test('have every piece of the sheet cut out, the cover too', () => {
    // A card and its cover alone, and one with pieces beside them.
    for (const [name, design] of dummies.filter(([, one]) => one.card.cover)) {
      const work = orderOf(design).at(-1) as Work
      const { text, tools } = wordsOf(design, work)
      expect(text[0], name).toMatch(/^Cut the cover out\./)
      expect(tools).toContain('scissors')
      // Of blades it is told with the first cut.
      expect(stepsText(design).indexOf('A craft knife is a job for an adult')).toBeGreaterThan(-1)
      // It is scored once or twice, before it is folded.
      expect(text.join(' '), name).toMatch(/Score .*Fold the cover/)
    }
    expect(stepsText(lantern)).not.toContain('cover out')
  })

  test('have a card trimmed that fills its paper, and a cover cut from other card where no sheet has it', () => {
    // ISO 216: A4 is 210 by 297 mm. Laid open, 200 mm high, the garden comes nearer to its edge than printers reach.
    const cut = (design: Design): string =>
      orderOf(design)
        .filter(({ does }) => does === 'cut-out' || does === 'cover')
        .map((work) => wordsOf(design, work).text.join(' '))
        .join('\n')
    const { mechanisms: _, art: __, papers: ___, ...garden } = dummy('garden')
    const sized = (width: number, height: number): Design =>
      parseDesign({ ...garden, card: { width, height, caliper: 0.25, cover: true }, mechanisms: [] })
    expect(cut(sized(135, 200)).match(/trim its edges/g)).toHaveLength(2)
    // A rim of 3 mm makes the cover of this one too high, not the card.
    expect(cut(sized(120, 194)).match(/trim its edges/g)).toHaveLength(1)
    expect(cut(sized(100, 150))).not.toContain('trim')
    expect(cut(sized(135, 200))).not.toContain('other card')
    expect(cut(sized(135, 208))).toContain('cut it from other card, 276 × 214')
  })

  test('say how tape gets to an edge that the shut card hides, and not across which fold it goes', () => {
    const taped = stepsText(dummy('mouth'))
    expect(taped).toContain('Slip tape under the right edge of the lower, sticky side up')
    expect(taped).not.toContain('Make the right joint')
    expect(taped).toContain('not across the gutter')
    expect(stepsText(dummy('house'))).toContain('Make the right joint')
  })
})

// That bare edges are taped, for glue has nothing to lie on there, is common practice, no source.
test('glue is spoken of where there is some, tape where there is an edge', () => {
  const owl = dummy('owl')
  const before = orderOf(owl).filter(({ does }) => does !== 'cover')
  expect(JSON.stringify(before.map((work) => wordsOf(owl, work)))).not.toMatch(/glue/i)
  for (const [name, design] of dummies)
    for (const work of orderOf(design)) {
      if (work.does !== 'lay' && work.does !== 'close') continue
      const { tools, caution = '', text } = wordsOf(design, work)
      // A size of its own says whether a part has tabs: `tab`, 0 for none.
      const [id = ''] = work.of
      const part = design.mechanisms.find((one) => one.id === id)
      const hasTabs = part !== undefined && settingOf(part, 'tab') > 0
      expect(tools, `${name} ${id}`).toBe(hasTabs ? 'glue' : 'tape')
      expect(/Hot glue/.test(caution), `${name} ${id}`).toBe(hasTabs)
      expect(/glue/.test(text.join(' ')), `${name} ${id}`).toBe(hasTabs && work.does === 'close')
    }
  const house = stepsText(dummy('house'))
  expect(house).toContain('the hatched one gets glue')
  expect(house).toContain('Let the glue dry')
})

describe('the steps of a card that fails', () => {
  const spoilt = card(60, 100, [beak(30, -28, 55)])
  const words = (design: Design): string => {
    const pages = bookPages(design, { paper: 'a4', perPage: 4, fault: faultSays(design) })
    return (pages[0]?.marks ?? []).flatMap((mark) => (mark.mark === 'word' ? [mark.text] : [])).join(' ')
  }

  test('say so before the first of them, in words and on paper', () => {
    const fault = faultSays(spoilt)
    expect(stepsText(spoilt, fault).indexOf(fault)).toBeLessThan(stepsText(spoilt, fault).indexOf('1.'))
    expect(stepsText(spoilt, fault)).toMatch(/^Owl\n\nDo not cut yet\. \S/)
    expect(words(spoilt)).toMatch(/^Owl, step by step Do not cut yet\. /)
    expect(words(dummy('beak'))).not.toContain('Do not cut')
    expect(stepsText(dummy('beak'), faultSays(dummy('beak')))).not.toContain('Do not cut')
  })
})

test('what is called by a number is called by it alone', () => {
  const text = stepsText(dummy('garden'))
  expect(text).toContain('Cut reed 1, left eye, window and right eye')
  expect(text).toContain('Deeper on one side: reed 1. Stop')
  expect(text).toContain('Stick on star 1 and star 2')
  expect(text).not.toMatch(/the (reed|star) \d/i)
  expect(text).toContain('Cut the jaw, lantern and beak')
})

// A part may be called reeds: no verb that asks for one or for several follows its name.
test('a name of several is no stumbling block, and tabs are told of where they are', () => {
  const text = stepsText(dummy('scene'))
  expect(text).toContain('. Push up the reeds, if needed')
  expect(text).not.toMatch(/the reeds (is|has|stays|stands|goes|lies)\b/)
  // The moon and the heron are stuck flat on the reeds.
  expect(text).toContain('cut out the reeds, moon and heron.')
  expect(text).toContain('Leave the tabs on the reeds.')
  expect(stepsText(dummy('owl-body'))).toContain('Leave the tabs on.')
  // Its parts are taped.
  expect(stepsText(dummy('mouth'))).not.toContain('Leave the tabs')
})

test('the key of the sheet and the steps have what is drawn coloured at the same time', () => {
  const text = stepsText(dummy('scene'))
  expect(text).toMatch(/colour while all lies flat/)
  expect(text.indexOf('colour while')).toBeGreaterThan(text.indexOf('Cut out the card'))
  expect(pictureDoes).toMatch(/colour it in while the paper lies flat$/)
})
