/** A size as `200x300`, mm: its width and its height; null where the text is none. */
export function sizeIn(text: string): readonly [width: number, height: number] | null {
  const [, wide, high] = /^(\d+(?:\.\d+)?)x(\d+(?:\.\d+)?)$/.exec(text) ?? []
  return wide === undefined || high === undefined ? null : [Number(wide), Number(high)]
}
