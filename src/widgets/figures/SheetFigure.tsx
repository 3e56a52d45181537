import type { JSX } from 'preact'
import { useRef } from 'preact/hooks'
import * as says from '../../../content/words/bench.ts'
import { pointOnSheet } from '../../drawing/page-point/page-point.ts'
import type { Layout } from '../../drawing/pattern/layout.ts'
import type { Pattern } from '../../drawing/pattern/pattern.ts'
import { pattern } from '../../drawing/pattern/pattern.ts'
import type { PathMark } from '../../drawing/pen/marks.ts'
import type { Size } from '../../drawing/view/camera.ts'
import type { Check, Design } from '../../paper/index.ts'
import { handlesOf, nameOf, settable, settingOf } from '../../paper/index.ts'
import type { BenchHandle } from '../model/bench-handles.ts'
import { handleSays, nudged, toEnd } from '../model/bench-handles.ts'
import type { Bench } from '../model/bench-model.ts'
import { lengthUnit, sizeInHand } from '../model/page.ts'
import type { LengthUnit } from '../state/format.ts'
import { large, shown, spoken } from '../state/format.ts'
import type { SliderKey } from '../state/keys.ts'
import { slid } from '../state/keys.ts'
import { cutAt, within } from '../state/state.ts'
import { Figure } from './Figure.tsx'
import type { Place } from './Grip.tsx'
import { Grip } from './Grip.tsx'
import { useKept, usePicture, useStage } from './stage.ts'

interface HandleGripProps {
  readonly bench: Bench
  readonly handle: BenchHandle
  readonly sheet: Pattern
  readonly length: LengthUnit
}

function HandleGrip({ bench, handle, sheet, length }: HandleGripProps): JSX.Element {
  const { key, label, piece, at, across, along, acrossWay, alongWay } = handle
  const one = across ?? along
  const told = handleSays(handle, length)
  const now = Math.round((one?.value ?? 0) * 10) / 10
  const bothWays = acrossWay && alongWay
  const way = acrossWay ?? alongWay ?? [1, 0]
  const [, , width, height] = sheet.box
  const { card } = bench.design.value
  const far = across?.unit === 'deg' ? 90 : across ? card.width : card.height
  const press = (pressed: SliderKey) =>
    bench.step(key, (now) => {
      const there = bench.handleIn(now, key)
      return there.drag(
        now,
        pressed.kind === 'end' ? toEnd(now.design, there, pressed.end) : nudged(there, pressed),
      )
    })
  return (
    <Grip
      label={label}
      at={sheet.fromSheet(at, piece)}
      box={{ width, height }}
      {...(bothWays
        ? {}
        : { way: Math.abs(way[0]) > Math.abs(way[1]) ? ('level' as const) : ('upright' as const) })}
      // A value outside of the range that is spoken would be no value.
      value={{ now, min: Math.min(0, now), max: Math.max(far, now), text: told }}
      held={bench.held.value === key}
      ringed={bench.ringed.value === key}
      rides={told}
      onHold={() => bench.hold(key)}
      onMove={(to) => bench.move((from) => handle.drag(from, sheet.toSheet(to, piece)))}
      onRelease={bench.release}
      onCancel={bench.cancel}
      onKey={press}
      onRest={bench.rest}
    />
  )
}

/** Where the section is cut, as a thin line over the sheet. */
const stationMark = (sheet: Pattern, width: number, station: number): PathMark => ({
  mark: 'path',
  runs: [[sheet.fromSheet([-width, station]), sheet.fromSheet([width, station])]],
  closed: false,
  role: 'ghost',
  of: 'section',
})

/** A size in hand, as a line from where it is measured to what it moves; null if the sheet cannot show it. */
function sizeMark(sheet: Pattern, design: Design, size: string): PathMark | null {
  const dot = size.indexOf('.')
  const [id, field] = [size.slice(0, dot), size.slice(dot + 1)]
  const m = design.mechanisms.find((one) => one.id === id)
  const handle = handlesOf(design).find(
    (one) => one.id === id && (one.across === field || one.along === field),
  )
  const unit = m && settable(m).find(({ name }) => name === field)?.unit
  if (!m || !handle || unit !== 'mm') return null
  const { at, piece } = handle
  const way = handle.along === field ? handle.alongWay : handle.acrossWay
  const value = settingOf(m, field)
  const from = sheet.fromSheet([at[0] - value * way[0], at[1] - value * way[1]], piece)
  const to = sheet.fromSheet(at, piece)
  const long = Math.hypot(to[0] - from[0], to[1] - from[1])
  if (long < 2 * BESIDE) return null
  // Beside the line it measures, not on it.
  const off = [(BESIDE * (from[1] - to[1])) / long, (BESIDE * (to[0] - from[0])) / long] as const
  const beside = ([x, y]: Place): Place => [x + off[0], y + off[1]]
  return {
    mark: 'path',
    runs: [[beside(from), beside(to)]],
    closed: false,
    role: 'dimension',
    arrow: 'both',
    of: `${id}/${field}`,
  }
}

/** From a line to the size beside it, px. */
const BESIDE = 9

/** From the figure's edge to the arrow that marks the section, px. */
const MARKER = 8

