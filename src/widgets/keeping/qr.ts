/** A link as a QR code (ISO/IEC 18004), for a phone that is held before the screen or the sheet. Loaded on demand. */
import { encode } from 'uqr'
import { fitsQr } from './link.ts'

/** Clear modules round the code: four, as the standard asks. */
const QUIET = 4

/** One code as SVG text, dark on light in any theme, or null where the link is too long for one. */
export function qrSvg(link: string, label: string): string | null {
  if (!fitsQr(link)) return null
  const { data, size } = encode(link, { ecc: 'L', border: 0 })
  const full = size + 2 * QUIET
  // One stretch for each run of dark modules in a row.
  const path = data
    .flatMap((row, y) => {
      const runs: string[] = []
      for (let x = 0; x < row.length; x++) {
        if (!row[x]) continue
        const from = x
        while (row[x + 1]) x++
        runs.push(`M${from + QUIET} ${y + QUIET}h${x + 1 - from}v1h${from - x - 1}z`)
      }
      return runs
    })
    .join('')
  const name = label.replace(/[<>&"]/g, (one) => `&#${one.charCodeAt(0)};`)
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${full} ${full}" role="img" aria-label="${name}" shape-rendering="crispEdges"><rect width="${full}" height="${full}" fill="#fff"/><path d="${path}" fill="#000"/></svg>`
}
