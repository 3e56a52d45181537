import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { createServer } from 'node:net'
import { join } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { serve } from '../../src/house/serve.mjs'
import { squeeze } from '../../src/house/squeeze.mjs'
import { bareNode, ROOT } from './tree.ts'

mkdirSync(join(ROOT, '.cache'), { recursive: true })

const folder = mkdtempSync(join(ROOT, '.cache', 'serve-'))

afterAll(() => rmSync(folder, { recursive: true, force: true }))

mkdirSync(join(folder, 'chapters', 'layers'), { recursive: true })

writeFileSync(join(folder, 'index.html'), '<h1>Home</h1>')

writeFileSync(join(folder, '404.html'), '<h1>Lost</h1>')

writeFileSync(join(folder, 'chapters', 'layers', 'index.html'), '<h1>Layers</h1>')

writeFileSync(join(folder, 'card.pdf'), '%PDF-')

const LONG = `const reeds = ${JSON.stringify('reed '.repeat(1000))}`

mkdirSync(join(folder, '_astro'))

writeFileSync(join(folder, '_astro', 'bench.a1b2c3.js'), LONG)

await squeeze(folder)

writeFileSync(join(folder, '.hidden'), 'no')

const freePort = (): Promise<number> =>
  new Promise((resolve) => {
    const probe = createServer().listen(0, '127.0.0.1', () => {
      const address = probe.address()
      probe.close(() => resolve(typeof address === 'object' && address ? address.port : 0))
    })
  })

test('pages, files and a page for what is not there', async () => {
  const port = await freePort()
  const stop = await serve(port, folder)
  const get = async (path: string) => {
    const answer = await fetch(`http://localhost:${port}${path}`)
    return [answer.status, answer.headers.get('content-type')?.split(';')[0], await answer.text()]
  }
  expect(await get('/')).toEqual([200, 'text/html', '<h1>Home</h1>'])
  expect(await get('/chapters/layers/')).toEqual([200, 'text/html', '<h1>Layers</h1>'])
  expect(await get('/card.pdf')).toEqual([200, 'application/pdf', '%PDF-'])
  expect(await get('/nowhere/')).toEqual([404, 'text/html', '<h1>Lost</h1>'])
  expect((await get('/.hidden'))[0]).toBe(404)
  await expect(serve(port, folder)).rejects.toMatchObject({ code: 'EADDRINUSE' })
  stop()
})

// RFC 9110: Accept-Encoding and Content-Encoding; RFC 8246: immutable.
test('text goes out squeezed to those who can read it, and what is named after its content is kept for good', async () => {
  const port = await freePort()
  const stop = await serve(port, folder)
  const get = async (path: string, encoding: string) => {
    const answer = await fetch(`http://localhost:${port}${path}`, {
      headers: { 'Accept-Encoding': encoding },
    })
    const { headers } = answer
    const text = await answer.text()
    return {
      text,
      coded: headers.get('content-encoding'),
      sent: Number(headers.get('content-length')),
      kept: headers.get('cache-control'),
    }
  }
  for (const encoding of ['br', 'gzip']) {
    const { text, coded, sent, kept } = await get('/_astro/bench.a1b2c3.js', encoding)
    expect(coded).toBe(encoding)
    expect(text).toBe(LONG)
    expect(sent).toBeLessThan(LONG.length / 10)
    expect(kept).toBe('public, max-age=31536000, immutable')
  }
  expect(await get('/_astro/bench.a1b2c3.js', 'identity')).toMatchObject({
    text: LONG,
    coded: null,
    sent: LONG.length,
  })
  expect(await get('/chapters/layers/', 'br')).toMatchObject({ kept: 'no-cache' })
  stop()
})

test.each(['0', '65536', '80.5', 'door'])('npm start refuses the port %s in one sentence', (port) => {
  const { code, err } = bareNode('src/house/start.mjs', '--port', port)
  expect(err).toBe(`--port must be a whole number from 1 to 65535; it was ${port}.\n`)
  expect(code).toBe(1)
})
