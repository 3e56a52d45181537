import { imageNode } from '../../drawing/pen/nodes.ts'
import { markSvg, toSvg, written } from '../../drawing/pen/svg.ts'
import { cut, pathData, shapeData, shapeStyle } from '../../drawing/pen/svg-values.ts'
import { corners } from '../marks/clip.ts'
import { dashesOf, inks, lookOf, looks } from '../marks/looks.ts'
import type { Painting } from '../marks/painting.ts'
import { FOLD_SEAM, SEAM } from '../marks/painting.ts'
import type { SheetMark } from '../marks/setting.ts'
import type { SheetPage } from '../pages/layout.ts'
import type { SheetFont } from './font.ts'
import { pictureSvg } from './svg-picture.ts'

/** A tenth of a micrometre, far below what a printer or cutter can do. */
const DIGITS = 4

const TYPEFACE = 'Atkinson Hyperlegible Next'

const base64 = (bytes: Uint8Array): string => {
  let text = ''
  for (const byte of bytes) text += String.fromCharCode(byte)
  return btoa(text)
}

const face = (weight: number, files: readonly Uint8Array[]): string =>
  files
    .map(
      (file, k) =>
        `@font-face { font-family: '${TYPEFACE} ${k}'; font-weight: ${weight}; ` +
        `src: url(data:font/woff;base64,${base64(file)}) format('woff'); }`,
    )
    .join('\n')

/** The look of a sheet as a style sheet: lengths are the user units of the page, which are millimetres. */
function paperCss(font: SheetFont | undefined): string {
  const lines = Object.entries(looks).map(
    ([role, { colour, width, dash, ...more }]) =>
      `path.m-${role} { stroke: ${colour}; stroke-width: ${width}; stroke-dasharray: ${dash.join(' ') || 'none'};` +
      `${'round' in more ? ' stroke-linecap: round;' : ''} }`,
  )
  const words = Object.entries(inks).map(([role, colour]) => `text.m-${role} { fill: ${colour}; }`)
  const carried = (font?.regular ?? []).map((_, k) => `'${TYPEFACE} ${k}', `).join('')
  return [
    font ? `${face(400, font.regular)}\n${face(700, font.bold)}` : '',
    'path { fill: none; stroke-linejoin: round; }',
    '.painted path { stroke-linecap: round; }',
    `text { font-family: ${carried}'${TYPEFACE}', Arial, sans-serif; font-kerning: none; font-variant-ligatures: none; }`,
    'text.bold { font-weight: 700; }',
    ...lines,
    ...words,
  ].join('\n')
}

/** A mark as the screen's pen draws it, with the dashes of this very line. `name` begins the ids in a picture. */
function inked(mark: SheetMark, name: string): string {
  if (mark.mark === 'path' && mark.picture) return pictureSvg(mark, mark.picture, name)
  const drawn = markSvg(mark, DIGITS)
  if (mark.mark === 'word' || lookOf(mark.role).dash.length === 0) return drawn
  const { dash, phase } = dashesOf(mark)
  const dashes = dash.map((mm) => cut(mm, DIGITS)).join(' ')
  const begun = phase > 0 ? `;stroke-dashoffset:${cut(phase, DIGITS)}` : ''
  return drawn.replace('<path ', `<path style="stroke-dasharray:${dashes}${begun}" `)
}

/** What is painted is never measured: a hundredth of a millimetre will do. */
const PAINTED = 2

/** The pieces in colour, each panel within its outline, and the paper that stays white. */
function painted({ panels, seams, areas, bands }: Painting): string[] {
  const white = (d: string, style: string): string => `<path class="bare" style="${style}" d="${d}"/>`
  return [
    ...panels.map(({ outline, paper, shapes }, k) => {
      const d = pathData([outline], true, PAINTED)
      const ground =
        paper === null ? '' : `<path style="fill:${paper};stroke:${paper};stroke-width:${SEAM}px" d="${d}"/>`
      const drawn = shapes.map((shape) =>
        shape.picture === undefined
          ? `<path style="${shapeStyle(shape)}" d="${shapeData(shape, PAINTED)}"/>`
          : written(imageNode(shape)),
      )
      if (drawn.length === 0) return ground
      return `${ground}<clipPath id="panel-${k}"><path d="${d}"/></clipPath><g class="painted" clip-path="url(#panel-${k})">${drawn.join('')}</g>`
    }),
    ...seams.map(
      ({ colour, runs }) =>
        `<path style="stroke:${colour};stroke-width:${FOLD_SEAM}px" d="${pathData(runs, false, PAINTED)}"/>`,
    ),
    ...(areas.length > 0 ? [white(pathData(areas, true, PAINTED), 'fill:#ffffff')] : []),
    ...bands.map(({ runs, closed, width }) =>
      white(pathData(runs, closed, PAINTED), `stroke:#ffffff;stroke-width:${cut(width, DIGITS)}px`),
    ),
  ]
}

const drawn = ({ marks, painting }: Pick<SheetPage, 'marks' | 'painting'>): string[] => [
  ...(painting ? painted(painting) : []),
  ...marks.map((mark, k) => inked(mark, `picture-${k}`)),
]

/** A part of a piece that is larger than the paper, clipped. */
const partOf = ({ part }: SheetPage): string[] =>
  part
    ? [
        `<clipPath id="part"><path d="${pathData([corners(part.clip)], true, DIGITS)}"/></clipPath><g clip-path="url(#part)">`,
        ...drawn(part),
        '</g>',
      ]
    : []

/**
 * One page as an SVG document, its size and its units in mm. With a font it carries the letters inside;
 * without one it asks for the typeface by name.
 */
export const pageSvg = (page: SheetPage, font?: SheetFont): string =>
  toSvg(
    { ...page, marks: [] },
    { digits: DIGITS, css: paperCss(font), stretch: page.paper.stretch ?? 1 },
  ).replace(/\n\n<\/svg>\n$/, () => `\n${[...partOf(page), ...drawn(page)].join('\n')}\n</svg>\n`)
