/** How light tells on paper: what `marks.css` says of surfaces and shadows, for pens that must work it out. */
import type { Paint } from './marks.ts'

/** Light from all round, and what the lamp adds, of 1. */
export interface Light {
  readonly air: number
  readonly lamp: number
}

/** By day, as the style sheet has it. */
export const DAY: Light = { air: 0.65, lamp: 0.52 }

/** On what is no surface of its own. */
const USUAL = { light: 0.8, glow: 0.6 } as const

const glowOf = ({ sky = 1 }: Paint, { air }: Light): number => air * sky

/** How much of the shade's colour lies over a paper, 0 to 1. */
export const darkOf = (paint: Paint, by: Light): number =>
  Math.min(1, Math.max(0, 1 - glowOf(paint, by) - by.lamp * paint.light))

/** How much of it a shadow lays there: the lamp's part is taken away, no more. */
export function shadowOf(strength: number, paint: Paint | undefined, by: Light): number {
  const straight = by.lamp * (paint?.light ?? USUAL.light)
  return (strength * straight) / ((paint ? glowOf(paint, by) : USUAL.glow) + straight)
}
