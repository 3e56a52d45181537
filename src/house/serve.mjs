// Serves the built site to this machine alone. Run by hand: node src/house/serve.mjs 4400

import { readFileSync } from 'node:fs'
import { createServer } from 'node:http'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { ROOT } from './steps.mjs'

const FOR_GOOD = 'public, max-age=31536000, immutable'

/** `localhost` means either of these, depending on the machine and the program that asks. */
const HOSTS = ['127.0.0.1', '::1']

/**
 * @param {number} port
 * @param {string} [folder] what to serve
 * @returns {Promise<() => void>} stops it again; rejects with code EADDRINUSE when the port is taken
 */
export async function serve(port, folder = join(ROOT, 'dist')) {
  const { default: sirv } = await import('sirv')
  const files = sirv(folder, {
    etag: true,
    brotli: true,
    gzip: true,
    // What the bundler names after its content never changes under that name; all else is asked for anew.
    setHeaders: (response, path) => {
      response.setHeader('Cache-Control', path.startsWith('/_astro/') ? FOR_GOOD : 'no-cache')
    },
  })
  const lost = readIfThere(join(folder, '404.html')) ?? 'Not found'
  /** @type {import('node:http').RequestListener} */
  const answer = (request, response) =>
    files(request, response, () => {
      response.writeHead(404, { 'Content-Type': 'text/html; charset=utf-8' }).end(lost)
    })
  const servers = await Promise.all(HOSTS.map((host) => listen(answer, port, host)))
  return () => {
    for (const server of servers) {
      server?.close()
      server?.closeAllConnections()
    }
  }
}

/**
 * @param {import('node:http').RequestListener} answer
 * @param {number} port
 * @param {string} host
 * @returns {Promise<import('node:http').Server | undefined>} undefined where the machine has no such address
 */
function listen(answer, port, host) {
  return new Promise((resolve, reject) => {
    const server = createServer(answer)
    server.once('error', (/** @type {NodeJS.ErrnoException} */ error) => {
      // A machine without IPv6 has no ::1; the other address serves it.
      if (host === '::1' && ['EADDRNOTAVAIL', 'EAFNOSUPPORT'].includes(error.code ?? '')) resolve(undefined)
      else reject(error)
    })
    server.listen(port, host, () => resolve(server))
  })
}

/** @param {string} path */
function readIfThere(path) {
  try {
    return readFileSync(path, 'utf8')
  } catch {
    return undefined
  }
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  await serve(Number(process.argv[2] ?? 4321))
}
