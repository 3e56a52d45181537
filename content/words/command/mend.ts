export const usage = '[--pins ID.FIELD,…] [--out FILE] [--json]'

export const help =
  'Mend all that fails, changing as little as may be; the values named by --pins stay. --out writes the mended design.'

export const nothingFails = 'Nothing fails: there is nothing to mend.'

export const changed = (id: string, size: string, from: string, to: string, unit: 'mm' | 'deg'): string =>
  `${id}, ${size} from ${from} to ${to} ${unit === 'mm' ? 'mm' : 'degrees'}`

export const cannotBeMended = (sentence: string): string => `Cannot be mended: ${sentence}`
