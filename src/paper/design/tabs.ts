/** Tabs of all mechanisms that are glued on by them. */
import { kindOf } from '../mechanisms/registry.ts'
import { LEAST_THROUGH, tabsChoice } from '../mechanisms/shared/own-piece.ts'
import { settingOf } from './change.ts'
import type { Design } from './design.ts'

type Mechanism = Design['mechanisms'][number]

const hasTabs = (m: Mechanism): boolean =>
  kindOf(m).choices?.includes(tabsChoice) === true && settingOf(m, 'tab') >= LEAST_THROUGH

/** The mechanisms that have tabs wide enough to go through a slit, by id. */
export const tabbed = ({ mechanisms }: Design): readonly string[] =>
  mechanisms.flatMap((m) => (hasTabs(m) ? [m.id] : []))
