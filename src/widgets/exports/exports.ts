/** Loaded when a dummy is taken elsewhere: pictures, motion, a model in space. What only one of them needs comes with it. */
import * as says from '../../../content/words/exports/files.ts'
import marks from '../../drawing/pen/marks.css?raw'
import type { Size } from '../../drawing/view/camera.ts'
import { openingSteps, thereAndBack } from '../../export/motion.ts'
import type { Shot } from '../../export/picture.ts'
import { pictureSvg } from '../../export/picture.ts'
import type { Design, Poser } from '../../paper/index.ts'
import { compile } from '../../paper/index.ts'
import type { PaperName } from '../../sheet/index.ts'
import type { CameraChoice } from '../state/config.ts'
import { save } from '../template/save.ts'
import { bytesOf, painted } from './raster.ts'

/** What is taken elsewhere, and how it is looked at. */
export interface Taken {
  readonly design: Design
  /** Degrees. */
  readonly opening: number
  readonly camera: CameraChoice
  /** The file's name without its ending. */
  readonly stem: string
}

/** Told as the work goes on. */
type Tell = (sentence: string) => void

const PICTURE: Size = { width: 1200, height: 800 }

const MOVING = { size: { width: 480, height: 320 }, steps: 24, wait: 60 } as const

/** Three pixels for a unit are about 250 to the inch on a leaf. */
const LEAF = { size: { width: 264, height: 176 }, times: 2.5 } as const

/** The eye comes nearer than on the table, as the small pictures have it. */
const FAR = 1.7

const shot = ({ opening, camera }: Taken, size: Size): Shot => ({
  opening,
  camera: { far: FAR, ...camera },
  size,
})

export async function saveSvg(taken: Taken): Promise<string> {
  const { plainSvg } = await import('./plain.ts')
  const svg = await plainSvg(pictureSvg(compile(taken.design), shot(taken, PICTURE), marks))
  const name = `${taken.stem}.svg`
  save([svg], 'image/svg+xml', name)
  return says.saved(name)
}

export async function savePng(taken: Taken): Promise<string> {
  const svg = pictureSvg(compile(taken.design), shot(taken, PICTURE), marks)
  const name = `${taken.stem}.png`
  save([await bytesOf(await painted(svg, PICTURE, 2), 'image/png')], 'image/png', name)
  return says.savedPixels(name, 2 * PICTURE.width, 2 * PICTURE.height)
}

interface Reel {
  readonly openings: readonly number[]
  readonly size: Size
  readonly times: number
  readonly ground: 'table' | 'white'
}

/** The whole motion, painted picture by picture. Between two of them the page may breathe. */
async function reel(
  taken: Taken,
  { openings, size, times, ground }: Reel,
  tell: Tell,
): Promise<readonly HTMLCanvasElement[]> {
  const poser: Poser = compile(taken.design)
  const frame = [openings[0] ?? 0, openings[openings.length >> 1] ?? 90, openings.at(-1) ?? 180]
  const pictures: HTMLCanvasElement[] = []
  for (const [k, opening] of openings.entries()) {
    tell(says.drawingPicture(k + 1, openings.length))
    await new Promise((resolve) => setTimeout(resolve))
    const svg = pictureSvg(poser, { ...shot({ ...taken, opening }, size), frame, ground }, marks)
    pictures.push(await painted(svg, size, times))
  }
  return pictures
}

export async function saveGif(taken: Taken, tell: Tell): Promise<string> {
  const { size, steps, wait } = MOVING
  const openings = openingSteps(taken.design, steps)
  const pictures = await reel(taken, { openings, size, times: 1, ground: 'table' }, tell)
  const { gifBytes } = await import('../../export/gif.ts')
  const { width, height } = size
  const pixels = pictures.map(
    (canvas) => canvas.getContext('2d')?.getImageData(0, 0, width, height).data ?? new Uint8ClampedArray(),
  )
  tell(says.puttingTogether)
  const bytes = await gifBytes(thereAndBack(pixels), { width, height, wait })
  const name = `${taken.stem}.gif`
  save([bytes], 'image/gif', name)
  return says.savedMoving(name)
}

export async function saveFlipBook(taken: Taken, paper: PaperName, tell: Tell): Promise<string> {
  const [{ flipBookPdf, LEAVES }, { sheetFont }] = await Promise.all([
    import('../../export/flip-book.ts'),
    import('../template/template.ts'),
  ])
  const openings = openingSteps(taken.design, LEAVES)
  const pictures = await reel(taken, { openings, ...LEAF, ground: 'white' }, tell)
  const files = await Promise.all(pictures.map((canvas) => bytesOf(canvas, 'image/jpeg')))
  const bytes = await flipBookPdf(files, taken.design.title, paper, await sheetFont())
  const name = `${taken.stem}-flip-book-${paper}.pdf`
  save([bytes as BlobPart], 'application/pdf', name)
  return says.savedFlipBook(name, LEAVES)
}

export async function saveGlb({ design, stem }: Taken): Promise<string> {
  const { designGlb } = await import('../../export/gltf.ts')
  const name = `${stem}.glb`
  save([designGlb(design)], 'model/gltf-binary', name)
  return says.savedModel(name)
}
