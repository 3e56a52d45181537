import type { Model } from '../model/model.ts'

/** By mechanism (index), the one that it stands on; -1: the card. */
export function baseOf({ builds, creases, panels }: Model, owner: number): number {
  const { host = 0, hostPanel } = builds[owner] ?? {}
  return (hostPanel === undefined ? creases[host]?.owner : panels[hostPanel]?.owner) ?? -1
}
