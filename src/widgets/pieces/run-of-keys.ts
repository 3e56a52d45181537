import { useEffect, useRef } from 'preact/hooks'

/** A run of keys is over when none has come for so long, ms. */
const PAUSE = 700

/** Keys that follow one another quickly are one run, with one end. */
export interface RunOfKeys {
  /** A key of the run was pressed. */
  readonly goesOn: () => void
  /** Ends the run under way, if there is one, now. */
  readonly ends: () => void
}

/** @param onEnd called once for each run: after a pause, when told to, or when what was worked on goes away */
export function useRunOfKeys(onEnd: () => void): RunOfKeys {
  const latest = useRef(onEnd)
  latest.current = onEnd
  const due = useRef<number | null>(null)
  const ends = () => {
    if (due.current === null) return
    clearTimeout(due.current)
    due.current = null
    latest.current()
  }
  const goesOn = () => {
    if (due.current !== null) clearTimeout(due.current)
    due.current = setTimeout(ends, PAUSE) as unknown as number
  }
  useEffect(() => ends, [])
  return { goesOn, ends }
}
