import type { JSX } from 'preact'
import { useMemo, useRef, useState } from 'preact/hooks'
import * as says from '../../../content/words/class-page.ts'
import type { Sheet } from '../../class/class.ts'
import { classChart } from '../../class/pages/figures.ts'
import type { Readings } from '../../class/readings.ts'
import { mostRead, readingsTable, readNumber, readReadings } from '../../class/readings.ts'
import { sizeName, sizeSays } from '../../class/spread.ts'
import type { Together } from '../../class/together.ts'
import { textOf } from '../../file/bytes.ts'
import { Figure } from '../figures/Figure.tsx'
import { save } from '../template/save.ts'
import type { Compared, ShownClass } from './asked.ts'

interface ChartProps {
  readonly shown: ShownClass
  readonly readings: Readings
  readonly withModel: boolean
  readonly size: { readonly width: number; readonly height: number }
  readonly text: number
}

/** The class against the model: crosses, and the curve where it is uncovered. */
export function ClassChart({ shown, readings, withModel, size, text }: ChartProps): JSX.Element | null {
  const { measured, sheets, design, curve, differs } = shown
  const { width, height } = size
  const drawing = useMemo(() => {
    if (!measured || !differs) return null
    const copies = sheets.map((sheet) => ({ ...sheet, design }))
    return classChart(
      { width, height },
      {
        ...{ measured, copies, text, unit: 'px' },
        ...(withModel ? { curve } : {}),
        readings: sheets.flatMap(({ code, size: at }) => {
          const value = readings[code]
          return value === undefined || at === null ? [] : [{ size: at, value, code }]
        }),
        across: (measured.unit === 'mm' ? says.chartAcrossMm : says.chartAcrossDegrees)(sizeName(measured)),
        up: says.chartUp,
      },
    )
  }, [measured, sheets, design, curve, differs, readings, withModel, width, height, text])
  return drawing && <Figure drawing={drawing} />
}

interface FieldProps {
  readonly sheet: ShownClass['sheets'][number]
  readonly label: string
  readonly hint: string
  readonly most: number
  readonly value: number | undefined
  readonly onRead: (value: number | null) => void
}

function Field({ sheet, label, hint, most, value, onRead }: FieldProps): JSX.Element {
  const [text, setText] = useState<string | null>(null)
  const found = text === null || text.trim() === '' ? null : readNumber(text, most)
  const wrong = found && !found.ok ? found.sentence : ''
  const id = `reading-${sheet.code}`
  return (
    <p class="reading-field">
      <label for={id}>
        <strong>{sheet.code}</strong> <small>{hint}</small>
      </label>
      <input
        id={id}
        class="number-input"
        type="text"
        inputMode="decimal"
        autocomplete="off"
        aria-label={label}
        aria-invalid={wrong !== ''}
        aria-describedby={wrong === '' ? undefined : `${id}-wrong`}
        value={text ?? (value === undefined ? '' : String(value))}
        onInput={({ currentTarget }) => {
          setText(currentTarget.value)
          if (currentTarget.value.trim() === '') onRead(null)
          else {
            const next = readNumber(currentTarget.value, most)
            if (next.ok) onRead(next.value)
          }
        }}
        onBlur={() => {
          if (wrong === '') setText(null)
        }}
      />
      {wrong === '' ? null : (
        <span class="reading-wrong" id={`${id}-wrong`} role="alert">
          {wrong}
        </span>
      )}
    </p>
  )
}

const signed = (off: number): string => `${off < 0 ? '−' : '+'}${Math.abs(off).toFixed(1)} mm`

/** What all readings say together, in sentences. */
export function togetherSays({ count, off, scatter, opening }: Together, right: number): readonly string[] {
  if (count < 3) return []
  const mean =
    Math.abs(off) < 0.25
      ? says.classReadsAlike
      : (off < 0 ? says.classReadsLess : says.classReadsMore)(Math.abs(off).toFixed(1))
  return [
    says.allReadings(count, mean, scatter.toFixed(1)),
    ...(opening === null ? [] : [says.openedOtherwise(Math.round(opening), right)]),
  ]
}

/** So many readings that lie off are told at once, those farthest off first. */
const FIRST = 5

const Slips = ({ of }: { readonly of: readonly Compared[] }): JSX.Element => (
  <ul>
    {of.map(({ code, off, says: sentences }) => (
      <li key={code}>
        <strong>{code}</strong> {signed(off)}. {sentences.join(' ')}
      </li>
    ))}
  </ul>
)

interface ReadingsCellProps {
  readonly shown: ShownClass | null
  readonly readings: Readings
  readonly compared: readonly Compared[]
  readonly together: Together | null
  readonly onReadings: (change: (before: Readings) => Readings) => void
}

