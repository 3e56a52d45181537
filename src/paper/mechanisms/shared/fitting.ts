import type { Room, Share } from '../kind.ts'

/** Nothing is offered smaller than this, mm: no hand folds it. Common practice, no source. */
export const SMALLEST = 5

/** How thick paper is unless a card says so, mm: as `card.caliper` of a design file. */
export const USUAL_CALIPER = 0.25

/** The width of a tab where there is room, mm: 5 for the thinnest paper, 12 more for each mm of it, 14 at most. */
const WIDE = { thinnest: 5, each: 12, most: 14 } as const

/**
 * A tab for a joint or wall of this size on paper so thick, mm: 8 on usual card, as wide as a glue stick's stroke;
 * thick card springs back and asks for more, thin paper for less. Never more than a third of the joint, so that tabs
 * do not meet. Common practice, no source.
 */
export function tabOn(caliper: number, size: number): number {
  const wide = Math.min(WIDE.most, Math.round(WIDE.thinnest + WIDE.each * caliper))
  return Math.min(wide, Math.max(3, Math.round(size / 3)))
}

/** The same on usual card, mm. */
export const tabFor = (size: number): number => tabOn(USUAL_CALIPER, size)

/** What a maker calls the two ends of the crease: of the card's own fold they are the card's. */
export const endsOf = ({ isGutter = false }: Room): { readonly near: string; readonly far: string } =>
  isGutter ? { near: 'your end', far: 'the far end' } : { near: 'the fold’s start', far: 'the fold’s end' }

/** Which way along the crease something points: 1 outward, -1 back. */
export const pointing = (room: Room, toward: 1 | -1): string =>
  (toward > 0 ? 'away from ' : 'back to ') + endsOf(room).near

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
