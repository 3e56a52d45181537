import type { ComponentType, JSX } from 'preact'
import { useEffect, useMemo, useState } from 'preact/hooks'
import * as says from '../../../../content/words/dummy/slips.ts'
import { modelOf } from '../../../paper/index.ts'
import type { Edit } from '../../keeping/edits.ts'
import { reasonOf } from '../../model/loading.ts'
import type { PiecesProps } from '../../pieces/PiecesDesk.tsx'
import type { Ask } from '../desk/desk.ts'
import { deskFor } from '../desk/desk.ts'
import type { Chosen } from '../model/chosen.ts'
import { called, ownerOf, placesOf } from '../model/chosen.ts'
import type { Dummy } from '../model/dummy-model.ts'
import { Slip } from './Slip.tsx'

/** What is only needed for drawing comes when it is asked for. */
function useDesk(): ComponentType<PiecesProps> | string | null {
  const [desk, setDesk] = useState<{ readonly loaded: ComponentType<PiecesProps> | string } | null>(null)
  useEffect(() => {
    import('../../pieces/PiecesDesk.tsx').then(
      ({ PiecesDesk }) => setDesk({ loaded: PiecesDesk }),
      (error: unknown) => setDesk({ loaded: says.shelfNotLoaded(reasonOf(error)) }),
    )
  }, [])
  return desk?.loaded ?? null
}

/** The face that is stuck and drawn on: the one taken up, or the first of the part. */
function faceOf({ bench }: Dummy, thing: Chosen): Chosen | undefined {
  const model = modelOf(bench.design.value)
  const owner = ownerOf(bench.design.value, thing)
  const faces = placesOf(model, owner?.id).filter(({ what }) => what === 'face')
  return faces.find(({ name }) => name === thing.name) ?? faces[0]
}

/** Stick or draw on a face, or change a piece that is stuck on one. */
export function PiecesSlip({
  dummy,
  thing,
}: {
  readonly dummy: Dummy
  readonly thing: Chosen
}): JSX.Element | null {
  const { bench } = dummy
  const design = bench.design.value
  const Desk = useDesk()
  const desk = useMemo(() => deskFor<Extract<Ask, { what: 'stick' }>>(), [])
  useEffect(() => desk.callOff, [desk])
  const face = faceOf(dummy, thing)
  if (!face) return null
  const owner = ownerOf(design, thing)
  const piece = owner?.kind === 'rider' ? owner.id : null
  const failed = (bench.checks.value ?? []).filter(
    ({ ok, ids }) => !ok && ids.some((id) => id.split('/')[0] === piece),
  )
  const sticksOut = failed.some(
    ({ name, ids, value }) => name === 'stays-inside' && value < 0 && ids[0] === piece,
  )
  const isHit = failed.some(({ name }) => name === 'clear-motion')
  const glueFails = failed.some(({ name }) => name === 'glue')
  const faults = failed.map(({ sentence }) => sentence)
  const stick: PiecesProps['stick'] = (on, cut) =>
    new Promise((done, fail) => {
      desk.ask({ what: 'stick', design, on, cut }, ({ stuck }) => done(stuck), fail)
    })
  const take = (edit: Edit, told: string): string | null => {
    const refusal = edit.done ? dummy.against(edit.design) : edit.sentence
    if (refusal !== null) dummy.told.value = refusal
    else if (edit.done)
      dummy.put(edit.design, told, edit.id === undefined ? undefined : { what: 'part', name: edit.id })
    return refusal
  }
  return (
    <Slip
      dummy={dummy}
      title={piece === null ? says.stickOrDraw(called(face)) : says.outlineAndColour(called(thing))}
    >
      {Desk === null ? (
        <p class="slip-says">{says.fetchingShelf}</p>
      ) : typeof Desk === 'string' ? (
        <p class="trouble">{Desk}</p>
      ) : (
        <Desk {...{ design, piece, faults, sticksOut, isHit, glueFails, stick, take }} panel={face.name} />
      )}
    </Slip>
  )
}
