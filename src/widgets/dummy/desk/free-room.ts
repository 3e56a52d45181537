import { useEffect, useMemo, useState } from 'preact/hooks'
import type { FreeRoom } from '../../../paper/index.ts'
import type { Dummy } from '../model/dummy-model.ts'
import type { Ask } from './desk.ts'
import { deskFor } from './desk.ts'

/** Where on a face something may still go, worked out beside the page; null: not known, or nobody asked. */
export function useFreeRoom({ bench }: Dummy, panel: string | null): FreeRoom | null {
  const design = bench.design.value
  const busy = bench.held.value !== null
  const desk = useMemo(() => deskFor<Extract<Ask, { what: 'room' }>>(), [])
  const [found, setFound] = useState<FreeRoom | null>(null)
  useEffect(() => {
    setFound(null)
    if (panel === null || busy) return undefined
    desk.ask(
      { what: 'room', design, panel, opening: bench.state.peek().opening },
      ({ room }) => setFound(room),
      () => setFound(null),
    )
    return desk.callOff
  }, [desk, bench, design, panel, busy])
  return found
}
