import { doNotCut } from '../../../content/words/sheet.ts'
import type { Block, Type } from './setting.ts'
import { paragraph } from './setting.ts'

/** What stands over all that is to be cut of a card that does not work yet; nothing over any other. */
export const faultBlocks = (fault: string | undefined, type: Type, width: number): readonly Block[] =>
  fault ? [paragraph([{ text: doNotCut, bold: true }, { text: ` ${fault}` }], type, width)] : []
