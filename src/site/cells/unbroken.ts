import type { MdastPluginDefinition } from 'satteri'

/** A number and its unit, which no end of a line may part. */
const MEASURE = /(\d) (mm|cm|g\/m²|g|lb)(?![\p{L}])/gu

/** The code of a standard, `MS-ETS1-2`: a line may end at a hyphen before a letter. A word joiner is not seen. */
const CODE = /-(?=ETS\d)/g

const unbrokenText = (text: string): string => text.replace(MEASURE, '$1\u00a0$2').replace(CODE, '-\u2060')

/** Keeps numbers in a text together with their units, and codes in one. */
export const unbroken: MdastPluginDefinition = {
  name: 'hingebook-unbroken',
  text(node, context) {
    const value = unbrokenText(node.value)
    if (value !== node.value) context.setProperty(node, 'value', value)
  },
}
