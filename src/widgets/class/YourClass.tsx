import type { JSX } from 'preact'
import { Fragment } from 'preact'
import { useId, useState } from 'preact/hooks'
import * as says from '../../../content/words/class-page.ts'
import type { Read } from '../../class/choice.ts'
import { readGroups, readPupils } from '../../class/choice.ts'
import { nameOfMeasure } from '../../class/class.ts'
import type { Measured } from '../../class/spread.ts'
import { sizeName } from '../../class/spread.ts'
import { MINUTES } from '../../class/words.ts'
import { OwnCards } from '../keeping/OwnCards.tsx'
import type { Entry } from '../keeping/shelf.ts'
import { LINKED } from './find-card.ts'
import type { ClassOffer } from './offer.ts'
import type { ClassState } from './state.ts'

const PAPERS = [
  ['a4', says.a4],
  ['letter', says.usLetter],
  ['a3', says.a3],
  ['legal', says.usLegal],
  ['tabloid', says.usTabloid],
] as const

interface PickProps {
  readonly label: string
  readonly value: string
  readonly options: readonly (readonly [value: string, words: string])[]
  readonly onPick: (value: string) => void
}

/** A word of the sentence that is chosen from a few. */
function Pick({ label, value, options, onPick }: PickProps): JSX.Element {
  return (
    <select
      class="say"
      aria-label={label}
      value={value}
      onChange={({ currentTarget }) => onPick(currentTarget.value)}
    >
      {options.map(([one, words]) => (
        <option key={one} value={one}>
          {words}
        </option>
      ))}
    </select>
  )
}

interface CountProps {
  readonly label: string
  readonly value: number
  readonly read: (text: string) => Read<number>
  readonly onCount: (value: number) => void
}

/** A number of the sentence that is typed; what is no such number is told, and what was there stays. */
function Count({ label, value, read, onCount }: CountProps): JSX.Element {
  const [text, setText] = useState<string | null>(null)
  const id = useId()
  const found = text === null ? null : read(text)
  const wrong = found && !found.ok ? found.sentence : ''
  return (
    <>
      <input
        class="say say-number"
        type="text"
        inputMode="numeric"
        autocomplete="off"
        aria-label={label}
        aria-invalid={wrong !== ''}
        aria-describedby={wrong === '' ? undefined : id}
        value={text ?? String(value)}
        onInput={({ currentTarget }) => {
          setText(currentTarget.value)
          const next = read(currentTarget.value)
          if (next.ok) onCount(next.value)
        }}
        onBlur={() => {
          if (wrong === '') setText(null)
        }}
      />
      {wrong === '' ? null : (
        <span class="say-wrong" id={id} role="alert">
          {wrong}
        </span>
      )}
    </>
  )
}

interface YourClassProps {
  readonly offer: ClassOffer
  readonly own: readonly Entry[]
  readonly isLinked: boolean
  /** What can differ from sheet to sheet; null: not known yet. */
  readonly sizes: readonly Measured[] | null
  readonly state: ClassState
  readonly onState: (change: (before: ClassState) => ClassState) => void
}

