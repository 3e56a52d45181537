/**
 * A picture for programs that know SVG but not style sheets, as drawing programs and cutters do. The browser works out
 * what each mark looks like, and that is written on the mark itself.
 */

const LINES = ['stroke-width', 'stroke-linecap', 'stroke-linejoin', 'stroke-dasharray']

const KEPT: Readonly<Record<string, readonly string[]>> = {
  path: ['fill-rule', ...LINES],
  circle: LINES,
  text: ['font-family', 'font-weight', 'paint-order', ...LINES],
}

/** What a mark has when nothing is said: not worth a word. */
const USUAL: Readonly<Record<string, string>> = {
  'fill-rule': 'nonzero',
  'stroke-dasharray': 'none',
  'stroke-linecap': 'butt',
  'stroke-linejoin': 'miter',
  'paint-order': 'normal',
  'font-weight': '400',
}

/** Any colour that the browser knows as `#rrggbb` and how much of it there is, 0 to 1. */
function inkReader(page: Document): (colour: string) => readonly [hex: string, opacity: number] {
  const canvas = page.createElement('canvas')
  canvas.width = canvas.height = 1
  const pen = canvas.getContext('2d', { willReadFrequently: true })
  const known = new Map<string, readonly [string, number]>()
  return (colour) => {
    let found = known.get(colour)
    if (!found && pen) {
      pen.clearRect(0, 0, 1, 1)
      pen.fillStyle = colour
      pen.fillRect(0, 0, 1, 1)
      const [r = 0, g = 0, b = 0, a = 0] = pen.getImageData(0, 0, 1, 1).data
      found = [`#${[r, g, b].map((part) => part.toString(16).padStart(2, '0')).join('')}`, a / 255]
      known.set(colour, found)
    }
    return found ?? ['#000000', 1]
  }
}

type Ink = ReturnType<typeof inkReader>

/** A picture laid where no style of the page reaches it, but is drawn all the same. */
async function laidAside(svg: string): Promise<HTMLIFrameElement> {
  const frame = document.createElement('iframe')
  frame.setAttribute('aria-hidden', 'true')
  frame.tabIndex = -1
  frame.style.cssText = 'position:fixed;left:-9999px;top:0;width:10px;height:10px;border:0;visibility:hidden'
  const there = new Promise((resolve) => frame.addEventListener('load', resolve, { once: true }))
  frame.srcdoc = `<!doctype html><html style="color-scheme:light"><body>${svg}</body></html>`
  document.body.append(frame)
  await there
  return frame
}

