import type { JSX } from 'preact'
import { useMemo, useRef, useState } from 'preact/hooks'
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
        across: `${sizeName(measured)}, ${measured.unit === 'mm' ? 'mm' : 'degrees'}`,
        up: 'reading, mm',
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
      ? 'On the whole the class reads as the model does.'
      : `On the whole the class reads ${Math.abs(off).toFixed(1)} mm ${off < 0 ? 'less' : 'more'} than the model.`
  return [
    `${count} readings. ${mean} Round that they scatter by ${scatter.toFixed(1)} mm.`,
    ...(opening === null
      ? []
      : [`It looks as if the cards had been opened to ${Math.round(opening)}°, not ${right}°.`]),
  ]
}

/** So many readings that lie off are told at once, those farthest off first. */
const FIRST = 5

const Slips = ({ of }: { readonly of: readonly Compared[] }): JSX.Element => (
  <ul>
    {of.map(({ code, off, says }) => (
      <li key={code}>
        <strong>{code}</strong> {signed(off)}. {says.join(' ')}
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
  const [says, setSays] = useState('')
  const [withModel, setWithModel] = useState(false)
  const [emptied, setEmptied] = useState<Readings | null>(null)
  const file = useRef<HTMLInputElement>(null)
  if (!shown) return <p class="quiet">Places for the readings come as soon as the card is worked out.</p>
  if (!shown.measured) return <p class="quiet">Nothing on this card is read by a ruler.</p>
  const { sheets, measured, design } = shown
  const of = { sheets: sheets as readonly Sheet[], card: design.card }
  const most = mostRead(of)
  const take = (text: string, isFile: boolean) => {
    const { readings: found, sentences: left } = readReadings(text, of)
    const count = Object.keys(found).length
    if (count > 0) onReadings((before) => ({ ...before, ...found }))
    setSentences(left)
    setSays(`${count === 1 ? '1 reading' : `${count} readings`} taken over.`)
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
            <legend>What the rulers read, mm</legend>
            {sheets.map((sheet) => {
              const hint = sheet.size === null ? '' : sizeSays(measured, sheet.size)
              return (
                <Field
                  key={`${sheet.code} ${sheet.size}`}
                  sheet={sheet}
                  hint={hint}
                  label={`Reading of sheet ${sheet.code}${hint === '' ? '' : `, ${sizeName(measured)} ${hint}`}`}
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
              {withModel ? 'Cover the model' : 'Show the model'}
            </button>
            <button
              type="button"
              class="button"
              onClick={() =>
                save([`\ufeff${readingsTable(of, readings)}`], 'text/csv;charset=utf-8', 'class-readings.csv')
              }
            >
              Save the readings
            </button>
            <button type="button" class="button" onClick={() => file.current?.click()}>
              Open a table
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
                Clear all
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
                Have them back
              </button>
            ) : null}
          </p>
          <details class="readings-paste" open={pasted !== '' || undefined}>
            <summary>Paste readings</summary>
            <label>
              One line for each sheet: its code and the reading, as in “A1, 31.5”. A table from a spreadsheet
              will do.
              <textarea
                rows={5}
                value={pasted}
                onInput={({ currentTarget }) => setPasted(currentTarget.value)}
              />
            </label>
            <button type="button" class="button" onClick={() => take(pasted, false)}>
              Take them over
            </button>
          </details>
          <p role="status">{says}</p>
          {sentences.length > 0 ? (
            <ul class="trouble" role="alert">
              {sentences.slice(0, 8).map((one) => (
                <li key={one}>{one}</li>
              ))}
              {sentences.length > 8 ? <li>And {sentences.length - 8} more.</li> : null}
            </ul>
          ) : null}
          {withModel && together
            ? togetherSays(together, measured.opening).map((one) => <p key={one}>{one}</p>)
            : null}
          {withModel && count > 0 && compared.length === 0 ? (
            <p class="quiet">Looking for what explains them …</p>
          ) : null}
          {withModel && offs.length > 0 ? (
            <details class="readings-slips" open>
              <summary>
                {offs.length === 1 ? '1 reading lies' : `${offs.length} readings lie`} off by half a
                millimetre or more
              </summary>
              <Slips of={offs.slice(0, FIRST)} />
              {offs.length > FIRST ? (
                <details>
                  <summary>{offs.length - FIRST} more</summary>
                  <Slips of={offs.slice(FIRST)} />
                </details>
              ) : null}
            </details>
          ) : null}
        </div>
      </div>
      <p class="quiet">
        Readings stay on this device. Save them as a table to take them elsewhere. No names are asked for.
      </p>
    </>
  )
}
