// Every picture by its file's name: what the tests compare and what a reader of the code can look at.
import { readdirSync } from 'node:fs'
import type { Drawing } from '../../src/drawing/pen/marks.ts'

const folder = new URL('pictures/', import.meta.url)

export interface Picture {
  readonly name: string
  readonly draw: () => Drawing
}

/** Each file of `pictures/` exports one function that draws it. */
export async function gallery(): Promise<readonly Picture[]> {
  const files = readdirSync(folder).filter((file) => file.endsWith('.ts'))
  return Promise.all(
    files.sort().map(async (file): Promise<Picture> => {
      const name = file.replace('.ts', '')
      // Named like this it is loaded as all else here is, and not past the tests' own loader.
      const [draw, ...more] = Object.values(
        (await import(`./pictures/${name}.ts`)) as Record<string, () => Drawing>,
      )
      if (!draw || more.length > 0)
        throw new Error(`pictures/${file} must export one function, and that only`)
      return { name, draw }
    }),
  )
}