function writeColour(mark: Element, name: string, value: string, opacity: number, ink: Ink): void {
  if (value === 'none' || value.startsWith('url')) {
    mark.setAttribute(name, value.replaceAll(/["']/g, ''))
    if (opacity < 1) mark.setAttribute(`${name}-opacity`, String(opacity))
    return
  }
  const [hex, part] = ink(value)
  const whole = Math.round(part * opacity * 1000) / 1000
  mark.setAttribute(name, whole === 0 ? 'none' : hex)
  if (whole > 0 && whole < 1) mark.setAttribute(`${name}-opacity`, String(whole))
}

function writeLook(mark: Element, style: CSSStyleDeclaration, ink: Ink): void {
  const value = (name: string): string => style.getPropertyValue(name)
  writeColour(mark, 'fill', value('fill'), Number(value('fill-opacity')), ink)
  writeColour(mark, 'stroke', value('stroke'), Number(value('stroke-opacity')), ink)
  const bare = mark.getAttribute('stroke') === 'none'
  for (const name of KEPT[mark.localName] ?? []) {
    if (bare && LINES.includes(name)) continue
    const found = value(name).replaceAll('px', '')
    if (found !== '' && found !== USUAL[name]) mark.setAttribute(name, found)
  }
}

const SVG = 'http://www.w3.org/2000/svg'

const made = (page: Document, name: string, of: Readonly<Record<string, string>>): Element => {
  const one = page.createElementNS(SVG, name)
  for (const [key, value] of Object.entries(of)) one.setAttribute(key, value)
  return one
}

/** Soft shadows: `blur(3.5px)` of a style sheet is a filter of SVG. */
function writeBlur(root: Element, mark: Element, filter: string): void {
  const soft = /^blur\(([\d.]+)px\)$/.exec(filter)?.[1]
  if (soft === undefined) return
  const page = root.ownerDocument
  const id = `soft-${soft.replace('.', '-')}`
  if (!root.querySelector(`#${id}`)) {
    const blur = made(page, 'filter', {
      id,
      x: '-20%',
      y: '-20%',
      width: '140%',
      height: '140%',
      'color-interpolation-filters': 'sRGB',
    })
    blur.append(made(page, 'feGaussianBlur', { stdDeviation: soft }))
    root.prepend(blur)
  }
  mark.setAttribute('filter', `url(#${id})`)
}

/** The table: an ellipse of light on a rectangle, in shares of it. */
function writeGround(
  root: SVGSVGElement,
  { backgroundImage, backgroundColor }: CSSStyleDeclaration,
  ink: Ink,
): void {
  const page = root.ownerDocument
  const { width, height } = root.viewBox.baseVal
  const ground = made(page, 'rect', { width: String(width), height: String(height) })
  const [near, far] = [...backgroundImage.matchAll(/(?:rgba?|color|oklab|oklch|lab)\([^)]*\)/g)].map(
    ([colour]) => colour,
  )
  if (near !== undefined && far !== undefined) {
    const [, x, y] = /at ([\d.]+)% ([\d.]+)%/.exec(backgroundImage) ?? []
    const light = made(page, 'radialGradient', { id: 'ground', cx: '0', cy: '0', r: '1' })
    // As far as the farthest corner: by the square root of two over the farthest sides (CSS Images 3, 3.2).
    const reach = (at: number): number => Math.SQRT2 * Math.max(at, 1 - at)
    const [cx, cy] = [Number(x ?? 50) / 100, Number(y ?? 50) / 100]
    light.setAttribute('gradientTransform', `matrix(${reach(cx)} 0 0 ${reach(cy)} ${cx} ${cy})`)
    light.append(
      made(page, 'stop', { offset: '0', 'stop-color': ink(near)[0] }),
      made(page, 'stop', { offset: '0.78', 'stop-color': ink(far)[0] }),
    )
    ground.setAttribute('fill', 'url(#ground)')
    root.prepend(light, ground)
  } else if (ink(backgroundColor)[1] > 0) {
    ground.setAttribute('fill', ink(backgroundColor)[0])
    root.prepend(ground)
  }
}

/** The same picture without a style sheet. */
export async function plainSvg(svg: string): Promise<string> {
  const frame = await laidAside(svg)
  try {
    const page = frame.contentDocument
    const view = frame.contentWindow
    const root = page?.querySelector('svg')
    if (!page || !view || !root) return svg
    const ink = inkReader(document)
    const looks = [...root.querySelectorAll('path, circle, text, stop')].map(
      (mark) => [mark, view.getComputedStyle(mark)] as const,
    )
    for (const [mark, style] of looks) {
      if (mark.localName === 'stop') {
        writeColour(mark, 'stop-color', style.stopColor, 1, ink)
        continue
      }
      if (mark.closest('clipPath')) continue
      if (style.display === 'none') mark.setAttribute('display', 'none')
      else writeLook(mark, style, ink)
      writeBlur(root, mark, style.filter)
    }
    writeGround(root, view.getComputedStyle(root), ink)
    root.querySelector('style')?.remove()
    for (const one of [root, ...root.querySelectorAll('*')])
      for (const name of ['class', 'style', 'data-of']) one.removeAttribute(name)
    return `${new XMLSerializer().serializeToString(root)}\n`
  } finally {
    frame.remove()
  }
}
