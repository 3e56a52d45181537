// The shelf as a picture: compared with the SVG that somebody looked at and kept, word for word.
// After a change that is meant: look at the `-changed` twin, then give it the old one's name.
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { PAPERS } from '../../../src/drawing/pen/papers.ts'
import type { Flat } from '../../../src/paper/index.ts'
import type { Drawn, Shape } from '../../../src/widgets/pieces/shelf.ts'
import { outlineOf, SHELF } from '../../../src/widgets/pieces/shelf.ts'

const output = new URL('output/', import.meta.url)

const data = (points: readonly Flat[], open: boolean): string =>
  `${points.map(([x, y], k) => `${k === 0 ? 'M' : 'L'}${x.toFixed(2)} ${(-y).toFixed(2)}`).join('')}${open ? '' : 'Z'}`

const drawn = ({ shape, fill, line, curve, open = false, glows }: Drawn): string =>
  `<path data-curve="${curve ?? false}" data-glows="${glows ?? false}" fill="${fill ? PAPERS[fill] : 'none'}" stroke="${line ? PAPERS[line] : 'none'}" d="${data(shape, open)}"/>`

const piece = (shape: Shape, k: number): string =>
  `<g id="${shape.word}" transform="translate(${130 * (k % 4)} ${130 * Math.floor(k / 4)})">
<title>${shape.label}</title>
<path fill="${PAPERS[shape.paper]}" stroke="#000000" d="${data(outlineOf(shape), false)}"/>
${shape.drawn.map(drawn).join('\n')}
</g>`

test('the shelf looks as it did when it was last looked at', () => {
  const now = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="-65 -65 520 390" role="img" aria-label="The shelf">\n${SHELF.map(piece).join('\n')}\n</svg>\n`
  const kept = new URL('shelf.svg', output)
  const changed = new URL('shelf-changed.svg', output)
  const same = existsSync(kept) && readFileSync(kept, 'utf8') === now
  if (same) rmSync(changed, { force: true })
  else writeFileSync(changed, now)
  expect(same, 'output/shelf-changed.svg is new: look at it, then keep it or mend the shelf').toBe(true)
})
