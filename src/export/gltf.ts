/**
 * The card as a glTF 2.0 scene (Khronos Group; ISO/IEC 12113:2022) that opens and shuts: each panel a flat mesh seen
 * from both sides, moved by its node. The keyframes are the kernel's own poses: what lies between two of them alone is
 * not exact. Lengths are metres and y is up, as glTF has it.
 */
import * as says from '../../content/words/export/gltf.ts'
import type { Matrix } from '../drawing/pen/marks.ts'
import { linear } from '../drawing/pen/mix.ts'
import type { Hex } from '../drawing/pen/papers.ts'
import { CARDS, PAPERS } from '../drawing/pen/papers.ts'
import { coverSurfaces } from '../drawing/view/cover.ts'
import { cardOf } from '../drawing/view/paper.ts'
import { bytesOf } from '../paper/design/picture.ts'
import type { Design, Flat, Poser, Surface, Vec3 } from '../paper/index.ts'
import { compile, patchesOf, plainText } from '../paper/index.ts'
import { frontSign } from '../paper/model/model.ts'
import { signedArea } from '../paper/plane/convex.ts'
import { cross, dot, subtract } from '../paper/plane/vector.ts'
import type { Ink, InkPatch } from './art-mesh.ts'
import { inkPatches } from './art-mesh.ts'
import { glbBytes, Store } from './glb.ts'
import { openingSteps, thereAndBack } from './motion.ts'

/** So many poses from shut to open: 2° apart where the card opens flat. */
const POSES = 91

/** From shut to open, seconds. */
const LONG = 4

/** Millimetres to metres, and the card's z to glTF's y: a quarter turn about x. */
const TABLE = { scale: [0.001, 0.001, 0.001], rotation: [-Math.SQRT1_2, 0, 0, Math.SQRT1_2] } as const

/** A flat piece of paper: convex outlines in a plane of its own, mm. */
interface Body {
  readonly name: string
  readonly colour: Hex
  readonly outlines: readonly (readonly Flat[])[]
  /** How far its paper lies off the plane, mm; the third axis is square to the first two, by the right hand. */
  readonly off: number
  /** On which side of it along that axis the front of the paper is. */
  readonly front: 1 | -1
  readonly art: readonly InkPatch[]
}

/** Where a body's plane is: its nought, and unit vectors along its two axes. */
interface Place {
  readonly at: Vec3
  readonly across: Vec3
  readonly along: Vec3
}

type Quaternion = readonly [x: number, y: number, z: number, w: number]

function panelBodies({ model }: Poser): readonly Body[] {
  const { design } = model
  const patches = patchesOf(model)
  return model.panels.map((panel, index): Body => {
    const paper = design.papers?.[panel.name.split('/')[0] ?? '']
    const outlines = patches.filter((patch) => patch.panel === index).map(({ outline }) => outline)
    return {
      name: panel.name,
      colour: paper ? PAPERS[paper] : (CARDS[cardOf(design, panel.owner)] ?? CARDS[0]),
      outlines,
      art: inkPatches(design, panel.name, outlines),
      // What is stuck on lies a thickness of card off: two sheets in one plane would flicker.
      off: -panel.lift * frontSign(model, { ...panel, turned: false }) * design.card.caliper,
      front: frontSign(model, panel) === 1 ? -1 : 1,
    }
  })
}

const coverBodies = (cover: readonly Surface[]): readonly Body[] =>
  cover.map(({ panel, flat = [], points, front }) => {
    const { across, along } = coverPlace({ points, flat })
    return {
      name: panel,
      colour: PAPERS.night,
      outlines: [flat],
      off: 0,
      art: [],
      front: dot(cross(across, along), front) > 0 ? 1 : -1,
    }
  })

const unit = (v: Vec3): Vec3 => {
  const long = Math.hypot(...v)
  return [v[0] / long, v[1] / long, v[2] / long]
}

const panelPlaces = (poser: Poser): readonly Place[] =>
  poser.model.panels.map((_, k) => {
    const at = poser.lift(k, [0, 0])
    return {
      at,
      across: unit(subtract(poser.lift(k, [1, 0]), at)),
      along: unit(subtract(poser.lift(k, [0, 1]), at)),
    }
  })

/** Its corners come round from the near end of the gutter: up the gutter, across the page, down its edge. */
function coverPlace({ points, flat = [] }: Pick<Surface, 'points' | 'flat'>): Place {
  const [near, far, , edge] = points as readonly [Vec3, Vec3, Vec3, Vec3]
  const along = unit(subtract(far, near))
  const low = flat[0]?.[1] ?? 0
  return {
    at: [near[0] - low * along[0], near[1] - low * along[1], near[2] - low * along[2]],
    across: unit(subtract(edge, near)),
    along,
  }
}

