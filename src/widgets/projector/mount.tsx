import { render } from 'preact'
import type { ClassBarProps } from './ClassBar.tsx'
import { ClassBar } from './ClassBar.tsx'

/** Puts the bar into the place that a page keeps for it, with what the page says of its lesson. */
export function mount(place: HTMLElement): void {
  render(<ClassBar {...(JSON.parse(place.dataset.lesson ?? '') as ClassBarProps)} />, place)
}
