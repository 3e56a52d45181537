import type { Design } from '../../paper/index.ts'

/** How a design file’s name ends. */
export const FILE_ENDING = '.hingebook.json'

/** Each part on a line of its own, so that a fault’s line says which part it is in. */
const lines = (name: string, parts: readonly object[]): string =>
  parts.length === 0
    ? `"${name}": []`
    : `"${name}": [\n${parts.map((part) => `    ${JSON.stringify(part)}`).join(',\n')}\n  ]`

/** A design as the text of its file. Reading it gives the very same design. */
export function fileText({ hingebook, title, card, mechanisms, papers, art }: Design): string {
  const entries = [
    `"hingebook": ${hingebook}`,
    `"title": ${JSON.stringify(title)}`,
    `"card": ${JSON.stringify(card)}`,
    lines('mechanisms', mechanisms),
    ...(papers ? [`"papers": ${JSON.stringify(papers)}`] : []),
    ...(art ? [lines('art', art)] : []),
  ]
  return `{\n${entries.map((entry) => `  ${entry}`).join(',\n')}\n}\n`
}

/** How a file's name begins that holds something of this title: letters and digits of any script, and hyphens. */
export function fileStem(title: string): string {
  const stem = title
    .normalize('NFC')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
  return [...stem].slice(0, 60).join('') || 'dummy'
}

/** The name of a design's own file. */
export const fileName = (title: string): string => `${fileStem(title)}${FILE_ENDING}`
