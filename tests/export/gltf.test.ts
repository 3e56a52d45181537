// Checked by the Khronos Group's own validator of glTF 2.0, and read back with gl-matrix and, its pictures, with sharp.
import { readdirSync, readFileSync } from 'node:fs'
import { mat4, vec3 } from 'gl-matrix'
import { validateBytes } from 'gltf-validator'
import sharp from 'sharp'
import { describe, expect, test } from 'vitest'
import { designGlb } from '../../src/export/gltf.ts'
import { openingSteps } from '../../src/export/motion.ts'
import type { Design } from '../../src/paper/index.ts'
import { openingRange, parseDesign, poseAt } from '../../src/paper/index.ts'

const FOLDER = new URL('../../content/dummies/', import.meta.url)

const dummy = (file: string): Design => parseDesign(JSON.parse(readFileSync(new URL(file, FOLDER), 'utf8')))

const files = readdirSync(FOLDER).filter((file) => file.endsWith('.hingebook.json'))

interface Scene {
  readonly nodes: { name: string; mesh?: number }[]
  readonly meshes: {
    primitives: {
      attributes: { POSITION: number; NORMAL: number; TEXCOORD_0?: number }
      indices: number
      material: number
    }[]
  }[]
  readonly materials: { alphaMode?: string; pbrMetallicRoughness: { baseColorTexture?: { index: number } } }[]
  readonly textures?: { source: number }[]
  readonly images?: { bufferView: number; mimeType: string }[]
  readonly animations: {
    samplers: { input: number; output: number }[]
    channels: { sampler: number; target: { node: number; path: 'translation' | 'rotation' } }[]
  }[]
  readonly accessors: { bufferView: number; count: number; type: 'SCALAR' | 'VEC2' | 'VEC3' | 'VEC4' }[]
  readonly bufferViews: { byteOffset: number; byteLength: number }[]
}

/** The JSON and the floats of an accessor, by the layout that the standard gives (4.4). */
function opened(glb: Uint8Array<ArrayBuffer>) {
  const words = new DataView(glb.buffer)
  const long = words.getUint32(12, true)
  const scene = JSON.parse(new TextDecoder().decode(glb.subarray(20, 20 + long))) as Scene
  const floats = (accessor: number): number[][] => {
    const { bufferView, count, type } = scene.accessors[accessor] as Scene['accessors'][number]
    const wide = { SCALAR: 1, VEC2: 2, VEC3: 3, VEC4: 4 }[type]
    const from = 28 + long + (scene.bufferViews[bufferView]?.byteOffset ?? 0)
    return Array.from({ length: count }, (_, k) =>
      Array.from({ length: wide }, (_, c) => words.getFloat32(from + 4 * (k * wide + c), true)),
    )
  }
  const file = (view: number): Uint8Array => {
    const { byteOffset = 0, byteLength = 0 } = scene.bufferViews[view] ?? {}
    return glb.subarray(28 + long + byteOffset, 28 + long + byteOffset + byteLength)
  }
  return { scene, floats, file }
}

test.each(files)('%s passes the validator without errors or warnings', async (file) => {
  const report = await validateBytes(designGlb(dummy(file)), { format: 'glb', maxIssues: 20 })
  expect(report.issues.messages.filter(({ severity }) => severity <= 1)).toEqual([])
  expect(report.issues).toMatchObject({ numErrors: 0, numWarnings: 0 })
  expect(report.info).toMatchObject({ version: '2.0', animationCount: 1 })
})

test('the validator finds what is wrong', async () => {
  const glb = designGlb(dummy('beak.hingebook.json'))
  const text = new TextDecoder('latin1').decode(glb).replace('"mesh":1', '"mesh":99')
  const broken = Uint8Array.from(text, (letter) => letter.charCodeAt(0))
  const report = await validateBytes(broken, { format: 'glb' })
  expect(report.issues.numErrors).toBeGreaterThan(0)
})

