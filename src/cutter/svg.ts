/**
 * A sheet as SVG for a cutting machine: mm, a named group for each line type, within it one for each piece with the
 * piece's name as its title (SVG 2, 5.8: it is not drawn), nothing else that is not a line.
 */
import type { CutSheet, Layer, Run } from './lines.ts'
import { titleOf } from './names.ts'

const number = (value: number): string => String(Math.round(value * 1e4) / 1e4 + 0)

/** Dashes of the screen's patterns, mm: for the eye alone, the lines are whole. */
const DASHES: Readonly<Record<Layer, string>> = {
  glue: '0.5 1.5',
  'glue-behind': '0.5 3',
  valley: '3 1.5',
  mountain: '4 1.5 0.75 1.5',
  crease: '0.5 1.5',
  'inner-cut': 'none',
  outline: 'none',
}

/** The lines of each piece together, in the order in which they are cut. */
function byPiece(runs: readonly Run[]): readonly (readonly [Run, ...Run[]])[] {
  const groups: [Run, ...Run[]][] = []
  for (const run of runs) {
    const last = groups.at(-1)
    if (last && last[0].nth === run.nth) last.push(run)
    else groups.push([run])
  }
  return groups
}

/** One sheet as an SVG document, its size and its units in mm. */
export function cutSvg({ width, height, layers }: CutSheet): string {
  const groups = layers.map(({ layer, runs }) => {
    const all = byPiece(runs).map((some) => {
      const paths = some.map(({ points, closed }) => {
        const d = points
          .map(([x, y], k) => `${k === 0 ? 'M' : 'L'}${number(x)} ${number(height - y)}`)
          .join('')
        return `      <path d="${d}${closed ? 'Z' : ''}"/>\n`
      })
      return `    <g>\n      <title>${titleOf(some[0].of)}</title>\n${paths.join('')}    </g>`
    })
    return `  <g id="${layer}" stroke-dasharray="${DASHES[layer]}">\n${all.join('\n')}\n  </g>`
  })
  const [w, h] = [number(width), number(height)]
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${w}mm" height="${h}mm" viewBox="0 0 ${w} ${h}" fill="none" stroke="#000000" stroke-width="0.1">\n${groups.join('\n')}\n</svg>\n`
}
