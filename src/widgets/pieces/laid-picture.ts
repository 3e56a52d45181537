/** The picture on a face of a design, as a reader sees the face upright. One for each face. */
import type { Art, Design, Flat } from '../../paper/index.ts'
import { placedOn, seenUpright, uprightOn } from '../../paper/index.ts'
import type { Edit } from '../keeping/edits.ts'
import { setArt } from '../keeping/edits.ts'

export interface LaidPicture {
  readonly href: string
  /** Height by width. */
  readonly ratio: number
  /** mm. */
  readonly width: number
  /** Its middle: to the right and up, mm. */
  readonly at: readonly [right: number, up: number]
  /** It lies there to be drawn after, and is not printed. */
  readonly trace: boolean
}

const isOn = (panel: string, one: Art): boolean =>
  one.picture !== undefined && one.on === panel && one.face === 'front'

/** As fine as a width of 1 mm needs for its height to stay right. */
const fine = (x: number): number => Math.round(x * 1e4) / 1e4 + 0

const far = (a: Flat, b: Flat): number => Math.hypot(a[0] - b[0], a[1] - b[1])

/** The picture on the front of a face; null where there is none. */
export function pictureOn(design: Design, panel: string): LaidPicture | null {
  const found = design.art?.find((one) => isOn(panel, one))
  const [a, b, c] = (found?.shape ?? []) as readonly Flat[]
  if (!found?.picture || !a || !b || !c) return null
  const upright = uprightOn(design, panel)
  const [low, high] = [seenUpright(upright, a), seenUpright(upright, c)]
  const width = far(a, b)
  return {
    href: found.picture,
    ratio: width > 0 ? far(b, c) / width : 1,
    width,
    at: [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2],
    trace: found.trace === true,
  }
}

/** The corners of a picture in the flat coordinates of its face: lower left, lower right, upper right, upper left. */
function cornersOf(design: Design, panel: string, { at, width, ratio }: LaidPicture): readonly Flat[] {
  const place = placedOn(uprightOn(design, panel), [0, 0])
  const [x, y] = [width / 2, (width * ratio) / 2]
  const corner = (right: number, up: number): Flat => {
    const [across, along] = place([at[0] + right, at[1] + up])
    return [fine(across), fine(along)]
  }
  return [corner(-x, -y), corner(x, -y), corner(x, y), corner(-x, y)]
}

/** Lays a picture on a face in the place of the one that is there, or takes that away. What is drawn lies over it. */
export function layPicture(design: Design, panel: string, picture: LaidPicture | null): Edit {
  const rest = (design.art ?? []).filter((one) => !isOn(panel, one))
  if (!picture) return setArt(design, rest)
  const one: Art = {
    on: panel,
    also: [],
    face: 'front',
    shape: cornersOf(design, panel, picture),
    closed: true,
    curve: false,
    fill: null,
    line: false,
    lineColour: 'ink',
    lineWidth: 0.6,
    glows: false,
    picture: picture.href,
    ...(picture.trace ? { trace: true } : {}),
  }
  return setArt(design, [one, ...rest])
}
