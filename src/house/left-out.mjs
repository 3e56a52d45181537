// What d3's scales bring with them for colours, dates, numbers as text and several spans in a row. Scales here go from
// number to number, and ticks are worded by the drawings: so it stays out of what a page loads.

/** What takes the place of a module, as the parts of it that are used; all others say that they are left out. */
const LEFT_OUT = {
  'd3-format': '',
  'd3-interpolate': `const number = (a, b) => (t) => a * (1 - t) + b * t
export { number as interpolate, number as interpolateNumber }`,
}

/** What is thrown where something is asked for all the same. */
const LOST = "Error('left out: left-out.mjs')"

/** The scales themselves, and what is left out of them: how ticks are worded, and domains of several spans. */
const SCALES = 'd3-scale/dist/d3-scale.mjs'

const PARTS = ['tickFormat', 'polymap']

/** Asks ahead of time for what a later part needs: here that is there already, and no list of it is kept. */
const AHEAD = 'vite/preload-helper.js'

/** Writes a picture for the server's page: in a browser pictures are drawn, and the pen for text stays out of what wakes them. */
const FIRST_PICTURE = 'widgets/figures/first-picture.ts'

const MARK = '\0left-out:'

/** @type {import('vite').Plugin} */
export const leftOut = {
  name: 'left-out',
  enforce: 'pre',
  apply: 'build',
  applyToEnvironment: ({ name }) => name === 'client',
  configEnvironment: (name) => (name === 'client' ? { build: { modulePreload: false } } : undefined),
  resolveId: (id) => (id in LEFT_OUT ? `${MARK}${id}` : undefined),
  transform(code, id) {
    if (!id.endsWith(SCALES)) return undefined
    return PARTS.reduce((left, name) => {
      const whole = new RegExp(`^function ${name}\\([^]*?^}$`, 'm')
      if (!whole.test(left)) throw new Error(`d3-scale has no ${name} to leave out`)
      return left.replace(whole, `function ${name}() { throw ${LOST} }`)
    }, code)
  },
  async load(id) {
    if (id.endsWith(AHEAD)) return 'export const __vitePreload = (load) => load()'
    if (id.endsWith(FIRST_PICTURE)) return "export const firstPicture = () => ''"
    if (!id.startsWith(MARK)) return undefined
    const name = /** @type {keyof typeof LEFT_OUT} */ (id.slice(MARK.length))
    const used = LEFT_OUT[name]
    const others = Object.keys(await import(name)).filter((one) => !new RegExp(`as ${one}\\b`).test(used))
    return `${used}
const unused = () => { throw ${LOST} }
export { ${others.map((one) => `unused as ${one}`).join(', ')} }`
  },
}