/**
 * The turn that brings x, y, z onto three unit vectors that are square to one another, right-handed. Source: Shepperd
 * 1978, by the largest of the four squares.
 */
export function turnOf({ across: a, along: b }: Pick<Place, 'across' | 'along'>): Quaternion {
  const c = cross(a, b)
  const squares = [a[0] - b[1] - c[2], b[1] - a[0] - c[2], c[2] - a[0] - b[1], a[0] + b[1] + c[2]]
  const best = squares.indexOf(Math.max(...squares))
  const r = 2 * Math.sqrt(Math.max(0, 1 + (squares[best] as number)))
  const [x, y, z] = [b[2] - c[1], c[0] - a[2], a[1] - b[0]]
  const [xy, xz, yz] = [a[1] + b[0], a[2] + c[0], b[2] + c[1]]
  if (best === 0) return [r / 4, xy / r, xz / r, x / r]
  if (best === 1) return [xy / r, r / 4, yz / r, y / r]
  if (best === 2) return [xz / r, yz / r, r / 4, z / r]
  return [x / r, y / r, z / r, r / 4]
}

/** The same turn told the nearer way, so that what is between two of them does not go round. */
function nearer(turn: Quaternion, before: Quaternion | undefined): Quaternion {
  const same = before ? turn.reduce((sum, part, k) => sum + part * (before[k] as number), 0) : 1
  return same < 0 ? (turn.map((part) => -part) as unknown as Quaternion) : turn
}

/** A flat outline as a fan of triangles. */
interface Fan {
  readonly outline: readonly Flat[]
  readonly off: number
  /** From which side along the third axis it is seen. */
  readonly side: 1 | -1
  readonly ink?: Ink
}

/** A point of the paper within a picture: 0 to 1 from its left and from its top, as glTF has it. */
function withinPicture([a, b, c, d, e, f]: Matrix, [x, y]: Flat): readonly [number, number] {
  const [u, v, det] = [x - e, y - f, a * d - b * c]
  return [(d * u - c * v) / det, (a * v - b * u) / det]
}

function primitiveOf(fans: readonly Fan[], store: Store, material: number): object {
  const points: number[] = []
  const normals: number[] = []
  const colours: number[] = []
  const within: number[] = []
  const corners: number[] = []
  for (const { outline, off, side, ink } of fans) {
    const light = ink && 'colour' in ink ? linear(ink.colour as Hex) : []
    const first = points.length / 3
    const isTurned = signedArea(outline) * side < 0
    for (const [x, y] of outline) {
      points.push(x, y, off)
      normals.push(0, 0, side)
      colours.push(...light)
      if (ink && 'square' in ink) within.push(...withinPicture(ink.square, [x, y]))
    }
    // Seen from its side an outline runs anticlockwise.
    for (let k = 1; k + 1 < outline.length; k++)
      corners.push(first, ...(isTurned ? [first + k + 1, first + k] : [first + k, first + k + 1]))
  }
  return {
    attributes: {
      POSITION: store.floats('VEC3', points, 'vertex'),
      NORMAL: store.floats('VEC3', normals, 'vertex'),
      ...(colours.length > 0 ? { COLOR_0: store.floats('VEC3', colours, 'vertex') } : {}),
      ...(within.length > 0 ? { TEXCOORD_0: store.floats('VEC2', within, 'vertex') } : {}),
    },
    indices: store.corners(corners),
    material,
  }
}

/** Its paper, and what is drawn on it: all colours in one, each picture by itself. */
function meshOf({ name, colour, outlines, off, front, art }: Body, store: Store, stuff: Stuff): object {
  const drawn = art.flatMap(({ ink, face, above, outlines: parts }) => {
    const side = face === 'front' ? front : front === 1 ? -1 : 1
    return parts.map((outline): Fan & { ink: Ink } => ({ outline, off: off + side * above, side, ink }))
  })
  const paper = outlines.map((outline): Fan => ({ outline, off, side: front }))
  const inks = new Map<number, Fan[]>()
  for (const fan of drawn) {
    const material = stuff.ofInk(fan.ink)
    const fans = inks.get(material)
    if (fans) fans.push(fan)
    else inks.set(material, [fan])
  }
  return {
    name,
    primitives: [
      primitiveOf(paper, store, stuff.ofPaper(colour)),
      ...[...inks].map(([material, fans]) => primitiveOf(fans, store, material)),
    ],
  }
}

const materialOf = (name: string, base: object, more: object = {}): object => ({
  name,
  doubleSided: true,
  ...more,
  pbrMetallicRoughness: { ...base, metallicFactor: 0, roughnessFactor: 0.9 },
})

