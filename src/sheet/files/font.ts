/**
 * The type of the sheets, Atkinson Hyperlegible Next (SIL Open Font License 1.1), as WOFF files. A file
 * holds only some alphabets, so a weight is a list: a letter comes from the first file that has it.
 */
export interface SheetFont {
  readonly regular: readonly Uint8Array[]
  readonly bold: readonly Uint8Array[]
}

const files = (weight: number): readonly string[] =>
  ['latin', 'latin-ext'].map((alphabet) => `atkinson-hyperlegible-next-${alphabet}-${weight}-normal.woff`)

/** The files of the package `@fontsource/atkinson-hyperlegible-next`, folder `files`. */
export const fontFiles = { regular: files(400), bold: files(700) } as const

/** Fetches or reads the font: `load` gives the bytes of one file. */
export async function loadFont(load: (file: string) => Promise<Uint8Array>): Promise<SheetFont> {
  const [regular, bold] = await Promise.all(
    [fontFiles.regular, fontFiles.bold].map((names) => Promise.all(names.map(load))),
  )
  return { regular: regular ?? [], bold: bold ?? [] }
}
