import temml from 'temml'

/** MathML of a formula in TeX. Throws an Error that names the place and what TeX could not read. */
export function mathml(tex: string, place: string, display: boolean): string {
  try {
    return temml.renderToString(tex, { displayMode: display, throwOnError: true })
  } catch (error) {
    throw new Error(
      `${place} TeX cannot read "${tex}": ${error instanceof Error ? error.message : String(error)}`,
    )
  }
}
