/** The standing cards as pictures of their own: what the server writes to files that pages show and link. */
import marks from '../drawing/pen/marks.css?raw'
import type { Drawing } from '../drawing/pen/marks.ts'
import { toSvg } from '../drawing/pen/svg.ts'
import type { Size } from '../drawing/view/camera.ts'
import { view } from '../drawing/view/view.ts'
import type { Design } from '../paper/index.ts'
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

export const gardenPicture = (garden: Design, opening: number): Drawing =>
  view(garden, opening, GARDEN.camera, GARDEN.size, { frame: [opening] })

/** The middle of the garden, small and dark but for one part: what stands up, and little of the pages. */
export const partPicture = (garden: Design, part: readonly string[]): Drawing => ({
  ...view(garden, 118, GARDEN.camera, { width: 640, height: 360 }, { frame: [118], lit: part }),
  box: PART,
})

const PART: Drawing['box'] = [140, 76, 336, 280]

/** A chapter's card as it stands on its bench, framed as tight as it goes. */
export function chapterPicture({ design, data, config }: Chapter): Drawing {
  const opening = data.opening
  return view(design, opening, { ...(config.camera ?? DEFAULT_CAMERA), far: 1.7 }, SMALL, {
    frame: [opening],
    stand: config.stand ?? 'gutter',
  })
}

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
  toSvg(drawing, { digits: 1, css: dark ? STYLE + DARK : STYLE })

export const picturePath = (name: string): string => `/pictures/${name}.svg`
