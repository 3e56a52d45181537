/** How far the card on a bench can be opened, and what to say where it stops. */
import * as says from '../../../content/words/bench.ts'
import type { Design, Stop } from '../../paper/index.ts'
import { openingRange, openingStops, toldEnd } from '../../paper/index.ts'
import type { BenchState } from './state.ts'
import { within } from './state.ts'

const TENTH = 10

/** The openings that a card can be set to, degrees: its range to a tenth, rounded inwards. */
export function openingsOf(design: Design): readonly [least: number, most: number] {
  const [least, most] = openingRange(design)
  const [low, high] = [toldEnd(least, 'least'), toldEnd(most, 'most')]
  return low <= high ? [low, high] : [least, most]
}

/** The state with its opening brought into the card's range, to a tenth of a degree. */
export function withinReach(state: BenchState): BenchState {
  const [least, most] = openingsOf(state.design)
  const opening = within(Math.round(state.opening * TENTH) / TENTH, least, most)
  return opening === state.opening ? state : { ...state, opening }
}

/** What stops the card on the way to an opening that it does not reach; null: nothing does. */
export function stopOnWay(design: Design, wanted: number): Stop | null {
  const [least, most] = openingsOf(design)
  const { least: low, most: high } = openingStops(design)
  return wanted > most ? high : wanted < least ? low : null
}

/** What is said of an opening that is typed or linked and out of range. */
export function refusalOf(design: Design): string {
  const { least, most } = openingStops(design)
  const [from, to] = openingsOf(design)
  if (!least && !most) return says.opensAllTheWay
  const said = [least, most].flatMap((stop) => (stop ? [stop.sentence] : []))
  const unlike = said.filter((one, k) => said.indexOf(one) === k).join(' ')
  const end = (opening: number) =>
    opening === 0 ? says.shut : opening === 180 ? says.flat : `${opening.toFixed(1)}°`
  return says.opensFromTo(end(from), end(to), unlike)
}
