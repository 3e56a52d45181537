import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { section } from '../../../src/drawing/section/section.ts'
import { owl } from '../garden.ts'

export const sectionOwl = (): Drawing => section(owl, 110, 'body', { width: 340, height: 280 })
