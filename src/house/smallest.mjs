// What a page loads is made as small as can be, since the first drag has a bound (tests/browser/pages.spec.ts): terser goes
// over it before the bundler's own minifier does. Workers and the PDF writer come later than a drag: for them the
// bundler's is small enough, and much sooner done.
import { minify } from 'terser'

/** Beyond this a file is a library that is fetched when something is asked for, characters. */
const LARGE = 1_000_000

/** @type {import('vite').Plugin} */
export const smallest = {
  name: 'smallest',
  apply: 'build',
  applyToEnvironment: ({ name }) => name === 'client',
  async renderChunk(code) {
    if (code.length > LARGE) return null
    const { code: small } = await minify(code, {
      module: true,
      ecma: 2022,
      safari10: true,
      compress: {
        passes: 4,
        unsafe_arrows: true,
        keep_fargs: false,
        // Reading a signal is what subscribes to it.
        pure_getters: false,
      },
      format: { wrap_func_args: false },
    })
    return small === undefined ? null : { code: small, map: null }
  },
}
