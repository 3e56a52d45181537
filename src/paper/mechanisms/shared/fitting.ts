import type { Room, Share } from '../kind.ts'

/** Nothing is offered smaller than this, mm: no hand folds it. Common practice, no source. */
export const SMALLEST = 5

/** A tab for a joint or wall of this size, mm: as wide as a glue stick's stroke where there is room. Common practice, no source. */
export const tabFor = (size: number): number => Math.min(8, Math.max(3, Math.round(size / 3)))

/** A stretch of a room from start to end in whole mm, and how deep it may be by its share, mm, shut as well as open. */
export function stretchIn(
  room: Room,
  { long, deep, at }: Share,
): { readonly start: number; readonly end: number; readonly depth: number } {
  const whole = room.to - room.from
  const length = Math.round(long * whole)
  const start = Math.ceil(room.from + at * (whole - length) - 1e-9)
  const end = start + length
  const depth = deep * Math.min(room.depth(start, end), room.beyond((start + end) / 2))
  return { start, end, depth }
}
