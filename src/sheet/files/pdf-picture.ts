/**
 * A drawing of the screen as a form of a PDF (ISO 32000-1:2008, 8.10): vector shapes in colour, their opacity, clips
 * and fades. Written once, however many pages show it.
 */
import type { PDFDict, PDFDocument, PDFImage, PDFRef } from '@cantoo/pdf-lib'

import type { Drawing, Fade, InkShape, Matrix, Point } from '../../drawing/pen/marks.ts'
import type { Line, Printed } from '../../drawing/pen/printed.ts'
import { HOLLOW, printed } from '../../drawing/pen/printed.ts'
import { cut, FADE_STOPS, pictureMatrix } from '../../drawing/pen/svg-values.ts'

/** A hundredth of a pixel: on paper a few micrometres. */
const at = (n: number): string => cut(n, 2)

const points = (list: readonly Point[]): string => list.map(([x, y]) => `${at(x)} ${at(y)}`).join(' ')

/** Runs as the path operators of 8.5.2. */
function outline({ runs, bends, closed }: Pick<InkShape, 'runs' | 'bends' | 'closed'>): string {
  const end = closed ? ' h' : ''
  return runs
    .flatMap((run) => {
      const [start, ...rest] = run
      if (!start) return []
      const steps = bends
        ? rest.flatMap((_, k) => (k % 3 === 0 ? [`${points(rest.slice(k, k + 3))} c`] : []))
        : rest.map((p) => `${points([p])} l`)
      return [`${[`${points([start])} m`, ...steps].join('\n')}${end}`]
    })
    .join('\n')
}

const framed = (matrix: Matrix): string => `${matrix.map((n) => cut(n, 4)).join(' ')} cm`

/** Grey as grey: a printer then leaves its coloured inks alone. */
function colour(hex: string, [grey, rgb]: readonly [string, string]): string {
  const value = Number.parseInt(hex.slice(1), 16)
  const [r, g, b] = [value >> 16, (value >> 8) & 255, value & 255].map((n) => cut(n / 255, 3))
  return r === g && g === b ? `${r} ${grey}` : `${r} ${g} ${b} ${rgb}`
}

const filled = (hex: string): string => colour(hex, ['g', 'rg'])

const lined = ({ colour: hex, width, dash, cap }: Line): string =>
  `${colour(hex, ['G', 'RG'])} ${at(width)} w ${cap === 'round' ? 1 : 0} J [${dash.join(' ')}] 0 d`

type MaskName = 'Band' | 'Round'

/** What each mask covers of its own frame; a corner is a quarter of the round. */
const MASKS = {
  Band: { type: 2, coords: [0, 0, 1, 0], box: [0, 0, 1, 1] },
  Round: { type: 3, coords: [0, 0, 0, 0, 0, 1], box: [-1, 0, 1, 1] },
} as const satisfies Readonly<Record<MaskName, unknown>>

const FADES: Readonly<Record<Fade['kind'], { readonly mask: MaskName; readonly box: string } | null>> = {
  band: { mask: 'Band', box: '0 0 1 1 re' },
  corner: { mask: 'Round', box: '0 0 1 1 re' },
  round: { mask: 'Round', box: '-1 0 2 1 re' },
  // The light of a flame: by night alone.
  glow: null,
}

/** What the pictures of one PDF share: opacities, and the masks by which fades thin out. */
export interface PictureInks {
  alpha(value: number): { readonly name: string; readonly ref: PDFRef }
  mask(name: MaskName): { readonly name: string; readonly ref: PDFRef }
}

