// Folds a printed sheet up again from its lines alone. It shares no code with the model: the sheet's SVG goes through
// an XML parser, faces come from a planar subdivision of its lines, and fold angles from the closure of every loop of
// faces round a cut (Gauss-Newton, damped after Levenberg 1944 and Marquardt 1963). Only the gutter's angle is given.
//
// Valley and mountain folds are those of common practice, no source: a valley's paper comes up on both sides towards
// the reader of the printed face.
import { SaxesParser } from 'saxes'

export type Flat = readonly [number, number]
export type Space = readonly [number, number, number]

type Kind = 'cut' | 'valley' | 'mountain'

/** A printed line; mm, y upwards. */
interface PrintedLine {
  readonly kind: Kind
  readonly points: readonly Flat[]
  readonly closed: boolean
  /** What it is of, as the reader calls it. */
  readonly of: string
}

/** How many parts the dash pattern of each kind has: solid, dash and gap, dash and gap and dot and gap. */
const DASHES: Readonly<Record<Kind, number>> = { cut: 0, valley: 2, mountain: 4 }

/**
 * Where a letter stands, and on what: the place of a tab, or a tab with glue on the face that is printed or behind it;
 * the line to which an edge is taped, or that edge.
 */
interface Lettered {
  readonly letter: string
  readonly on: 'place' | 'glue' | 'behind' | 'line' | 'edge'
  readonly points: readonly Flat[]
}

/**
 * The name of a piece, and the way on the page to the end of the piece that is the reader's. That names stand at their
 * own pieces piece-names.test.ts holds.
 */
interface Named {
  readonly name: string
  readonly toReader: Flat
}

export interface Print {
  readonly lines: readonly PrintedLine[]
  readonly lettered: readonly Lettered[]
  readonly names: readonly Named[]
}

/** As it is said at each piece which end of it is the reader's. */
const WAYS: Readonly<Record<string, Flat>> = { below: [0, -1], above: [0, 1], left: [-1, 0], right: [1, 0] }

const pointsIn = (run: string): Flat[] =>
  run
    .replace('Z', '')
    .split('L')
    .map((pair) =>
      pair
        .trim()
        .split(/[\s,]+/)
        .map(Number),
    )
    .map(([x = Number.NaN, y = Number.NaN]): Flat => [x, -y])

/**
 * The cuts and folds of a page, by the class of each path, which has to agree with its dashes; and its joints: outlines
 * with the one letter that stands in each, or nearest to it.
 */
