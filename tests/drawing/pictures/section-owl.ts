import type { Drawing } from '../../../src/drawing/marks.ts'
import { section } from '../../../src/drawing/section.ts'
import { owl } from '../garden.ts'

export const sectionOwl = (): Drawing => section(owl, 110, 'body', { width: 340, height: 280 })
