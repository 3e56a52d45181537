import { dirname, join, normalize } from 'node:path/posix'
import ts from 'typescript'

/** What each layer may import of ours, besides itself. Imports run one way. */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  // What is said. It takes values and gives sentences, and knows nothing of code.
  'content/words': [],
  'src/pages': ['content', 'src/site', 'src/widgets', 'src/class', 'src/drawing', 'src/sheet', 'src/paper'],
  content: ['src/site', 'src/widgets', 'src/drawing', 'src/sheet', 'src/paper'],
  'src/site': ['content', 'src/widgets', 'src/class', 'src/drawing', 'src/sheet', 'src/making', 'src/paper'],
  'src/widgets': [
    'src/class',
    'src/booklet',
    'src/export',
    'src/cutter',
    'src/drawing',
    'src/sheet',
    'src/file',
    'src/paper',
  ],
  'src/class': ['src/booklet', 'src/sheet', 'src/drawing', 'src/paper'],
  'src/export': ['src/sheet', 'src/drawing', 'src/paper'],
  'src/sheet': ['src/drawing', 'src/making', 'src/paper'],
  'src/cutter': ['src/making', 'src/paper'],
  'src/booklet': ['src/sheet', 'src/drawing', 'src/making', 'src/paper'],
  'src/drawing': ['src/making', 'src/paper'],
  'src/making': ['src/paper'],
  'src/command': [
    'src/site',
    'src/class',
    'src/booklet',
    'src/cutter',
    'src/sheet',
    'src/drawing',
    'src/file',
    'src/paper',
  ],
  'src/file': [],
  'src/house': [],
  'src/paper': [],
}

/** The rooms of a layer from the ground up: each may use those before it. Files beside the rooms may use all. */
const ROOMS: Readonly<Record<string, readonly string[]>> = {
  'src/paper': [
    'words',
    'plane',
    'mechanisms',
    'design',
    'model',
    'motion',
    'measure',
    'checks',
    'answers',
    'stuck',
  ],
  'src/drawing': ['pen', 'art', 'view', 'section', 'pattern', 'chart', 'page-point', 'steps'],
  'src/sheet': ['marks', 'pages', 'files'],
  'src/widgets': [
    'state',
    'link',
    'model',
    'wall',
    'template',
    'keeping',
    'exports',
    'fields',
    'figures',
    'guess',
    'phrase',
    'aim',
    'measure',
    'challenge',
    'bench',
    'pieces',
    'booklet',
    'search',
    'fault',
    'class',
    'dummy',
  ],
}

/** The layer's rooms, and in which of them a path lies: -1 beside them. */
function roomOf(path: string): { rooms: readonly string[]; room: number } {
  const layer = layerOf(path) ?? ''
  const rooms = ROOMS[layer] ?? []
  return { rooms, room: rooms.indexOf(path.slice(layer.length + 1).split('/')[0] ?? '') }
}

/** Every layer says what stands here, but the kernel, which imports nothing but itself and keeps its own words. */
const WORDS = 'content/words'

export interface Wrong {
  readonly file: string
  readonly imports: string
  readonly why: string
}

/**
 * The imports of one file that run the wrong way.
 * @param file path from the root
 */
export function wrongImports(file: string, text: string): Wrong[] {
  const from = layerOf(file)
  const allowed = from === undefined ? undefined : MAY_IMPORT[from]
  if (from === undefined || allowed === undefined) return []
  return importsOf(file, text).flatMap((imports): Wrong[] => {
    if (!imports.startsWith('.')) {
      return from === 'src/paper' ? [{ file, imports, why: 'src/paper imports nothing but itself' }] : []
    }
    const path = normalize(join(dirname(file), imports))
    const to = layerOf(path)
    if (to === WORDS && from !== 'src/paper' && from !== 'src/house') return []
    if (to === from) {
      const { rooms, room } = roomOf(file)
      const other = roomOf(path).room
      if (room < 0 || (other >= 0 && other <= room)) return []
      return [
        {
          file,
          imports,
          why: `${rooms[room]} must not import ${rooms[other] ?? 'what lies beside the rooms'}`,
        },
      ]
    }
    if (to === undefined || allowed.includes(to)) return []
    return [{ file, imports, why: `${from} must not import ${to}` }]
  })
}

/** The layer that a path belongs to; undefined for files outside all layers (configuration, tests). */
export function layerOf(path: string): string | undefined {
  return Object.keys(MAY_IMPORT).find((layer) => path.startsWith(`${layer}/`))
}

/** Every module a file names: imports, re-exports, dynamic imports, type imports. */
export function importsOf(file: string, text: string): string[] {
  if (/\.[mc]?[jt]sx?$/.test(file)) {
    return ts.preProcessFile(text, true, true).importedFiles.map((one) => one.fileName)
  }
  // Astro and MDX: imports stand on lines of their own, or span several in braces.
  const statement = /^\s*(?:import|export)\b[^'"`;]*?(?:from\s*)?['"]([^'"]+)['"]/gm
  const dynamic = /\bimport\(\s*['"]([^'"]+)['"]\s*\)/g
  return [statement, dynamic].flatMap((pattern) => [...text.matchAll(pattern)].map((match) => match[1] ?? ''))
}

/** Words that would tie the kernel to a screen, a clock, chance or one machine. */
const FOREIGN = new Set(
  (
    'Date performance crypto document window navigator location globalThis self process Buffer fetch ' +
    'setTimeout setInterval requestAnimationFrame queueMicrotask localStorage console require'
  ).split(' '),
)

/** The foreign names that a kernel file uses, as `name (line)`. */
export function foreignNames(file: string, text: string): string[] {
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.ESNext, true)
  const found: string[] = []
  const visit = (node: ts.Node): void => {
    const name = foreignName(node)
    if (name !== undefined) {
      found.push(`${name} (line ${source.getLineAndCharacterOfPosition(node.getStart()).line + 1})`)
    }
    ts.forEachChild(node, visit)
  }
  visit(source)
  return found
}

function foreignName(node: ts.Node): string | undefined {
  if (ts.isPropertyAccessExpression(node) && node.getText() === 'Math.random') return 'Math.random'
  if (!ts.isIdentifier(node) || !FOREIGN.has(node.text)) return undefined
  // `move.location` is somebody's own property; `location.href` is not.
  const own = ts.isPropertyAccessExpression(node.parent) && node.parent.name === node
  return own ? undefined : node.text
}