describe.each(['beak', 'owl', 'moon', 'hedgehog', 'garden'])('%s', (name) => {
  const design = dummy(`${name}.hingebook.json`)
  const { scene, floats } = opened(designGlb(design))
  const [animation] = scene.animations

  test('has every corner of every panel where the kernel has it, at every keyframe', () => {
    const openings = openingSteps(design, 91)
    for (const [k, opening] of openings.entries()) {
      if (k % 15 !== 0) continue
      const pose = poseAt(design, opening)
      for (const [panel, outline] of Object.entries(pose.panels)) {
        const node = scene.nodes.findIndex((one) => one.name === panel)
        const key = (path: 'translation' | 'rotation'): number[] => {
          const channel = animation?.channels.find(
            ({ target }) => target.node === node && target.path === path,
          )
          return floats(animation?.samplers[channel?.sampler ?? -1]?.output ?? -1)[k] ?? []
        }
        const place = mat4.fromRotationTranslation(
          mat4.create(),
          key('rotation') as [number, number, number, number],
          key('translation') as [number, number, number],
        )
        const { primitives } = scene.meshes[scene.nodes[node]?.mesh ?? -1] ?? { primitives: [] }
        const corners = floats(primitives[0]?.attributes.POSITION ?? -1).map((p) =>
          vec3.transformMat4(vec3.create(), [p[0] ?? 0, p[1] ?? 0, 0], place),
        )
        // What guests took out is taken out of the mesh: an outline's corner may be missing, but what is there lies in its plane.
        const [a, b, c] = outline.slice(0, 3).map((p) => vec3.fromValues(...p)) as [vec3, vec3, vec3]
        const square = vec3.normalize(
          vec3.create(),
          vec3.cross(vec3.create(), vec3.sub(vec3.create(), b, a), vec3.sub(vec3.create(), c, a)),
        )
        for (const corner of corners)
          expect(
            Math.abs(vec3.dot(square, vec3.sub(vec3.create(), corner, a))),
            `${panel} at ${opening}`,
          ).toBeLessThan(0.005)
        const there = outline.filter((p) =>
          corners.some((q) => vec3.distance(q, vec3.fromValues(...p)) < 0.005),
        )
        expect(there.length, `${panel} at ${opening}`).toBeGreaterThanOrEqual(Math.min(2, outline.length))
      }
    }
  })

  test('opens as far as the card goes, and shuts again', () => {
    const [low, high] = openingRange(design)
    const openings = openingSteps(design, 91)
    expect(openings[0]).toBeCloseTo(Math.max(0.05, low), 9)
    expect(openings.at(-1)).toBe(high)
    const time = floats(animation?.samplers[0]?.input ?? -1).map(([t]) => t ?? 0)
    expect(time).toHaveLength(181)
    expect(time.every((t, k) => k === 0 || t > (time[k - 1] ?? 0))).toBe(true)
    const way = floats(animation?.samplers[0]?.output ?? -1)
    expect(way[180]).toEqual(way[0])
    expect(way[100]).toEqual(way[80])
  })

  test('turns no panel the long way round between two keyframes', () => {
    for (const { target, sampler } of animation?.channels ?? []) {
      if (target.path !== 'rotation') continue
      const turns = floats(animation?.samplers[sampler]?.output ?? -1)
      turns.slice(1).forEach((turn, k) => {
        const same = turn.reduce((sum, part, c) => sum + part * (turns[k]?.[c] ?? 0), 0)
        expect(same).toBeGreaterThan(0.5)
      })
    }
  })
})

test('a page’s front faces the reader who looks into the open card', () => {
  const { scene, floats } = opened(designGlb(dummy('card.hingebook.json')))
  const mesh = scene.meshes[scene.nodes.findIndex(({ name }) => name === 'page/right')]
  const [normal] = floats(mesh?.primitives[0]?.attributes.NORMAL ?? -1)
  const [turn] = [
    floats(scene.animations[0]?.samplers[3]?.output ?? -1)[90] as [number, number, number, number],
  ]
  const seen = vec3.transformQuat(vec3.create(), normal as [number, number, number], turn)
  expect(seen[2]).toBeCloseTo(1, 6)
})

