import type { FigureName } from '../state/config.ts'

/** What stands under each figure, and calls it everywhere. */
export const captions: Readonly<Record<FigureName, string>> = {
  view: 'Standing card',
  sheet: 'Flat sheet',
  section: 'Section',
  chart: 'Chart',
}
