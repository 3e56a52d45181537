import type { JSX } from 'preact'
import { useEffect } from 'preact/hooks'
import type { Check } from '../../paper/index.ts'
import { kindOf } from '../../paper/index.ts'
import { AimFold } from '../aim/AimFold.tsx'
import { MetNote } from '../challenge/MetNote.tsx'
import { FieldPanel } from '../fields/FieldPanel.tsx'
import { fetchBrush } from '../figures/fetch-brush.ts'
import { Knobs } from '../figures/Knobs.tsx'
import { GuessNote } from '../guess/GuessNote.tsx'
import { followAddress } from '../model/address.ts'
import { benchOf } from '../model/page.ts'
import { FIRST_SIZES, foldsOf } from '../state/config.ts'
import { leadOf } from '../state/state.ts'
import { Actions } from './Actions.tsx'
import { FaultNote } from './FaultNote.tsx'
import { More } from './More.tsx'
import type { WithinBench } from './use-bench.ts'
import { useBench } from './use-bench.ts'
import { WayNote } from './WayNote.tsx'

/*
 * What a bench's first drag can do without: islands within the bench, which come a little later than it. The page
 * that is made shows them as they are at first.
 */

interface BenchNotesProps extends WithinBench {
  /** The kernel's verdicts on the design, worked out when the page is made. */
  readonly checks: readonly Check[]
  /** Which way the mechanisms of `config.ways` go, one sentence each, worked out when the page is made. */
  readonly ways?: readonly string[]
}

/** What is said of the card, and what can be set. */
export function BenchNotes({ checks, ways, ...props }: BenchNotesProps): JSX.Element {
  const { slug, config } = props
  const bench = useBench(props, checks)
  const covers = config.covers ?? []
  const folds = foldsOf(config)
  return (
    <>
      {bench.start.design.mechanisms.length > 0 ? <FaultNote bench={bench} /> : null}
      {ways ? <WayNote bench={bench} says={ways} answers={covers.includes('ways')} /> : null}
      {covers.length > 0 ? <GuessNote /> : null}
      <MetNote slug={slug} />
      <FieldPanel bench={bench} first={config.sizes ?? FIRST_SIZES} />
      {folds.length > 0 ? <More folds={folds} /> : null}
    </>
  )
}

/** What turns the standing card without dragging. */
export function BenchKnobs(props: WithinBench): JSX.Element {
  const bench = useBench(props)
  useEffect(() => void fetchBrush(), [])
  return <Knobs bench={bench} />
}

interface BenchActionsProps extends WithinBench {
  /** A second bench of a page: the address belongs to the first one. */
  readonly aside?: boolean
}

/** What can be done with the card: a place for its tip, paper, the way back, a link. */
export function BenchActions({ aside = false, ...props }: BenchActionsProps): JSX.Element {
  const { slug, config } = props
  const bench = useBench(props)
  const living = benchOf(slug).value
  useEffect(() => (living && !aside ? followAddress(living) : undefined), [living, aside])
  const lead = leadOf(bench.start.design, config)
  return (
    <>
      {lead && kindOf(lead).aims.length > 0 ? <AimFold bench={bench} lead={lead} /> : null}
      <Actions bench={bench} slug={slug} aside={aside} />
    </>
  )
}