test('what is drawn on a front lies over it and is seen from where the front is', () => {
  const { scene, floats } = opened(designGlb(dummy('owl.hingebook.json')))
  let looked = 0
  for (const { primitives } of scene.meshes) {
    const [paper, ink] = primitives
    if (!paper || !ink) continue
    looked++
    const [side] = floats(paper.attributes.NORMAL)
    const [[, , low = 0] = []] = floats(paper.attributes.POSITION)
    const points = floats(ink.attributes.POSITION)
    floats(ink.attributes.NORMAL).forEach((normal, k) => {
      const [, , high = 0] = points[k] ?? []
      expect((high - low) * (normal[2] ?? 0)).toBeGreaterThan(0)
      expect(normal).toEqual(side)
    })
  }
  expect(looked).toBeGreaterThan(2)
})

const dots = (type: 'png' | 'jpeg', colour: string): Promise<Buffer> =>
  sharp({ create: { width: 6, height: 4, channels: 3, background: colour } })
    .toFormat(type)
    .toBuffer()

const [png, jpeg] = [await dots('png', '#f5b83d'), await dots('jpeg', '#33477c')]

describe('a picture made of dots', () => {
  const address = (type: string, bytes: Buffer) => `data:image/${type};base64,${bytes.toString('base64')}`
  /** 10 high, from one place across the page to another, 30 from its near edge. */
  const frame = (left: number, right: number) => [
    [left, 30],
    [right, 30],
    [right, 40],
    [left, 40],
  ]
  const glb = designGlb(
    parseDesign({
      hingebook: 1,
      title: 'Pictures',
      card: { width: 105, height: 148 },
      mechanisms: [],
      art: [
        { on: 'page/right', shape: frame(20, 40), picture: address('png', png) },
        // Half of it off the page.
        { on: 'page/right', shape: frame(95, 115), picture: address('jpeg', jpeg) },
        // On the left page what is left for the reader is farther from the gutter.
        { on: 'page/left', shape: frame(60, 40), picture: address('png', png) },
      ],
    }),
  )
  const { scene, floats, file } = opened(glb)

  test('is held once, as the file it was, and the validator has nothing against it', async () => {
    const report = await validateBytes(glb, { format: 'glb' })
    expect(report.issues).toMatchObject({ numErrors: 0, numWarnings: 0 })
    expect(scene.images?.map(({ mimeType }) => mimeType).sort()).toEqual(['image/jpeg', 'image/png'])
    for (const { bufferView, mimeType } of scene.images ?? [])
      expect(Buffer.from(file(bufferView)).equals(mimeType === 'image/png' ? png : jpeg)).toBe(true)
  })

  test.each([
    ['page/right', 'image/png', 20, 40, 40],
    ['page/right', 'image/jpeg', 95, 115, 105],
    ['page/left', 'image/png', 60, 40, 40],
  ])(
    'on %s (%s) lies where the design has it, upright, and ends with the paper',
    (page, mime, left, right, end) => {
      const mesh = scene.meshes[scene.nodes.findIndex(({ name }) => name === page)]
      const shown = mesh?.primitives.find(({ material }) => {
        const { baseColorTexture } = scene.materials[material]?.pbrMetallicRoughness ?? {}
        const { source } = scene.textures?.[baseColorTexture?.index ?? -1] ?? {}
        return scene.images?.[source ?? -1]?.mimeType === mime
      })
      // What is clear in a PNG shows the paper.
      expect(scene.materials[shown?.material ?? -1]?.alphaMode).toBe(
        mime === 'image/png' ? 'BLEND' : undefined,
      )
      const points = floats(shown?.attributes.POSITION ?? -1)
      const within = floats(shown?.attributes.TEXCOORD_0 ?? -1)
      const across = points.map(([x = Number.NaN]) => x)
      expect([Math.min(...across), Math.max(...across)].sort((a, b) => a - b)).toEqual(
        [left, end].sort((a, b) => a - b),
      )
      // By hand: how far from its left edge and from its top.
      points.forEach(([x = 0, y = 0], k) => {
        expect(within[k]?.[0]).toBeCloseTo((x - left) / (right - left), 5)
        expect(within[k]?.[1]).toBeCloseTo((40 - y) / 10, 5)
      })
    },
  )
})
