import { mostLayers } from '../measure/layers.ts'
import { coverLayers } from '../model/cover.ts'
import { SAME } from '../plane/segment.ts'
import * as says from '../words/checks.ts'
import type { Finding, Subject } from './subject.ts'
import { idOf } from './subject.ts'

/**
 * How thick the shut card is at its thickest spot, its cover too: layers times caliper, mm. Above 2 mm it springs open
 * and its folds wear (common practice, no source).
 */
export function thickness(subject: Subject): Finding[] {
  const { model, poser, limits } = subject
  const { caliper } = model.design.card
  const cover = coverLayers(model.design)
  const found = mostLayers(
    poser,
    subject.hasty ? Math.floor((limits.thickness + SAME) / caliper) - cover : Number.POSITIVE_INFINITY,
  )
  const { at, panels } = found
  const count = found.count + cover
  const value = count * caliper
  const ok = value <= limits.thickness + SAME
  const owners = [...new Set(panels.map((panel) => model.panels[panel]?.owner ?? -1))]
  const told = `${value.toFixed(value < 0.1 ? 2 : 1)} mm`
  return [
    {
      name: 'thickness',
      ok,
      caution: true,
      value,
      unit: 'mm',
      limit: limits.thickness,
      sense: 'at-most',
      ids: owners.flatMap((owner) => (owner < 0 ? [] : [idOf(subject, owner)])),
      opening: 0,
      space: [0, at.y, at.z],
      sentence: (ok ? says.thin : says.tooThick)(told, count, cover > 0),
    },
  ]
}
