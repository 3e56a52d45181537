import { readFileSync } from 'node:fs'

/** A colour token in both themes, `#rrggbb`. */
export interface Pair {
  readonly day: string
  readonly night: string
}

const CSS = new URL('../../src/site/styles/tokens.css', import.meta.url)

/** The colour tokens of the site, read from the style sheet itself. */
export function tokens(): Readonly<Record<string, Pair>> {
  const css = readFileSync(CSS, 'utf8')
  const found = css.matchAll(/--([\w-]+):\s*light-dark\((#[0-9a-f]{6}),\s*(#[0-9a-f]{6})\)/g)
  return Object.fromEntries([...found].map(([, name = '', day = '', night = '']) => [name, { day, night }]))
}

/** Relative luminance of `#rrggbb`: WCAG 2.2, https://www.w3.org/TR/WCAG22/#dfn-relative-luminance */
export function luminance(colour: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const value = Number.parseInt(colour.slice(at, at + 2), 16) / 255
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4
  })
  return 0.2126 * r + 0.7152 * g + 0.0722 * b
}

/** Contrast ratio, 1 to 21: WCAG 2.2, https://www.w3.org/TR/WCAG22/#dfn-contrast-ratio */
export function contrast(a: string, b: string): number {
  const [low = 0, high = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y)
  return (high + 0.05) / (low + 0.05)
}