/** The class in one sentence: what is pale blue can be changed. */
export function YourClass({ offer, own, isLinked, sizes, state, onState }: YourClassProps): JSX.Element {
  const { choice } = state
  const set = (part: Partial<ClassState['choice']>) =>
    onState((before) => ({ ...before, choice: { ...before.choice, ...part } }))
  const group = (kind: string) => offer.cards.filter(({ key }) => key.startsWith(`${kind}:`))
  const named: readonly (readonly [string, string])[] = sizes
    ? sizes.map((one) => [nameOfMeasure(one), says.itsOwn(sizeName(one))])
    : [[choice.differs === 'none' ? 'first' : choice.differs, says.itsOwnSize]]
  const [first] = named
  const differs = named.some(([name]) => name === choice.differs)
    ? choice.differs
    : choice.differs === 'none' || !first
      ? 'none'
      : first[0]
  /** By their names in the sentence. */
  const asked: Readonly<Record<string, JSX.Element>> = {
    card: (
      <select
        class="say"
        aria-label={says.card}
        value={state.card}
        onChange={({ currentTarget }) => {
          const card = currentTarget.value
          onState((before) => ({
            ...before,
            card,
            readings: {},
            choice: { ...before.choice, differs: 'first' },
          }))
        }}
      >
        {isLinked ? <option value={LINKED}>{says.cardOfLink}</option> : null}
        <optgroup label={says.chapters}>
          {group('chapter').map(({ key, title }) => (
            <option key={key} value={key}>
              {title}
            </option>
          ))}
        </optgroup>
        <optgroup label={says.nightGarden}>
          {group('garden').map(({ key, title }) => (
            <option key={key} value={key}>
              {title}
            </option>
          ))}
        </optgroup>
        <OwnCards own={own} />
      </select>
    ),
    pupils: (
      <Count
        label={says.pupils}
        value={choice.pupils}
        read={readPupils}
        onCount={(pupils) => set({ pupils, groups: Math.min(choice.groups, pupils) })}
      />
    ),
    ages: (
      <Pick
        label={says.ages}
        value={choice.ages}
        options={offer.lessons.map(({ ages, label }) => [ages, label.toLowerCase()] as const)}
        onPick={(ages) => {
          const lesson = offer.lessons.find((one) => one.ages === ages)
          if (lesson)
            onState((before) => ({
              ...before,
              minutes: null,
              choice: { ...before.choice, ages: lesson.ages },
            }))
        }}
      />
    ),
    groups: (
      <Count
        label={says.groups}
        value={choice.groups}
        read={(text) => readGroups(text, choice.pupils)}
        onCount={(groups) => set({ groups })}
      />
    ),
    minutes: (
      <Pick
        label={says.minutesLabel}
        value={String(choice.minutes)}
        options={MINUTES.map((m) => [String(m), says.minutes(m)] as const)}
        onPick={(text) => {
          const minutes = MINUTES.find((m) => String(m) === text)
          if (minutes)
            onState((before) => ({ ...before, minutes: null, choice: { ...before.choice, minutes } }))
        }}
      />
    ),
    paper: (
      <Pick
        label={says.paper}
        value={choice.paper}
        options={PAPERS}
        onPick={(text) => {
          const paper = PAPERS.find(([name]) => name === text)?.[0]
          if (paper) set({ paper })
        }}
      />
    ),
    print: (
      <Pick
        label={says.print}
        value={choice.large ? 'large' : 'usual'}
        options={[
          ['usual', says.ordinaryPrint],
          ['large', says.largePrint],
        ]}
        onPick={(print) => set({ large: print === 'large' })}
      />
    ),
    differs: (
      <Pick
        label={says.whatDiffers}
        value={differs}
        options={[...named, ['none', says.sameSizes]]}
        onPick={(name) =>
          onState((before) => ({ ...before, readings: {}, choice: { ...before.choice, differs: name } }))
        }
      />
    ),
    picture: (
      <Pick
        label={says.picture}
        value={choice.picture ? 'lines' : 'none'}
        options={[
          ['none', says.noPicture],
          ['lines', says.pictureToColour],
        ]}
        onPick={(name) => set({ picture: name === 'lines' })}
      />
    ),
    certificate: (
      <Pick
        label={says.certificate}
        value={choice.certificate ? 'yes' : 'no'}
        options={[
          ['no', says.noCertificate],
          ['yes', says.withCertificate],
        ]}
        onPick={(name) => set({ certificate: name === 'yes' })}
      />
    ),
  }
  return (
    <p class="class-says">
      {says
        .classInOneSentence(differs !== 'none')
        .split(/[{}]/)
        .map((part) => (asked[part] ? <Fragment key={part}>{asked[part]}</Fragment> : part))}
    </p>
  )
}
