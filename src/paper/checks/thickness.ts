import { mostLayers } from '../measure/layers.ts'
import { SAME } from '../plane/segment.ts'
import type { Finding, Subject } from './subject.ts'
import { idOf } from './subject.ts'

/**
 * How thick the shut card is at its thickest spot: layers times caliper, mm. Above 2 mm it springs open
 * and its folds wear (common practice, no source).
 */
export function thickness(subject: Subject): Finding[] {
  const { model, poser, limits } = subject
  const { caliper } = model.design.card
  const { count, at, panels } = mostLayers(
    poser,
    subject.hasty ? Math.floor((limits.thickness + SAME) / caliper) : Number.POSITIVE_INFINITY,
  )
  const value = count * caliper
  const ok = value <= limits.thickness + SAME
  const owners = [...new Set(panels.map((panel) => model.panels[panel]?.owner ?? -1))]
  const thick = `${value.toFixed(value < 0.1 ? 2 : 1)} mm thick where ${count} layers lie on one another`
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
      sentence: ok ? `Shut, the card is ${thick}.` : `Shut, the card is ${thick}: it may not stay shut.`,
    },
  ]
}
