import { createServer } from 'node:http'
import { fileURLToPath } from 'node:url'
import sirv from 'sirv'

/** The built site as another host has it, in a folder of its own. */
export interface Elsewhere {
  /** The address of the site, with a slash at its end. */
  readonly home: string
  /** What was asked for beside the site: nothing, if it keeps to its folder. */
  readonly beside: readonly string[]
  readonly stop: () => void
}

const DIST = fileURLToPath(new URL('../../dist', import.meta.url))

/** Serves the site below a path, as `/some/where/`, to this machine alone, and nothing above that. */
export async function servedBelow(path: string): Promise<Elsewhere> {
  const files = sirv(DIST, { etag: true, brotli: true, gzip: true })
  const beside: string[] = []
  const server = createServer((request, response) => {
    const lost = (): void => void response.writeHead(404).end('Not here')
    const url = request.url ?? '/'
    if (url.startsWith(path)) {
      request.url = url.slice(path.length - 1)
      return files(request, response, lost)
    }
    // Browsers look for this one by themselves.
    if (url !== '/favicon.ico') beside.push(url)
    lost()
  })
  const port = await new Promise<number>((resolve) => {
    server.listen(0, '127.0.0.1', () => {
      const address = server.address()
      resolve(typeof address === 'object' && address ? address.port : 0)
    })
  })
  return {
    home: `http://127.0.0.1:${port}${path}`,
    beside,
    stop: () => {
      server.close()
      server.closeAllConnections()
    },
  }
}
