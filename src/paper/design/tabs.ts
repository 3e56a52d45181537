/** Tabs of all mechanisms that are glued on by them: on the card, or through slits in it. */
import { kindOf } from '../mechanisms/registry.ts'
import type { Tabs } from '../mechanisms/shared/own-piece.ts'
import { LEAST_THROUGH, tabsChoice } from '../mechanisms/shared/own-piece.ts'
import { change, settingOf } from './change.ts'
import type { Design } from './design.ts'

type Mechanism = Design['mechanisms'][number]

const hasTabs = (m: Mechanism): boolean =>
  kindOf(m).choices?.includes(tabsChoice) === true && settingOf(m, 'tab') >= LEAST_THROUGH

/** The mechanisms that have tabs wide enough to go through a slit, by id. */
export const tabbed = ({ mechanisms }: Design): readonly string[] =>
  mechanisms.flatMap((m) => (hasTabs(m) ? [m.id] : []))

/** The design with all its tabs glued on the card, or all pushed through slits; the rest as it was. */
export const withTabs = (design: Design, tabs: Tabs): Design =>
  tabbed(design).reduce((made, id) => change(made, id, { tabs }), design)
