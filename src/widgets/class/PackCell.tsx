import type { JSX } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'
import * as says from '../../../content/words/class-page.ts'
import { sizeName, sizeSays } from '../../class/spread.ts'
import { save } from '../template/save.ts'
import type { ShownClass, Wanted } from './asked.ts'
import { packDesk } from './desk.ts'

/** A file's name from a title: letters and digits of any alphabet. */
const nameFrom = (title: string): string =>
  title
    .toLowerCase()
    .replace(/[’']/g, '')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 40) || 'class'

interface PackCellProps {
  readonly wanted: Wanted | null
  readonly shown: ShownClass | null
  readonly shopping: readonly string[]
}

type Work = { readonly only: 'sheets' | null; readonly share: number }

/** What the pack holds, and the buttons that make it. */
export function PackCell({ wanted, shown, shopping }: PackCellProps): JSX.Element {
  const [work, setWork] = useState<Work | null>(null)
  const [said, setSaid] = useState('')
  const [isTrouble, setTrouble] = useState(false)
  const desk = useRef(packDesk())
  // Another choice: what was being made, and what was said of it, holds no longer.
  const key = wanted ? JSON.stringify([wanted.choice, wanted.minutes, wanted.design.title]) : ''
  useEffect(() => {
    const current = desk.current
    setWork(null)
    setSaid('')
    return () => current.callOff()
  }, [key])
  const make = (only: 'sheets' | null) => {
    if (!wanted || work) return
    setWork({ only, share: 0 })
    setTrouble(false)
    setSaid(says.layingOut)
    desk.current.ask({ what: 'pack', wanted, only }, (answer) => {
      if (answer.to === 'told') setWork({ only, share: answer.done / answer.of })
      else if (answer.to === 'pack') {
        const name = `${nameFrom(wanted.design.title)}-${only ?? 'class'}-${wanted.choice.paper}.pdf`
        save([answer.bytes], 'application/pdf', name)
        setWork(null)
        setSaid(says.packSaved(name, answer.pages))
      } else if (answer.to === 'fault') {
        setWork(null)
        setTrouble(true)
        setSaid(answer.sentence)
      }
    })
  }
  const { choice } = wanted ?? {}
  const n = choice?.pupils ?? 30
  const sizes = (shown?.sheets ?? []).flatMap(({ size }) => (size === null ? [] : [size]))
  const measured = shown?.measured
  const spread =
    measured && sizes.length > 0
      ? says.sizesAndName(
          sizeName(measured),
          sizeSays(measured, Math.min(...sizes)),
          sizeSays(measured, Math.max(...sizes)),
        )
      : says.lineForTheName
  const sheets = !shown
    ? says.sheets(n)
    : sizes.length > 0
      ? says.sheetsAllDifferent(n)
      : says.sheetsAllAlike(n)
  const holds = [
    ['text', says.teachersPages, says.teachersPagesNote],
    ['sheet', sheets, spread],
    ['work', says.worksheets(n), says.worksheetsNote],
    ['slip', says.recallSlips(n), says.recallSlipsNote],
    ['curve', says.answerKey, says.answerKeyNote],
    ...(choice?.large ? [['text', says.timesTheSteps(n), says.timesTheStepsNote] as const] : []),
    ...(choice?.certificate ? [['star', says.certificates(n), says.certificatesNote] as const] : []),
  ] as const
  return (
    <>
      <div class="pack">
        <ul class="pack-holds">
          {holds.map(([icon, what, of]) => (
            <li key={what}>
              <PackPicture of={icon} />
              <span>
                <strong>{what}</strong>
                <small>{of}</small>
              </span>
            </li>
          ))}
        </ul>
        <div class="pack-tables">
          <h3>{says.onTheTables}</h3>
          <ul class="tables-list">
            {shopping.map((item) => (
              <li key={item}>{item}</li>
            ))}
          </ul>
        </div>
      </div>
      {shown?.notes.map((note) => (
        <p key={note} class="pack-note">
          {note}
        </p>
      ))}
      <p class="pack-buttons">
        <button
          type="button"
          class="button primary"
          aria-disabled={!wanted || work !== null}
          onClick={() => make(null)}
        >
          {says.getThePack}
        </button>
        <button
          type="button"
          class="button"
          aria-disabled={!wanted || work !== null}
          onClick={() => make('sheets')}
        >
          {says.onlyTheSheets}
        </button>
        {work ? (
          <>
            <progress max={1} value={work.share} aria-label={says.howFar} />
            <button
              type="button"
              class="button"
              onClick={() => {
                desk.current.callOff()
                setWork(null)
                setSaid(says.packStopped)
              }}
            >
              {says.stop}
            </button>
          </>
        ) : (
          <span class="quiet">{says.madeHere}</span>
        )}
      </p>
      <p class={isTrouble ? 'trouble' : 'pack-says'} role="status">
        {said}
      </p>
    </>
  )
}

const PATHS: Readonly<Record<string, string>> = {
  text: 'M12 16H44M12 26H44M12 36H44M12 46H36M12 56H40',
  sheet: 'M9 14H47V44H9ZM28 14V44M28 22L18 29M28 36L18 29M28 22L38 29M28 36L38 29M16 60H40',
  work: 'M12 16H30M12 28H44M12 40H44M12 62V50M12 62H44',
  slip: 'M8 37H48M14 16H18V20H14ZM24 18H42M14 26H18V30H14ZM24 28H38M14 46H18V50H14ZM24 48H42M14 56H18V60H14ZM24 58H38',
  curve: 'M12 14V60H46M14 56C20 34 30 24 44 22',
  star: 'M28 16L32 28L45 28L34.500 36L38 48L28 40.500L18 48L21.500 36L11 28L24 28ZM14 62H42',
}

/** A page in small: what is on it is said beside it. */
const PackPicture = ({ of }: { readonly of: string }): JSX.Element => (
  <svg class="pack-picture" viewBox="0 0 56 74" aria-hidden="true">
    <path d="M1 1H55V73H1Z" />
    <path d={PATHS[of] ?? ''} />
  </svg>
)
