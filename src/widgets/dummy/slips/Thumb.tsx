import type { JSX } from 'preact'
import { useEffect, useMemo, useState } from 'preact/hooks'
import { view } from '../../../drawing/view/view.ts'
import type { Design } from '../../../paper/index.ts'
import { compile } from '../../../paper/index.ts'
import { Figure } from '../../figures/Figure.tsx'
import { wantsCalm } from '../../model/calm.ts'
import type { CameraChoice } from '../../state/config.ts'
import { openingsOf } from '../../state/opening.ts'
import { openingAfter, phaseAt } from '../../state/play.ts'

/** A still card is framed as it stands, with this much room to either side; one that moves for most of its way, degrees. */
const NEAR = 6
const SWUNG = [40, 150] as const

interface ThumbProps {
  readonly design: Design
  readonly opening: number
  readonly camera: CameraChoice
  /** Mechanisms in the light; all if left out. */
  readonly lit?: readonly string[]
  /** It opens and shuts while this is so. */
  readonly moves?: boolean
  readonly width?: number
  readonly height?: number
}

/** The opening of a card that goes up and down while it is asked to; degrees. */
function usePlay(design: Design, opening: number, moves: boolean): number {
  const [at, setAt] = useState<number | null>(null)
  useEffect(() => {
    if (!moves || wantsCalm()) {
      setAt(null)
      return undefined
    }
    const between = openingsOf(design)
    const phase = phaseAt(opening, between)
    let began: number | null = null
    let ticket = requestAnimationFrame(function show(time) {
      began ??= time
      setAt(openingAfter(phase, (time - began) / 1000, between))
      ticket = requestAnimationFrame(show)
    })
    return () => cancelAnimationFrame(ticket)
  }, [design, opening, moves])
  return at ?? opening
}

/** A card in small: the same drawing as the large one. */
export function Thumb(props: ThumbProps): JSX.Element {
  const { design, opening, camera, lit, moves = false, width = 208, height = 132 } = props
  const poser = useMemo(() => compile(design), [design])
  const at = usePlay(design, opening, moves)
  const frame = moves ? SWUNG : [Math.max(0, opening - NEAR), Math.min(180, opening + NEAR)]
  const drawn = view(poser, at, camera, { width, height }, { moving: true, frame, ...(lit ? { lit } : {}) })
  return <Figure drawing={drawn} silent />
}