/** Readings typed, pasted or opened; the class's curve; slips that would explain what lies off it. */
export function ReadingsCell({
  shown,
  readings,
  compared,
  together,
  onReadings,
}: ReadingsCellProps): JSX.Element {
  const [pasted, setPasted] = useState('')
  const [sentences, setSentences] = useState<readonly string[]>([])
  const [said, setSaid] = useState('')
  const [withModel, setWithModel] = useState(false)
  const [emptied, setEmptied] = useState<Readings | null>(null)
  const file = useRef<HTMLInputElement>(null)
  if (!shown) return <p class="quiet">{says.readingsLater}</p>
  if (!shown.measured) return <p class="quiet">{says.nothingToRead}</p>
  const { sheets, measured, design } = shown
  const of = { sheets: sheets as readonly Sheet[], card: design.card }
  const most = mostRead(of)
  const take = (text: string, isFile: boolean) => {
    const { readings: found, sentences: left } = readReadings(text, of)
    const count = Object.keys(found).length
    if (count > 0) onReadings((before) => ({ ...before, ...found }))
    setSentences(left)
    setSaid(says.takenOver(count))
    // What could not be read stays where it is, to be mended.
    setPasted(left.length > 0 ? text : '')
    if (isFile && file.current) file.current.value = ''
  }
  const offs = [...compared]
    .filter(({ off }) => Math.abs(off) >= 0.5)
    .sort((a, b) => Math.abs(b.off) - Math.abs(a.off))
  const count = Object.keys(readings).length
  return (
    <>
      <div class="class-readings">
        <div class="readings-in">
          <fieldset class="reading-fields">
            <legend>{says.whatRulersRead}</legend>
            {sheets.map((sheet) => {
              const hint = sheet.size === null ? '' : sizeSays(measured, sheet.size)
              return (
                <Field
                  key={`${sheet.code} ${sheet.size}`}
                  sheet={sheet}
                  hint={hint}
                  label={
                    hint === ''
                      ? says.readingOfSheet(sheet.code)
                      : says.readingOfSized(sheet.code, sizeName(measured), hint)
                  }
                  most={most}
                  value={readings[sheet.code]}
                  onRead={(value) =>
                    onReadings(({ [sheet.code]: _, ...rest }) =>
                      value === null ? rest : { ...rest, [sheet.code]: value },
                    )
                  }
                />
              )
            })}
          </fieldset>
        </div>
        <div class="readings-out">
          <ClassChart {...{ shown, readings, withModel }} size={{ width: 560, height: 360 }} text={15} />
          <p class="pack-buttons">
            <button
              type="button"
              class="button"
              aria-pressed={withModel}
              onClick={() => setWithModel(!withModel)}
            >
              {withModel ? says.coverModel : says.showModel}
            </button>
            <button
              type="button"
              class="button"
              onClick={() =>
                save([`\ufeff${readingsTable(of, readings)}`], 'text/csv;charset=utf-8', 'class-readings.csv')
              }
            >
              {says.saveReadings}
            </button>
            <button type="button" class="button" onClick={() => file.current?.click()}>
              {says.openTable}
            </button>
            <input
              ref={file}
              type="file"
              hidden
              accept=".csv,.txt,.tsv,text/csv,text/plain"
              onChange={({ currentTarget }) => {
                const chosen = currentTarget.files?.[0]
                if (chosen)
                  void chosen.arrayBuffer().then((bytes) => {
                    take(textOf(new Uint8Array(bytes)), true)
                  })
              }}
            />
            {count > 0 ? (
              <button
                type="button"
                class="button"
                onClick={() => {
                  setEmptied(readings)
                  onReadings(() => ({}))
                }}
              >
                {says.clearAll}
              </button>
            ) : emptied ? (
              <button
                type="button"
                class="button"
                onClick={() => {
                  onReadings(() => emptied)
                  setEmptied(null)
                }}
              >
                {says.haveThemBack}
              </button>
            ) : null}
          </p>
          <details class="readings-paste" open={pasted !== '' || undefined}>
            <summary>{says.pasteReadings}</summary>
            <label>
              {says.howToPaste}
              <textarea
                rows={5}
                value={pasted}
                onInput={({ currentTarget }) => setPasted(currentTarget.value)}
              />
            </label>
            <button type="button" class="button" onClick={() => take(pasted, false)}>
              {says.takeThemOver}
            </button>
          </details>
          <p role="status">{said}</p>
          {sentences.length > 0 ? (
            <ul class="trouble" role="alert">
              {sentences.slice(0, 8).map((one) => (
                <li key={one}>{one}</li>
              ))}
              {sentences.length > 8 ? <li>{says.andMore(sentences.length - 8)}</li> : null}
            </ul>
          ) : null}
          {withModel && together
            ? togetherSays(together, measured.opening).map((one) => <p key={one}>{one}</p>)
            : null}
          {withModel && count > 0 && compared.length === 0 ? (
            <p class="quiet">{says.lookingForCauses}</p>
          ) : null}
          {withModel && offs.length > 0 ? (
            <details class="readings-slips" open>
              <summary>{says.lieOff(offs.length)}</summary>
              <Slips of={offs.slice(0, FIRST)} />
              {offs.length > FIRST ? (
                <details>
                  <summary>{says.more(offs.length - FIRST)}</summary>
                  <Slips of={offs.slice(FIRST)} />
                </details>
              ) : null}
            </details>
          ) : null}
        </div>
      </div>
      <p class="quiet">{says.readingsStayHere}</p>
    </>
  )
}
