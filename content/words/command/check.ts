export const usage = '[--json]'

export const help =
  'Say whether the design folds, stays inside the card and can be cut; with the nearest repair.'

export const holds = (check: string, sentence: string): string => `holds  ${check}: ${sentence}`

export const fails = (check: string, sentence: string): string => `FAILS  ${check}: ${sentence}`

export const repair = (id: string, size: string, from: string, to: string, unit: string): string =>
  `       Repair: ${id}, ${size} from ${from} to ${to} ${unit}.`