/** What the bodies are made of: materials and pictures, each once. */
class Stuff {
  readonly materials: object[] = []
  readonly images: object[] = []
  readonly #known = new Map<string, number>()
  readonly #store: Store

  constructor(store: Store) {
    this.#store = store
  }

  #of(key: string, make: () => object): number {
    const found = this.#known.get(key) ?? this.materials.push(make()) - 1
    this.#known.set(key, found)
    return found
  }

  ofPaper(colour: Hex): number {
    return this.#of(colour, () => materialOf(colour, { baseColorFactor: [...linear(colour), 1] }))
  }

  ofInk(ink: Ink): number {
    // Each corner of what is drawn in colours has a colour of its own.
    if ('colour' in ink) return this.#of('ink', () => materialOf('ink', {}))
    return this.#of(ink.picture, () => {
      const file = bytesOf(ink.picture)
      if (!file) throw new RangeError('a picture of a design holds no file')
      const { type, bytes } = file
      const image = this.images.push({ bufferView: this.#store.file(bytes), mimeType: `image/${type}` }) - 1
      // A PNG may show the paper through, which a JPEG cannot.
      const blend = type === 'png' ? { alphaMode: 'BLEND' } : {}
      return materialOf(`picture ${image + 1}`, { baseColorTexture: { index: image } }, blend)
    })
  }
}

/** Pictures end at their rim. */
const SAMPLER = { wrapS: 33071, wrapT: 33071 } as const

/** How a body goes through all keyframes. */
function wayOf(places: readonly Place[]): {
  readonly at: readonly Vec3[]
  readonly turn: readonly Quaternion[]
} {
  const turn: Quaternion[] = []
  for (const place of places) turn.push(nearer(turnOf(place), turn.at(-1)))
  return { at: places.map(({ at }) => at), turn }
}

/** The card as a file that programs for three dimensions open; the same bytes for the same design. */
export function designGlb(design: Design): Uint8Array<ArrayBuffer> {
  const poser = compile(design)
  const { panels } = poser.model
  const openings = openingSteps(design, POSES)
  const placesAt = openings.map((opening) => {
    poser(opening)
    return [...panelPlaces(poser), ...coverSurfaces(design, opening, panels.length).map(coverPlace)]
  })
  const bodies = [...panelBodies(poser), ...coverBodies(coverSurfaces(design, 90, panels.length))]
  const store = new Store()
  const stuff = new Stuff(store)
  const keys = thereAndBack(openings.map((_, k) => k))
  // It ends as it began.
  const round = [...keys, 0]
  const time = store.floats(
    'SCALAR',
    round.map((_, k) => (LONG * k) / (POSES - 1)),
    'key',
  )
  const rest = Math.round((POSES - 1) / 2)
  const nodes: object[] = []
  const meshes: object[] = []
  const [samplers, channels]: [object[], object[]] = [[], []]
  for (const [k, body] of bodies.entries()) {
    if (body.outlines.length === 0) continue
    const { at, turn } = wayOf(placesAt.map((places) => places[k] as Place))
    meshes.push(meshOf(body, store, stuff))
    nodes.push({ name: body.name, mesh: meshes.length - 1, translation: at[rest], rotation: turn[rest] })
    const moves = [
      [
        'translation',
        store.floats(
          'VEC3',
          round.flatMap((key) => at[key] as Vec3),
          'key',
        ),
      ],
      [
        'rotation',
        store.floats(
          'VEC4',
          round.flatMap((key) => turn[key] as Quaternion),
          'key',
        ),
      ],
    ] as const
    for (const [path, output] of moves) {
      channels.push({ sampler: samplers.length, target: { node: nodes.length - 1, path } })
      samplers.push({ input: time, output, interpolation: 'LINEAR' })
    }
  }
  const buffer = store.bytes()
  const title = plainText(design.title)
  const json = {
    asset: { version: '2.0', generator: 'Hingebook' },
    scene: 0,
    scenes: [{ name: title, nodes: [nodes.length] }],
    // The card that holds them all comes last.
    nodes: [...nodes, { name: title, ...TABLE, children: nodes.map((_, k) => k) }],
    meshes,
    materials: stuff.materials,
    ...(stuff.images.length > 0
      ? {
          images: stuff.images,
          samplers: [SAMPLER],
          textures: stuff.images.map((_, source) => ({ sampler: 0, source })),
        }
      : {}),
    animations: [{ name: says.openAndShut, samplers, channels }],
    accessors: store.accessors,
    bufferViews: store.views,
    buffers: [{ byteLength: buffer.length }],
  }
  return glbBytes(json, buffer)
}
