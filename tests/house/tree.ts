import { execFileSync, spawnSync } from 'node:child_process'
import { readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

export const ROOT = fileURLToPath(new URL('../..', import.meta.url))

/** Every file that is committed or would be (so not node_modules, dist or caches), as paths from the root. */
export function treeFiles(): string[] {
  const listed = execFileSync('git', ['ls-files', '-z', '--cached', '--others', '--exclude-standard'], {
    cwd: ROOT,
    encoding: 'utf8',
    maxBuffer: 1 << 26,
  })
  return listed.split('\0').filter((path) => path !== '' && isFile(path))
}

export const textOf = (path: string): string => readFileSync(join(ROOT, path), 'utf8')

/** The project's own Node, bare: no loader, no build, none of this process's options. */
export function bareNode(...args: string[]): { code: number | null; out: string; err: string } {
  const { status, stdout, stderr } = spawnSync(join(ROOT, 'node_modules/.bin/node'), args, {
    cwd: ROOT,
    encoding: 'utf8',
    env: { PATH: process.env.PATH, NODE_COMPILE_CACHE: join(ROOT, '.cache', 'compiled') },
  })
  return { code: status, out: stdout, err: stderr }
}

function isFile(path: string): boolean {
  try {
    return statSync(join(ROOT, path)).isFile()
  } catch {
    return false
  }
}
