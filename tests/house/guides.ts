import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { ROOT, textOf, treeFiles } from './tree.ts'

/** What a guide may name: the tree it is checked against. */
export interface Tree {
  has(path: string): boolean
  readonly scripts: ReadonlySet<string>
  /** All text of the project except its guides: symbols and words are looked up here. */
  readonly text: string
}

/**
 * The names in backticks, and the commands in code blocks, that are nowhere in the tree: each as `line: name`.
 * A file or folder must be there, a command's npm script too, and any other name must be a word of the sources.
 */
export function lostNames(guide: string, tree: Tree): string[] {
  const lost: string[] = []
  let inBlock = false
  guide.split('\n').forEach((line, k) => {
    if (line.startsWith('```')) {
      inBlock = !inBlock
      return
    }
    const names = inBlock
      ? [line.trim()].filter((text) => text.startsWith('npm '))
      : [...line.matchAll(/`([^`]+)`/g)].map((match) => match[1] ?? '')
    for (const name of names) if (!known(name, tree)) lost.push(`${k + 1}: ${name}`)
  })
  return lost
}

function known(name: string, tree: Tree): boolean {
  if (name.startsWith('npm ')) return knownCommand(name, tree)
  if (name.startsWith('.') && !name.slice(1).includes('/')) return tree.has(name) || tree.text.includes(name)
  if (/^[\w.-]+\/|\.(ts|tsx|mjs|json|md|mdx|astro|css)$/.test(name)) return tree.has(name)
  const word = name.replace(/\(.*\)$/, '')
  const edge = '[^A-Za-z0-9_$-]'
  return new RegExp(`(^|${edge})${word.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}($|${edge})`, 'm').test(
    tree.text,
  )
}

/** npm's own words need no script; whatever a command names as a path must be there. */
function knownCommand(command: string, tree: Tree): boolean {
  const words = command
    .replace(/\s#.*$/, '')
    .split(/\s+/)
    .slice(1)
  const verb = words[0] ?? ''
  const script = verb === 'run' ? words.slice(1).find((word) => !word.startsWith('-')) : verb
  if (script === undefined) return false
  const paths = words.filter((word) => /^(src|content|tests|public)\//.test(word))
  const npmOwn = ['install', 'ci'].includes(verb)
  return (npmOwn || tree.scripts.has(script)) && paths.every((path) => tree.has(path))
}

/** This project, as its guides see it. */
export function projectTree(): Tree {
  const manifest = JSON.parse(textOf('package.json')) as { scripts: Record<string, string> }
  const sources = treeFiles().filter(
    (file) => /^(src|content|tests)\/.+\.(m?tsx?|mjs|astro|mdx|css|json)$/.test(file) || !file.includes('/'),
  )
  return {
    has: (path) => existsSync(join(ROOT, path)),
    scripts: new Set(Object.keys(manifest.scripts)),
    text: sources
      // The guides cannot vouch for themselves, nor can the tests of this folder, which quote wrong names.
      .filter(
        (file) => !file.endsWith('.md') && !file.startsWith('tests/house/') && file !== 'package-lock.json',
      )
      .map(textOf)
      .join('\n'),
  }
}
