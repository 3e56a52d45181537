/** What the keys of a slider mean: arrows 1, with shift or a page key 10, with alt a tenth. */
export interface KeyPress {
  readonly key: string
  readonly shiftKey: boolean
  readonly altKey: boolean
  readonly ctrlKey: boolean
  readonly metaKey: boolean
}

export type SliderKey =
  | { readonly kind: 'nudge'; readonly right: number; readonly up: number; readonly by: number }
  | { readonly kind: 'end'; readonly end: 1 | -1 }

const ways: Readonly<Record<string, readonly [right: number, up: number, by: number]>> = {
  ArrowRight: [1, 0, 1],
  ArrowLeft: [-1, 0, 1],
  ArrowUp: [0, 1, 1],
  ArrowDown: [0, -1, 1],
  PageUp: [0, 1, 10],
  PageDown: [0, -1, 10],
}

/** What a key asks of a slider; null: nothing, let the page have it. */
export function sliderKey({ key, shiftKey, altKey, ctrlKey, metaKey }: KeyPress): SliderKey | null {
  if (ctrlKey || metaKey) return null
  if (key === 'Home') return { kind: 'end', end: -1 }
  if (key === 'End') return { kind: 'end', end: 1 }
  const way = ways[key]
  if (!way) return null
  const [right, up, by] = way
  return { kind: 'nudge', right, up, by: shiftKey ? 10 : altKey ? 0.1 : by }
}

/** The value a slider of one number takes on, before its range is seen to. */
export const slid = (press: SliderKey, value: number, min: number, max: number, unit = 1): number =>
  press.kind === 'end' ? (press.end > 0 ? max : min) : value + (press.right + press.up) * press.by * unit
