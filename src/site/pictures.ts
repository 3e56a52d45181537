/** The standing cards as pictures of their own: what the server writes to files that pages show and link. */
import marks from '../drawing/pen/marks.css?raw'
import type { Drawing } from '../drawing/pen/marks.ts'
import { shorter } from '../drawing/pen/shorter.ts'
import { toSvg } from '../drawing/pen/svg.ts'
import type { Size, Stand } from '../drawing/view/camera.ts'
import { view } from '../drawing/view/view.ts'
import type { Design } from '../paper/index.ts'
import { check } from '../paper/index.ts'
import type { CameraChoice } from '../widgets/state/config.ts'
import { DEFAULT_CAMERA } from '../widgets/state/config.ts'
import type { Chapter } from './chapters.ts'
import tokens from './styles/tokens.css?raw'

/** Where the garden is seen from, and the openings between which it swings, degrees. */
export const GARDEN = {
  camera: { turn: -17, tilt: 36, far: 1.4 },
  from: 104,
  to: 134,
  size: { width: 1280, height: 860 },
} as const

const SMALL: Size = { width: 480, height: 300 }

export const gardenPicture = (garden: Design, opening: number, size: Size = GARDEN.size): Drawing =>
  view(garden, opening, GARDEN.camera, size, { frame: [opening] })

/** The middle of the garden, small and dark but for one part: what stands up, and little of the pages. */
export const partPicture = (garden: Design, part: readonly string[]): Drawing => ({
  ...view(garden, 118, GARDEN.camera, { width: 640, height: 360 }, { frame: [118], lit: part }),
  box: PART,
})

const PART: Drawing['box'] = [140, 76, 336, 280]

/** How a card stands in a small picture. */
export interface Standing {
  /** Degrees. */
  readonly opening: number
  readonly camera?: CameraChoice | undefined
  readonly stand?: Stand | undefined
}

/** A card framed as tight as it goes, in small unless said. */
export const smallPicture = (
  design: Design,
  { opening, camera, stand }: Standing,
  size: Size = SMALL,
): Drawing =>
  view(design, opening, { ...(camera ?? DEFAULT_CAMERA), far: 1.7 }, size, {
    frame: [opening],
    stand: stand ?? 'gutter',
  })

/** A chapter's card as it stands on its bench. */
export const chapterPicture = ({ design, data, config }: Chapter, size?: Size): Drawing =>
  smallPicture(design, { opening: data.opening, camera: config.camera, stand: config.stand }, size)

/** A step of a plan: the card as it stands then, what fails on it marked. */
export const stepPicture = (design: Design, opening: number, lit?: readonly string[]): Drawing =>
  view(
    design,
    opening,
    { turn: -20, tilt: 36, far: 1.7 },
    { width: 340, height: 250 },
    {
      frame: [Math.max(0, opening - 8), Math.min(180, opening + 8)],
      faults: check(design, { repairs: false }),
      text: 12,
      ...(lit ? { lit } : {}),
    },
  )

/** Comments and idle space do not travel. */
const squeezed = (css: string): string =>
  css
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .replace(/\s+/g, ' ')
    .trim()

const STYLE = squeezed(`${tokens}${marks}`)

/** Where one part is lit the table is dark, whatever the hour. */
const DARK =
  '.drawing.on-table{--table:#2a3054;--table-far:#14182f;--table-shade:#04050f}.drawing{--by-night:inline}'

/** A picture as a file: it brings its colours, by day and by night. */
export const pictureFile = (drawing: Drawing, dark = false): string =>
  shorter(toSvg(drawing, { digits: 1, css: dark ? STYLE + DARK : STYLE }))

export const picturePath = (name: string): string => `/pictures/${name}.svg`
