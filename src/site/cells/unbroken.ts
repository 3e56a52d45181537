import type { MdastPluginDefinition } from 'satteri'

/** A number and its unit, which no end of a line may part. */
const MEASURE = /(\d) (mm|cm|g\/m²|g|lb)(?![\p{L}])/gu

const unbrokenText = (text: string): string => text.replace(MEASURE, '$1\u00a0$2')

/** Keeps numbers in a text together with their units. */
export const unbroken: MdastPluginDefinition = {
  name: 'hingebook-unbroken',
  text(node, context) {
    const value = unbrokenText(node.value)
    if (value !== node.value) context.setProperty(node, 'value', value)
  },
}