/** A tip may stand past the end of the card: the arrow stays at the card's end, and in the figure. */
function arrowAt(sheet: Pattern, station: number, tall: number): Place {
  const [, top, , height] = sheet.box
  const [, y] = sheet.fromSheet([0, within(station, 0, tall)])
  return [MARKER, within(y, top + MARKER, top + height - MARKER)]
}

interface StationGripProps {
  readonly bench: Bench
  readonly sheet: Pattern
  readonly station: number
  readonly length: LengthUnit
}

function StationGrip({ bench, sheet, station, length }: StationGripProps): JSX.Element {
  const { height: tall } = bench.design.value.card
  const [, , width, height] = sheet.box
  return (
    <Grip
      label={says.whereCut}
      at={arrowAt(sheet, station, tall)}
      box={{ width, height }}
      way="upright"
      shape="arrow"
      value={{ now: within(station, 0, tall), min: 0, max: tall, text: spoken(station, 'mm', length) }}
      held={bench.held.value === 'section'}
      rides={`${says.sectionBefore} ${shown(station, 'mm', length)}`}
      onHold={() => bench.hold('section')}
      onMove={(to: Place) => bench.move((from) => cutAt(from, sheet.toSheet(to)[1]))}
      onRelease={bench.release}
      onCancel={bench.cancel}
      onKey={(press) =>
        bench.step('section', (now) => cutAt(now, slid(press, now.station ?? station, 0, tall)))
      }
      onRest={bench.rest}
    />
  )
}

/** Which mechanism's pieces a crowded sheet shows. */
export function SheetPick({ bench }: { readonly bench: Bench }): JSX.Element | null {
  if (bench.choosable.length < 2) return null
  return (
    <label class="sheet-pick">
      <span class="aloud">{says.piecesShown}</span>
      <select
        value={bench.chosen.value ?? ''}
        onChange={({ currentTarget }) => bench.choose(currentTarget.value || null)}
      >
        {bench.choosable.map((id) => (
          <option key={id} value={id}>
            {large(nameOf(id))}
          </option>
        ))}
        <option value="">{says.allPieces}</option>
      </select>
    </label>
  )
}

/** Words this high are for a room, px. */
const FAR_OFF = 26

const NO_FAULTS: readonly Check[] = []

const NO_MARKS: readonly PathMark[] = []

const NO_HANDLES: readonly BenchHandle[] = []

interface SheetFigureProps {
  readonly bench: Bench
  /** Whether the section's place is shown on the sheet. */
  readonly section: boolean
  /** It is drawn again only when the hand rests. */
  readonly small?: boolean
}

/** The flat sheet, with everything that can be dragged on it. */
export function SheetFigure({ bench, section, small = false }: SheetFigureProps): JSX.Element {
  const stage = useStage({ width: 370, height: 293 }, small)
  const { ref, size, text } = stage
  const last = useRef<{ readonly layout: Layout; readonly size: Size } | null>(null)
  const kept = useKept<Pattern>()
  return usePicture(bench, stage, 'sheet', () => {
    const unit = lengthUnit.value
    // Not the state itself: while the card opens its sheet stays as it is.
    const [design, point] = [bench.design.value, bench.point.value]
    const chosen = bench.chosen.value
    const handles = small
      ? NO_HANDLES
      : bench.handles.value.filter(({ key }) => chosen === null || key.startsWith(`${chosen}/`))
    const held = handles.find(({ key }) => key === bench.held.value)
    // Nothing jumps under a hand: the pieces stay where they lay when it took hold.
    const stay = held && last.current?.size === size ? last.current.layout : undefined
    const faults = bench.checks.value ?? NO_FAULTS
    const words = held ? handleSays(held, unit) : ''
    const sheet = kept([design, point, size, text, unit, faults, chosen, held?.key, words, small], () => {
      const plain = pattern(design, size, {
        handles: handles.map(({ key }) => key),
        called: Object.fromEntries(handles.map(({ key, label }) => [key, label])),
        ...(chosen === null ? {} : { only: chosen }),
        // From the back of a room, or small, a key of lines is not read: the room is for the sheet.
        legend: text < FAR_OFF && !small,
        faults,
        text,
        unit,
        ...(held ? { held: { handle: held.key, words } } : {}),
        ...(stay ? { stay } : {}),
      })
      last.current = { layout: plain.layout, size }
      return point
        ? pointOnSheet(plain, point, design.card, { text, unit, held: held?.key === 'point/point' })
        : plain
    })
    const station = section ? bench.station.value : 0
    const { height: tall } = design.card
    const inHand = sizeInHand.value === null ? null : sizeMark(sheet, design, sizeInHand.value)
    // Past the end of the card there is no paper to mark.
    const cut = section && station >= 0 && station <= tall
    return (
      <div class="stage stage-sheet" ref={ref}>
        <Figure
          drawing={sheet}
          under={cut ? [stationMark(sheet, design.card.width, station)] : NO_MARKS}
          over={inHand ? [inHand] : NO_MARKS}
        />
        {section ? <StationGrip {...{ bench, sheet, station, length: unit }} /> : null}
        {handles.map((handle) => (
          <HandleGrip key={handle.key} {...{ bench, handle, sheet, length: unit }} />
        ))}
      </div>
    )
  })
}