export function readPrint(svg: string): Print {
  const lines: PrintedLine[] = []
  const areas: Omit<Lettered, 'letter'>[] = []
  const hatches: (readonly Flat[])[] = []
  const sides: (readonly Flat[])[] = []
  const letters: { text: string; at: Flat }[] = []
  let word: Record<string, string> | null = null
  const said: { name: string; text: string }[] = []
  let name: Record<string, string> | null = null
  const parser = new SaxesParser()
  parser.on('opentag', ({ name: tag, attributes }) => {
    const { class: words = '', d = '', style = '', 'data-of': of = '' } = attributes as Record<string, string>
    const called = of.replace(/\/piece$/, '').replaceAll(/[-/]/g, ' ')
    const has = (role: string): boolean => words.split(' ').includes(`m-${role}`)
    const text = tag === 'text' ? (attributes as Record<string, string>) : null
    word = words.includes('bold') ? text : null
    name = text?.['data-of'] === 'name' ? text : null
    // What is stuck flat has an outline or corners, and lines to prick through: they say again where a place is that is
    // read by its own marks.
    if (tag !== 'path' || /-(corner|line|end|place)$/.test(of)) return
    const on = (['place', 'glue', 'behind'] as const).find(has)
    if (on && d.endsWith('Z')) areas.push({ on, points: pointsIn(d.slice(1)) })
    const strokes = d.split('M').filter(Boolean).map(pointsIn)
    if (on === 'place' && !d.endsWith('Z')) sides.push(...strokes)
    if (on === 'glue' && !d.endsWith('Z')) hatches.push(strokes.map(([a]) => a as Flat))
    const kind = (['cut', 'valley', 'mountain'] as const).find(has)
    if (!kind) return
    const dashes = /stroke-dasharray:([^;"]+)/.exec(style)?.[1]?.trim().split(/\s+/).length ?? 0
    if (dashes !== DASHES[kind]) throw new Error(`a ${kind} line has ${dashes} parts in its dashes`)
    for (const run of d.split('M').filter(Boolean))
      lines.push({ kind, points: pointsIn(run), closed: run.includes('Z'), of: called })
  })
  parser.on('text', (text) => {
    if (text.trim() === '') return
    const last = said.at(-1)
    // A long name is broken: its bold parts follow one another.
    if (name && word && last?.text === '') said[said.length - 1] = { name: `${last.name} ${text}`, text: '' }
    else if (name && word) said.push({ name: text, text: '' })
    else if (name && last) last.text += ` ${text}`
    if (!word || !/^[A-Z]{1,2}$/.test(text.trim())) return
    const { x, y, 'font-size': size, transform = '' } = word
    // The middle of a capital, turned as it is.
    const turn = (Number(/rotate\((-?[\d.]+)/.exec(transform)?.[1] ?? 0) * Math.PI) / 180
    const [dx, dy] = [0.3 * Number(size) * text.trim().length, -0.33 * Number(size)]
    const [c, s] = [Math.cos(turn), Math.sin(turn)]
    letters.push({ text: text.trim(), at: [Number(x) + c * dx - s * dy, -(Number(y) + s * dx + c * dy)] })
  })
  parser.write(svg).close()
  areas.push(...chained(sides, lines))
  // What is hatched on neither side of a line nor within an outline of its own is tape along an edge that is cut.
  for (const hatch of hatches) {
    const isAlong = (from: Flat, to: Flat): boolean => hatch.every((p) => off(p, from, to) < TAPE)
    const isKnown = areas.some(({ on, points }) =>
      on === 'line'
        ? isAlong(points[0] as Flat, points[1] as Flat)
        : hatch.every(
            (p) =>
              isWithin(p, points) ||
              points.some((a, k) => off(p, a, points[(k + 1) % points.length] as Flat) < TAPE),
          ),
    )
    if (isKnown) continue
    const rims = lines
      .filter(({ kind, closed }) => kind === 'cut' && closed)
      .flatMap(({ points }) =>
        points.map((a, k): [Flat, Flat] => [a, points[(k + 1) % points.length] as Flat]),
      )
    const side = rims.find(([a, b]) => isAlong(a, b))
    if (side) areas.push({ on: 'edge', points: side })
  }
  const away = (at: Flat, { points }: (typeof areas)[number]): number =>
    isWithin(at, points)
      ? 0
      : Math.min(...points.map((a, k) => off(at, a, points[(k + 1) % points.length] as Flat)))
  // As one reads: what is nearest goes together first, and each letter is one mark's.
  const taken = new Map<(typeof areas)[number], string>()
  const told = new Set<(typeof letters)[number]>()
  const pairs = areas.flatMap((area) =>
    letters.map((letter) => ({ area, letter, far: away(letter.at, area) })),
  )
  for (const { area, letter } of [...pairs].sort((one, two) => one.far - two.far)) {
    if (taken.has(area) || told.has(letter)) continue
    taken.set(area, letter.text)
    told.add(letter)
  }
  const lettered = areas.map((area): Lettered => {
    const [best] = [...letters].sort((one, two) => away(one.at, area) - away(two.at, area))
    const letter = taken.get(area) ?? best?.text
    if (!letter) throw new Error('a joint has no letter')
    return { ...area, letter }
  })
  const names = said.flatMap(({ name: piece, text }): Named[] => {
    const toReader = WAYS[/reader’s\s+end\s+(?:at\s+the\s+)?(\w+)/.exec(text)?.[1] ?? '']
    return toReader ? [{ name: piece, toReader }] : []
  })
  return { lines, lettered, names }
}

/**
 * Where an edge of a place lies along a fold or a cut only that is drawn: sides that follow one another from one point
 * of such a line to another are the rest of an outline. All others are lines to which something is taped.
 */
function chained(
  sides: readonly (readonly Flat[])[],
  lines: readonly PrintedLine[],
): Omit<Lettered, 'letter'>[] {
  const chains: Flat[][] = []
  for (const side of sides) {
    const [start] = side as readonly [Flat]
    const before = chains.find((chain) => long(minus(chain.at(-1) as Flat, start)) < NEAR)
    if (before) before.push(...side.slice(1))
    else chains.push([...side])
  }
  const isClosed = (chain: readonly Flat[]): boolean => {
    const ends = [chain[0], chain.at(-1)] as Flat[]
    return lines.some(({ points, closed }) =>
      (closed ? [...points, points[0] as Flat] : points)
        .slice(1)
        .some((b, k) => ends.every((end) => off(end, points[k] as Flat, b) < NEAR)),
    )
  }
  return chains.flatMap((chain): Omit<Lettered, 'letter'>[] => {
    if (chain.length > 2 && isClosed(chain)) return [{ on: 'place', points: chain }]
    return chain.slice(1).map((b, k) => ({ on: 'line', points: [chain[k] as Flat, b] }))
  })
}

/** The hatching along a line that is taped begins so near to it, mm. */
const TAPE = 0.7

/** The sheet's numbers have four digits after the point. */
const NEAR = 1e-3

const minus = (a: Flat, b: Flat): Flat => [a[0] - b[0], a[1] - b[1]]
const cross2 = (a: Flat, b: Flat): number => a[0] * b[1] - a[1] * b[0]
const dot2 = (a: Flat, b: Flat): number => a[0] * b[0] + a[1] * b[1]
const long = (a: Flat): number => Math.hypot(a[0], a[1])

/** How far a point is from a stretch. */
function off(p: Flat, a: Flat, b: Flat): number {
  const ab = minus(b, a)
  const t = Math.max(0, Math.min(1, dot2(minus(p, a), ab) / (dot2(ab, ab) || 1)))
  return long(minus(p, [a[0] + t * ab[0], a[1] + t * ab[1]]))
}

function isWithin(p: Flat, outline: readonly Flat[]): boolean {
  let inside = false
  outline.forEach((a, k) => {
    const b = outline[(k + 1) % outline.length] as Flat
    if (a[1] > p[1] !== b[1] > p[1] && p[0] < a[0] + ((p[1] - a[1]) / (b[1] - a[1])) * (b[0] - a[0]))
      inside = !inside
  })
  return inside
}

/** Two faces that hang together: what a point of the second is in the flat frame of the first. */
interface Link {
  readonly faces: readonly [number, number]
  /** From the one face to the other; `turn` is by how much it is folded, above 0 for a valley, radians. */
  readonly move: (from: number, turn: number) => Move
  /** Three points of the second face. */
  readonly points: readonly Flat[]
  readonly fold: { readonly p: Flat; readonly q: Flat; readonly kind: Kind } | null
}

export interface Sheet {
  /** Flat faces, counter-clockwise, each in the frame of its page. */
  readonly faces: readonly (readonly Flat[])[]
  readonly links: readonly Link[]
  /** Faces that are stuck on others and no more. */
  readonly tabs: ReadonlySet<number>
  /** Of the gutter, from the reader's end. */
  readonly gutter: readonly [Flat, Flat]
}

const area = (points: readonly Flat[]): number =>
  points.reduce((sum, p, k) => sum + cross2(p, points[(k + 1) % points.length] as Flat) / 2, 0)

interface Piece {
  readonly outline: readonly Flat[]
  readonly faces: readonly (readonly Flat[])[]
  readonly links: readonly Link[]
}

/** The faces of one piece of a page. Their numbers begin with `first`. */
function pieceOf(lines: readonly PrintedLine[], outline: readonly Flat[], first: number): Piece {
  const onSheet = (p: Flat): boolean =>
    isWithin(p, outline) ||
    outline.some((a, k) => off(p, a, outline[(k + 1) % outline.length] as Flat) < NEAR)
  const stretches = lines.flatMap(({ kind, points, closed }) => {
    if (!points.every(onSheet)) return []
    const all = closed ? [...points, points[0] as Flat] : points
    return all.slice(1).map((b, k) => ({ kind, a: all[k] as Flat, b }))
  })
  // Corners: all ends, and where lines cross.
  const corners: Flat[] = []
  const cornerAt = (p: Flat): number => {
    const known = corners.findIndex((c) => long(minus(c, p)) < NEAR)
    return known >= 0 ? known : corners.push(p) - 1
  }
  for (const { a, b } of stretches) {
    cornerAt(a)
    cornerAt(b)
  }
  stretches.forEach((s, k) => {
    for (const t of stretches.slice(k + 1)) {
      const [u, v] = [minus(s.b, s.a), minus(t.b, t.a)]
      const det = cross2(u, v)
      if (Math.abs(det) < 1e-9) continue
      const along = cross2(minus(t.a, s.a), v) / det
      const other = cross2(minus(t.a, s.a), u) / det
      if (along > 0 && along < 1 && other > 0 && other < 1)
        cornerAt([s.a[0] + along * u[0], s.a[1] + along * u[1]])
    }
  })
  // Edges between neighbouring corners; where lines lie on one another a cut is a cut.
  const edges = new Map<string, Kind>()
  for (const { kind, a, b } of stretches) {
    const on = corners
      .map((c, k) => ({ k, c, t: dot2(minus(c, a), minus(b, a)) }))
      .filter(({ c }) => off(c, a, b) < NEAR)
      .sort((one, two) => one.t - two.t)
    on.slice(1).forEach(({ k }, n) => {
      const key = [on[n]?.k ?? 0, k].sort((x, y) => x - y).join(' ')
      if (edges.get(key) !== 'cut') edges.set(key, kind)
    })
  }
  // Half edges, each followed by the next one clockwise round its end: so every face goes round once.
  const out = new Map<number, number[]>()
  for (const key of edges.keys()) {
    const [a, b] = key.split(' ').map(Number) as [number, number]
    out.set(a, [...(out.get(a) ?? []), b])
    out.set(b, [...(out.get(b) ?? []), a])
  }
  const angle = (from: number, to: number): number => {
    const [x, y] = minus(corners[to] as Flat, corners[from] as Flat)
    return Math.atan2(y, x)
  }
  for (const [at, ends] of out) ends.sort((a, b) => angle(at, a) - angle(at, b))
  const next = (a: number, b: number): number => {
    const ends = out.get(b) ?? []
    return ends[(ends.indexOf(a) + ends.length - 1) % ends.length] as number
  }
  const faceOf = new Map<string, number>()
  const faces: Flat[][] = []
  for (const [from, ends] of out)
    for (const to of ends) {
      if (faceOf.has(`${from} ${to}`)) continue
      const round: number[] = []
      let [a, b] = [from, to]
      do {
        faceOf.set(`${a} ${b}`, faces.length)
        round.push(a)
        ;[a, b] = [b, next(a, b)]
      } while (a !== from || b !== to)
      faces.push(round.map((k) => corners[k] as Flat))
    }
  const inner = faces.map((points) => area(points) > 0)
  const links = [...edges].flatMap(([key, kind]): Link[] => {
    if (kind === 'cut') return []
    const [a, b] = key.split(' ').map(Number) as [number, number]
    const [left, right] = [faceOf.get(`${a} ${b}`) ?? -1, faceOf.get(`${b} ${a}`) ?? -1]
    if (left === right || !inner[left] || !inner[right]) return []
    const [p, q] = [corners[a] as Flat, corners[b] as Flat]
    return [
      {
        faces: [first + left, first + right],
        // From p to q the first face lies on the left: a valley comes up on either side.
        move: (from, turn) => (from === first + left ? about(p, q, -turn) : about(q, p, -turn)),
        points: [p, q, [p[0] + (q[1] - p[1]), p[1] - (q[0] - p[0])]],
        fold: { p, q, kind },
      },
    ]
  })
  return { outline, faces, links }
}

/** The face on which an outline lies; null for a sample beside the pieces. */
function faceUnder(
  faces: readonly (readonly Flat[])[],
  from: number,
  to: number,
  points: readonly Flat[],
): number | null {
  const middle = middleOf(points)
  for (let k = from; k < to; k++) {
    const face = faces[k] as readonly Flat[]
    if (area(face) > 0 && isWithin(middle, face)) return k
  }
  return null
}

/** The face that an edge bounds. */
function faceAt(
  faces: readonly (readonly Flat[])[],
  from: number,
  to: number,
  [a, b]: readonly Flat[],
): number | null {
  for (let k = from; k < to; k++) {
    const face = faces[k] as readonly Flat[]
    if (area(face) > 0 && [a, b].every((end) => end && face.some((p) => long(minus(p, end)) < NEAR))) return k
  }
  return null
}

/** One half of a joint: on which page and face it is printed. */
interface Joint extends Lettered {
  readonly page: number
  readonly face: number
  /** Of that face. */
  readonly outline: readonly Flat[]
  /** The way on the page to the reader's end of its piece. */
  readonly toReader: Flat
}

/**
 * The taping of an edge to a line: the face lies flat beside the line, what is printed of it up, and comes up about it.
 * Which end goes to which the piece tells itself: where two of its taped edges meet, their lines meet. Where they lie on
 * two pieces, the end nearer to the reader's goes to the end nearer to the reader's.
 */
function taped(place: Joint, edge: Joint, all: readonly Joint[]): Link {
  const [p, q] = place.points as readonly [Flat, Flat]
  const [a, b] = edge.points as readonly [Flat, Flat]
  const meets = (end: Flat, on: Joint['on']): boolean =>
    all.some(
      (other) =>
        other.on === on &&
        other.page === (on === 'edge' ? edge : place).page &&
        other.letter !== edge.letter &&
        other.points.some((one) => long(minus(one, end)) < ALIKE),
    )
  const isNearer = (one: Flat, than: Flat, { toReader }: Joint): boolean =>
    dot2(minus(one, than), toReader) > 0
  const isSwapped =
    meets(p, 'line') || meets(q, 'line')
      ? meets(a, 'edge') !== meets(p, 'line')
      : isNearer(a, b, edge) !== isNearer(p, q, place)
  const [from, to] = isSwapped ? [b, a] : [a, b]
  const [u, v] = [minus(to, from), minus(q, p)]
  if (Math.abs(long(u) - long(v)) > ALIKE) throw new Error('an edge and its line are not of one length')
  const angle = Math.atan2(cross2(u, v), dot2(u, v))
  const [c, s] = [Math.cos(angle), Math.sin(angle)]
  const lay: Move = [
    ...[c, -s, 0, s, c, 0, 0, 0, 1],
    ...[p[0] - c * from[0] + s * from[1], p[1] - s * from[0] - c * from[1], 0],
  ]
  const [x, y] = moved(lay, [...middleOf(edge.outline), 0])
  const isRight = cross2(v, minus([x, y], p)) < 0
  const [start, end] = isRight ? [p, q] : [q, p]
  return {
    faces: [place.face, edge.face],
    move: (from, turn) => {
      const move = after(about(start, end, -turn), lay)
      return from === place.face ? move : undone(move)
    },
    points: edge.outline.slice(0, 3),
    fold: { p: start, q: end, kind: 'valley' },
  }
}

/** Two outlines of one shape differ by no more, mm. */
const ALIKE = 0.02

/** The turn and shift of the plane (and over, if it comes to lie on its face) that bring one outline on another. */
function laidOn(from: readonly Flat[], to: readonly Flat[], isTurnedOver: boolean): Move {
  const wound = (points: readonly Flat[]): readonly Flat[] =>
    area(points) < 0 ? [...points].reverse() : points
  const target = wound(to)
  const source = wound(isTurnedOver ? from.map(([x, y]): Flat => [-x, y]) : from)
  const n = source.length
  for (let shift = 0; n === target.length && shift < n; shift++) {
    const at = (k: number): Flat => target[(k + shift) % n] as Flat
    const [u, v] = [minus(source[1] as Flat, source[0] as Flat), minus(at(1), at(0))]
    const angle = Math.atan2(cross2(u, v), dot2(u, v))
    const [c, s] = [Math.cos(angle), Math.sin(angle)]
    const [o, t] = [source[0] as Flat, at(0)]
    const moveX = t[0] - c * o[0] + s * o[1]
    const moveY = t[1] - s * o[0] - c * o[1]
    const fits = source.every(
      ([x, y], k) => long(minus([c * x - s * y + moveX, s * x + c * y + moveY], at(k))) < ALIKE,
    )
    const over = isTurnedOver ? -1 : 1
    if (fits) return [c * over, -s, 0, s * over, c, 0, 0, 0, over, moveX, moveY, 0]
  }
  throw new Error('a tab and its place are not of one shape')
}

/** About so long are the sides of a tab, mm. */
const TAB_SIDE = 50

/** Directions of two sides differ by no more, radians. */
const PARALLEL = 0.01

/**
 * The turn and shift that lay a piece on its place by the outlines of the glue alone, the one printed as far within the
 * other all round. Where several turns would do, the end of the piece that is the reader's lies as its host's does.
 */
function laidWithin(tab: Joint, place: Joint): Move {
  const wound = (points: readonly Flat[]): readonly Flat[] =>
    area(points) < 0 ? [...points].reverse() : points
  const [from, to] = [wound(tab.points), wound(place.points)]
  const n = from.length
  const side = (points: readonly Flat[], k: number): Flat =>
    minus(points[(k + 1) % n] as Flat, points[k % n] as Flat)
  const found: { move: Move; like: number }[] = []
  for (let shift = 0; n === to.length && shift < n; shift++) {
    const turns = from.map((_, k) => {
      const [u, v] = [side(from, k), side(to, k + shift)]
      return Math.atan2(cross2(u, v), dot2(u, v))
    })
    const angle = turns[0] as number
    if (turns.some((one) => Math.abs(Math.sin(one - angle)) > PARALLEL || Math.cos(one - angle) < 0)) continue
    const [c, s] = [Math.cos(angle), Math.sin(angle)]
    const turned = ([x, y]: Flat): Flat => [c * x - s * y, s * x + c * y]
    // Each side lies as far within its own: two numbers of the shift and that distance, by least squares.
    const rows = from.map((p, k) => {
      const way = side(to, k + shift)
      const out: Flat = [way[1] / long(way), -way[0] / long(way)]
      return { row: [out[0], out[1], 1], is: dot2(out, minus(to[(k + shift) % n] as Flat, turned(p))) }
    })
    const square = [0, 1, 2].map((r) =>
      [0, 1, 2].map((q) => rows.reduce((sum, { row }) => sum + (row[r] as number) * (row[q] as number), 0)),
    )
    const right = [0, 1, 2].map((r) => rows.reduce((sum, { row, is }) => sum + (row[r] as number) * is, 0))
    const [x, y, gap] = solvedSystem(square, right) as [number, number, number]
    if (
      rows.some(({ row, is }) => Math.abs((row[0] as number) * x + (row[1] as number) * y + gap - is) > ALIKE)
    )
      continue
    found.push({
      move: [c, -s, 0, s, c, 0, 0, 0, 1, x, y, 0],
      like: dot2(turned(tab.toReader), place.toReader),
    })
  }
  const [best] = found.sort((a, b) => b.like - a.like)
  if (!best) throw new Error('a piece and its place are not of one shape')
  return best.move
}

/** The way back of a turn and a shift. */
function undone(m: Move): Move {
  const turn = [0, 1, 2].flatMap((r) => [0, 1, 2].map((c) => m[3 * c + r] as number))
  const [x, y, z] = moved([...turn, 0, 0, 0], [m[9] as number, m[10] as number, m[11] as number])
  return [...turn, -x, -y, -z]
}

/** All pieces of the pages, stuck together letter on letter. */
export function sheetOf(pages: readonly Print[]): Sheet {
  const faces: (readonly Flat[])[] = []
  const links: Link[] = []
  let card: Piece | null = null
  const joints: Joint[] = []
  for (const [page, { lines, lettered, names }] of pages.entries()) {
    const from = faces.length
    const ends = new Map<number, Flat>()
    const outlines = lines.filter(({ kind, closed }) => kind === 'cut' && closed)
    for (const { points: outline, of } of outlines) {
      const piece = pieceOf(lines, outline, faces.length)
      const own = names.find(({ name }) => name === of)
      // The reader's end of the card is the lower one.
      for (const k of piece.faces.keys()) ends.set(faces.length + k, own?.toReader ?? [0, -1])
      faces.push(...piece.faces)
      links.push(...piece.links)
      card ??= piece
    }
    for (const one of lettered) {
      const find = one.on === 'edge' ? faceAt : faceUnder
      const face = find(faces, from, faces.length, one.points)
      if (face !== null)
        joints.push({
          ...one,
          page,
          face,
          outline: faces[face] as readonly Flat[],
          toReader: ends.get(face) as Flat,
        })
    }
  }
  if (!card) throw new Error('a sheet has no outline')
  const tabs = new Set<number>()
  for (const letter of new Set(joints.map((one) => one.letter))) {
    const both = joints.filter((one) => one.letter === letter)
    const [line, edge] = [both.find(({ on }) => on === 'line'), both.find(({ on }) => on === 'edge')]
    if (both.length === 2 && line && edge) {
      links.push(taped(line, edge, joints))
      continue
    }
    // Where a tab comes under a piece both are glued behind: the tab is the smaller face.
    const isBack = both.length === 2 && both.every(({ on }) => on === 'behind')
    const [place, tab] = isBack
      ? [...both].sort((a, b) => Math.abs(area(b.outline)) - Math.abs(area(a.outline)))
      : [both.find(({ on }) => on === 'place'), both.find(({ on }) => on !== 'place')]
    if (both.length !== 2 || !place || !tab)
      throw new Error(`the letter ${letter} does not stand on one tab and one place`)
    const isTab =
      isBack || Math.abs(Math.abs(area(tab.outline)) - Math.abs(area(place.points))) < ALIKE * TAB_SIDE
    const move = isBack
      ? laidOn(tab.points, place.points, true)
      : isTab
        ? laidOn(tab.outline, place.points, tab.on === 'glue')
        : laidWithin(tab, place)
    if (isTab) tabs.add(tab.face)
    links.push({
      faces: [place.face, tab.face],
      move: (from) => (from === place.face ? move : undone(move)),
      points: (faces[tab.face] ?? []).slice(0, 3),
      fold: null,
    })
  }
  // The gutter is the straight line of folds that leaves the card at both ends.
  const { outline } = card
  const leaves = (p: Flat): boolean =>
    outline.some((a, k) => off(p, a, outline[(k + 1) % outline.length] as Flat) < NEAR)
  const ends = card.links
    .flatMap(({ fold }) => (fold ? [fold.p, fold.q].filter(leaves) : []))
    .sort((a, b) => a[1] - b[1])
  const [low, high] = [ends[0], ends.at(-1)]
  if (!low || !high || Math.abs(low[0] - high[0]) > NEAR) throw new Error('a sheet has no gutter')
  return { faces, links, tabs, gutter: [low, high] }
}

/** A turn and a shift in space: nine numbers by rows, then three. */
type Move = readonly number[]

const HERE: Move = [1, 0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0]

// Written out: a card with two dozen parts asks for these some million times.
function moved(m: Move, [x, y, z]: Space): Space {
  const row = (r: number): number =>
    (m[3 * r] as number) * x +
    (m[3 * r + 1] as number) * y +
    (m[3 * r + 2] as number) * z +
    (m[9 + r] as number)
  return [row(0), row(1), row(2)]
}

function after(a: Move, b: Move): Move {
  const out = new Array<number>(12)
  for (let r = 0; r < 3; r++) {
    const [x, y, z] = [a[3 * r] as number, a[3 * r + 1] as number, a[3 * r + 2] as number]
    for (let c = 0; c < 3; c++)
      out[3 * r + c] = x * (b[c] as number) + y * (b[3 + c] as number) + z * (b[6 + c] as number)
    out[9 + r] = x * (b[9] as number) + y * (b[10] as number) + z * (b[11] as number) + (a[9 + r] as number)
  }
  return out
}

/** A turn about a line of the flat sheet (Rodrigues), radians. */
function about(p: Flat, q: Flat, angle: number): Move {
  const way = minus(q, p)
  const [u, v] = [way[0] / long(way), way[1] / long(way)]
  const [c, s] = [Math.cos(angle), Math.sin(angle)]
  const turn = [
    ...[c + u * u * (1 - c), u * v * (1 - c), v * s],
    ...[u * v * (1 - c), c + v * v * (1 - c), -u * s],
    ...[-v * s, u * s, c],
  ]
  const [x, y, z] = moved([...turn, 0, 0, 0], [p[0], p[1], 0])
  return [...turn, p[0] - x, p[1] - y, -z]
}

/** A face in space. */
export interface Folded {
  readonly points: readonly Space[]
  /** It lies stuck on another. */
  readonly isTab: boolean
}

/** No loop of faces is open by more, mm, in a sheet that folds up: its numbers have four digits, and loops add up. */
const OPEN = 3e-3

const sumOf = (gaps: readonly number[]): number => gaps.reduce((sum, gap) => sum + gap * gap, 0)

/** Solves a symmetric positive system by Cholesky's way. */
function solvedSystem(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const n = right.length
  const low = matrix.map(() => new Array<number>(n).fill(0))
  for (let r = 0; r < n; r++)
    for (let c = 0; c <= r; c++) {
      let sum = matrix[r]?.[c] as number
      for (let k = 0; k < c; k++) sum -= (low[r]?.[k] as number) * (low[c]?.[k] as number)
      ;(low[r] as number[])[c] = r === c ? Math.sqrt(Math.max(sum, 1e-12)) : sum / (low[c]?.[c] as number)
    }
  const half: number[] = []
  for (let r = 0; r < n; r++) {
    let sum = right[r] as number
    for (let k = 0; k < r; k++) sum -= (low[r]?.[k] as number) * (half[k] as number)
    half.push(sum / (low[r]?.[r] as number))
  }
  for (let r = n - 1; r >= 0; r--) {
    let sum = half[r] as number
    for (let k = r + 1; k < n; k++) sum -= (low[k]?.[r] as number) * (half[k] as number)
    half[r] = sum / (low[r]?.[r] as number)
  }
  return half
}

/** Fold angles, between 0 and a straight one, at which the gaps are least. */
function leastSquares(
  gaps: (values: readonly number[]) => readonly number[],
  start: readonly number[],
): readonly number[] {
  let values = start
  let now = gaps(values)
  let damping = 1e-3
  for (let turn = 0; turn < 60 && sumOf(now) > 1e-14; turn++) {
    const slopes = values.map((_, k) => {
      const ahead = gaps(values.map((value, n) => (n === k ? value + 1e-7 : value)))
      return ahead.map((gap, n) => (gap - (now[n] as number)) / 1e-7)
    })
    const dot = (a: readonly number[], b: readonly number[]): number =>
      a.reduce((sum, value, k) => sum + value * (b[k] as number), 0)
    const square = slopes.map((a) => slopes.map((b) => dot(a, b)))
    const right = slopes.map((a) => -dot(a, now))
    for (;;) {
      const shift = solvedSystem(
        square.map((row, r) => row.map((value, c) => (r === c ? value * (1 + damping) + 1e-9 : value))),
        right,
      )
      const next = values.map((value, k) => Math.min(Math.PI, Math.max(0, value + (shift[k] as number))))
      const then = gaps(next)
      if (sumOf(then) < sumOf(now)) {
        ;[values, now, damping] = [next, then, damping / 10]
        break
      }
      damping *= 10
      if (damping > 1e8) return values
    }
  }
  return values
}

/** From the opening of one search to that of the next, degrees: what is found is where the next begins. */
const WALK = 20

/** Where so short a step finds nothing, nothing is there. */
const LEAST = 5

/** Steps uphill at most, and how far apart three points on the way are and how far one goes, radians in all. */
const RAISINGS = 12

const STRIDE = 0.05

const MOST = 0.5

/** Where the walk begins: nearly flat. */
const FLAT = 165

/** There what is cut from the card is nearly flat too; what is glued on it may stand, radians. */
const STARTS = [Math.PI / 12, Math.PI / 4, Math.PI / 2, (3 * Math.PI) / 4]

/**
 * The faces of the sheet in space at an opening (degrees), in the frame of the open card: the reader's end of the
 * gutter at 0, y along it, x to the right, z out of the card. Throws if it cannot be folded so.
 */
export function folder({ faces, links, tabs, gutter }: Sheet): (opening: number) => readonly Folded[] {
  const [low, high] = gutter
  const isGutter = ({ fold }: Link): boolean =>
    fold !== null &&
    [fold.p, fold.q].every((end) => off(end, low, high) < NEAR) &&
    [fold.p, fold.q].some((end) => end === low || end === high)
  const pair = links.find(isGutter)
  if (!pair) throw new Error('no face lies at the gutter')
  // The same two faces along the same line turn as one.
  const turns: Link[] = []
  const turnOf = links.map((link) => {
    const { faces: both, fold } = link
    if (!fold) return -1
    const known = turns.findIndex(
      (turn) =>
        turn.fold &&
        both.every((face) => turn.faces.includes(face)) &&
        onLine(fold.p, turn.fold.p, turn.fold.q) &&
        onLine(fold.q, turn.fold.p, turn.fold.q),
    )
    return known >= 0 ? known : turns.push(link) - 1
  })
  const given = turns.map(
    ({ faces: both, fold }) =>
      fold !== null && both.every((face) => pair.faces.includes(face)) && onLine(fold.p, low, high),
  )
  const free = turns.flatMap((_, k) => (given[k] ? [] : [k]))
  const [left, right] = pair.faces
  const root = middleOf(faces[left] ?? [])[0] < middleOf(faces[right] ?? [])[0] ? left : right
  // A tree of faces from the left page; every other link closes a loop.
  const reached = new Map<number, { from: number; link: number }>()
  const order: number[] = [root]
  for (let k = 0; k < order.length; k++)
    links.forEach(({ faces: both }, n) => {
      const at = order[k] as number
      if (!both.includes(at)) return
      const to = both[0] === at ? both[1] : both[0]
      if (to === root || reached.has(to)) return
      reached.set(to, { from: at, link: n })
      order.push(to)
    })
  const used = new Set([...reached.values()].map(({ link }) => link))
  const closing = links.flatMap((_, n) => (used.has(n) ? [] : [n]))
  const straight = (opening: number): number => Math.PI * (1 - opening / 180)
  const angles = (values: readonly number[], opening: number): number[] =>
    turns.map(({ fold }, k) => {
      const sign = fold?.kind === 'valley' ? 1 : -1
      return given[k] ? sign * straight(opening) : sign * (values[free.indexOf(k)] as number)
    })
  const over = (n: number, from: number, by: readonly number[]): Move =>
    (links[n] as Link).move(from, by[turnOf[n] as number] ?? 0)
  const place = (by: readonly number[]): Map<number, Move> => {
    const moves = new Map([[root, HERE]])
    for (const face of order.slice(1)) {
      const { from, link } = reached.get(face) as { from: number; link: number }
      moves.set(face, after(moves.get(from) as Move, over(link, from, by)))
    }
    return moves
  }
  const gaps = (values: readonly number[], opening: number): number[] => {
    const by = angles(values, opening)
    const moves = place(by)
    return closing.flatMap((n) => {
      const {
        faces: [a, b],
        points,
      } = links[n] as Link
      const there = after(moves.get(a) as Move, over(n, a, by))
      return points.flatMap(([x, y]) => {
        const [one, two] = [moved(there, [x, y, 0]), moved(moves.get(b) as Move, [x, y, 0])]
        return one.map((value, k) => value - (two[k] as number))
      })
    })
  }
  const solved = (start: readonly number[], opening: number): readonly number[] => {
    if (free.length === 0) return []
    const found = leastSquares((values) => gaps(values, opening), start)
    if (Math.max(0, ...gaps(found, opening).map(Math.abs)) > OPEN)
      throw new Error(`the printed lines do not fold up at ${opening}: no angles close every loop`)
    return found
  }
  /** How high all of it stands out of the card, mm. */
  const height = (values: readonly number[], opening: number): number =>
    inCard(place(angles(values, opening)), opening).reduce(
      (sum, { points }) => sum + points.reduce((high, [, , z]) => high + z / points.length, 0),
      0,
    )
  /** What the loops leave free stands as high as it can: a maker puts walls upright. */
  const raised = (values: readonly number[], opening: number): readonly number[] => {
    let best = values
    for (let turn = 0; turn < RAISINGS; turn++) {
      const now = height(best, opening)
      const uphill = best.map(
        (_, k) =>
          (height(
            best.map((value, n) => (n === k ? value + 1e-6 : value)),
            opening,
          ) -
            now) /
          1e-6,
      )
      const steep = Math.hypot(...uphill)
      // What is left of a step uphill once all loops are shut again is the way that is free.
      const shut = solved(
        best.map((value, k) => value + (0.05 * (uphill[k] as number)) / (steep || 1)),
        opening,
      )
      const way = shut.map((value, k) => value - (best[k] as number))
      const long = Math.hypot(...way)
      if (long < 1e-5) return best
      const along = (t: number): readonly number[] =>
        solved(
          best.map((value, k) => value + (t / long) * (way[k] as number)),
          opening,
        )
      // The top of the parabola through three points of it.
      const [back, ahead] = [height(along(-STRIDE), opening) - now, height(along(STRIDE), opening) - now]
      const bend = back + ahead
      const t = bend < 0 ? (STRIDE * (back - ahead)) / (2 * bend) : STRIDE * 4
      best = along(Math.max(-MOST, Math.min(MOST, t)))
    }
    return best
  }
  const settled = (start: readonly number[], opening: number): readonly number[] => {
    const found = solved(start, opening)
    return free.length === 0 ? found : raised(found, opening)
  }
  const begun = (): readonly number[] => {
    for (const start of STARTS) {
      try {
        return settled(
          free.map(() => start),
          FLAT,
        )
      } catch {
        // From another start.
      }
    }
    throw new Error('the printed lines do not fold up: no angles close every loop')
  }
  let last = { opening: FLAT, values: begun() }
  return (opening) => {
    for (let step = WALK; last.opening !== opening; ) {
      const way = opening - last.opening
      const next = last.opening + Math.sign(way) * Math.min(step, Math.abs(way))
      try {
        const find = next === opening ? settled : solved
        last = { opening: next, values: find(last.values, next) }
      } catch (error) {
        if (step < LEAST) throw error
        step /= 2
      }
    }
    return inCard(place(angles(last.values, opening)), opening)
  }

  function inCard(moves: ReadonlyMap<number, Move>, opening: number): readonly Folded[] {
    // Both pages lean back alike.
    const lean = ((90 - opening / 2) * Math.PI) / 180
    const [c, s] = [Math.cos(lean), Math.sin(lean)]
    return faces.flatMap((points, face) => {
      const move = moves.get(face)
      if (!move) return []
      const placed = points.map((flat): Space => {
        const [x, y, z] = moved(move, [flat[0], flat[1], 0])
        const [dx, dy] = [x - low[0], y - low[1]]
        return [c * dx + s * z, dy, c * z - s * dx]
      })
      return [{ points: placed, isTab: tabs.has(face) }]
    })
  }
}

const onLine = (p: Flat, a: Flat, b: Flat): boolean =>
  Math.abs(cross2(minus(p, a), minus(b, a))) / long(minus(b, a)) < NEAR

const middleOf = (points: readonly Flat[]): Flat => [
  points.reduce((sum, [x]) => sum + x, 0) / points.length,
  points.reduce((sum, [, y]) => sum + y, 0) / points.length,
]

/** How far a point is from a flat outline in space. */
export function awayFrom(p: Space, outline: readonly Space[]): number {
  const [o] = outline as [Space]
  const sub = (a: Space, b: Space): Space => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
  const dot = (a: Space, b: Space): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
  const cross = (a: Space, b: Space): Space => [
    a[1] * b[2] - a[2] * b[1],
    a[2] * b[0] - a[0] * b[2],
    a[0] * b[1] - a[1] * b[0],
  ]
  const times = (a: Space, k: number): Space => [a[0] * k, a[1] * k, a[2] * k]
  // Newell's normal.
  let normal: Space = [0, 0, 0]
  outline.forEach((a, k) => {
    const n = cross(sub(a, o), sub(outline[(k + 1) % outline.length] as Space, o))
    normal = [normal[0] + n[0], normal[1] + n[1], normal[2] + n[2]]
  })
  normal = times(normal, 1 / Math.hypot(...normal))
  const u = times(sub(outline[1] as Space, o), 1 / Math.hypot(...sub(outline[1] as Space, o)))
  const v = cross(normal, u)
  const flat = (a: Space): Flat => [dot(sub(a, o), u), dot(sub(a, o), v)]
  const height = dot(sub(p, o), normal)
  const round = outline.map(flat)
  const at = flat(p)
  const beside = isWithin(at, round)
    ? 0
    : Math.min(...round.map((a, k) => off(at, a, round[(k + 1) % round.length] as Flat)))
  return Math.hypot(height, beside)
}

/** Of a flat outline in space, mm². */
export function areaOf(outline: readonly Space[]): number {
  const [o] = outline as [Space]
  let [x, y, z] = [0, 0, 0]
  outline.forEach((a, k) => {
    const b = outline[(k + 1) % outline.length] as Space
    const [p, q] = [
      [a[0] - o[0], a[1] - o[1], a[2] - o[2]],
      [b[0] - o[0], b[1] - o[1], b[2] - o[2]],
    ] as const
    x += p[1] * q[2] - p[2] * q[1]
    y += p[2] * q[0] - p[0] * q[2]
    z += p[0] * q[1] - p[1] * q[0]
  })
  return Math.hypot(x, y, z) / 2
}