export function pictureInks(pdf: PDFDocument): PictureInks {
  const { context } = pdf
  const known = new Map<string, PDFRef>()
  const kept = (name: string, make: () => PDFDict) => {
    const ref = known.get(name) ?? context.register(make())
    known.set(name, ref)
    return { name, ref }
  }
  return {
    alpha(value) {
      const share = Math.round(100 * Math.min(1, Math.max(0, value)))
      return kept(`A${share}`, () => context.obj({ Type: 'ExtGState', ca: share / 100, CA: share / 100 }))
    },
    mask: (name) =>
      kept(name, () => {
        const { type, coords, box } = MASKS[name]
        const falls = FADE_STOPS.slice(1).map(([, left], k) =>
          context.obj({
            ...{ FunctionType: 2, Domain: [0, 1], N: 1 },
            ...{ C0: [FADE_STOPS[k]?.[1] ?? 0], C1: [left] },
          }),
        )
        const inner = FADE_STOPS.slice(1, -1).map(([from]) => from)
        const fall = context.obj({
          ...{ FunctionType: 3, Domain: [0, 1], Functions: falls, Bounds: inner },
          Encode: falls.flatMap(() => [0, 1]),
        })
        const shading = context.obj({
          ...{ ShadingType: type, ColorSpace: 'DeviceGray', Coords: [...coords], Function: fall },
        })
        const form = context.flateStream('/S sh', {
          ...{ Type: 'XObject', Subtype: 'Form', BBox: [...box] },
          Group: context.obj({ S: 'Transparency', CS: 'DeviceGray' }),
          Resources: context.obj({ Shading: { S: shading } }),
        })
        return context.obj({
          Type: 'ExtGState',
          SMask: context.obj({ S: 'Luminosity', G: context.register(form) }),
        })
      }),
  }
}

/**
 * Writes the drawing, without its words, as a form in the drawing's own coordinates, y downwards.
 * @param images those that are drawn on paper, by their addresses
 */
export function pictureForm(
  pdf: PDFDocument,
  drawing: Drawing,
  inks: PictureInks,
  images: ReadonlyMap<string, PDFImage>,
): PDFRef {
  const states = new Map<string, PDFRef>()
  const named = new Map<string, PDFRef>()
  const use = ({ name, ref }: { readonly name: string; readonly ref: PDFRef }): string => {
    states.set(name, ref)
    return `/${name} gs`
  }
  const written = (one: Printed): string => {
    switch (one.what) {
      case 'clip':
        return `q ${outline({ runs: one.runs, bends: false, closed: true })} W n\n${one.inner.map(written).join('\n')}\nQ`
      case 'fade': {
        const fade = FADES[one.fade.kind]
        if (!fade) return ''
        return `q ${framed(one.fade.matrix)} ${use(inks.mask(fade.mask))} ${use(inks.alpha(one.alpha))} ${filled(HOLLOW)} ${fade.box} f Q`
      }
      case 'picture': {
        const image = images.get(one.shape.picture ?? '')
        if (!image) return ''
        const name = [...named].find(([, ref]) => ref === image.ref)?.[0] ?? `P${named.size}`
        named.set(name, image.ref)
        // The lower left corner of an image is at the origin (8.9.5).
        const [a, b, c, d, e, f] = pictureMatrix(one.shape.runs[0] ?? [])
        const own = one.matrix ? `${framed(one.matrix)} ` : ''
        return `q ${own}${framed([a, b, -c, -d, e + c, f + d])} /${name} Do Q`
      }
      case 'shape': {
        const { fill, line, matrix } = one
        if (fill === null && line === null) return ''
        const alpha = fill?.alpha ?? line?.alpha ?? 1
        return [
          'q',
          ...(matrix ? [framed(matrix)] : []),
          ...(alpha < 1 ? [use(inks.alpha(alpha))] : []),
          ...(fill ? [filled(fill.colour)] : []),
          ...(line ? [lined(line)] : []),
          outline(one.shape),
          fill && line ? 'B' : fill ? 'f' : 'S',
          'Q',
        ].join(' ')
      }
    }
  }
  const content = printed(drawing).map(written).filter(Boolean).join('\n')
  const [x, y, width, height] = drawing.box
  const { context } = pdf
  return context.register(
    context.flateStream(`1 j\n${content}`, {
      ...{ Type: 'XObject', Subtype: 'Form', BBox: [x, y, x + width, y + height] },
      Group: context.obj({ S: 'Transparency', CS: 'DeviceRGB' }),
      Resources: context.obj({
        ...{ ExtGState: Object.fromEntries(states), XObject: Object.fromEntries(named) },
      }),
    }),
  )
}

/** The addresses of what is drawn on the paper of a drawing. */
export const imagesIn = (drawing: Drawing): string[] => {
  const found = (list: readonly Printed[]): string[] =>
    list.flatMap((one) =>
      one.what === 'clip' ? found(one.inner) : one.what === 'picture' ? [one.shape.picture ?? ''] : [],
    )
  return found(printed(drawing))
}
