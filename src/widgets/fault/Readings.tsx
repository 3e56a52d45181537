import type { JSX } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'
import * as says from '../../../content/words/fault-readings.ts'
import type { Design } from '../../paper/index.ts'
import { isRead, nameOf, opensTo } from '../../paper/index.ts'
import { fromGarden } from '../keeping/from-garden.ts'
import { OwnCards } from '../keeping/OwnCards.tsx'
import { isOwn, ownCard, ownCards } from '../keeping/own-cards.ts'
import type { Entry } from '../keeping/shelf.ts'
import type { Further } from '../measure/compare.ts'
import { compare, compareSeveral, comparisonSays, severalSay } from '../measure/compare.ts'
import { lengthUnit } from '../model/page.ts'
import { DEFAULT_CAMERA } from '../state/config.ts'
import { shown, typed, unitSign } from '../state/format.ts'
import { likely } from './likely.ts'

interface ReadingsProps {
  /** The cards to choose from, and the chapters that they are of. */
  readonly cards: readonly { readonly card: string; readonly title: string }[]
}

type Loaded = { readonly name: string } & ({ readonly design: Design } | { readonly trouble: string })

type What = 'rise' | Further

const ASKED: readonly {
  readonly what: What
  readonly says: string
  readonly unit: 'mm' | 'deg'
  readonly most: number
}[] = [
  { what: 'rise', says: says.tipAbovePage, unit: 'mm', most: 1000 },
  { what: 'reach', says: says.edgeToTip, unit: 'mm', most: 1000 },
  { what: 'stop', says: says.opensNoFarther, unit: 'deg', most: 180 },
]

/** The mechanisms of which a ruler reads something. */
const readOf = (design: Design): readonly string[] =>
  design.mechanisms.flatMap(({ id }, k) => (isRead(design, k) ? [id] : []))

/** A card of the book by its name, or one of the reader's own by its key. */
async function cardOf(name: string): Promise<Loaded | null> {
  if (isOwn(name)) {
    const card = await ownCard(name)
    return typeof card === 'string' ? { name, trouble: card } : { name, design: card }
  }
  const found = await fromGarden(`?from=${name}`)
  if (!found) return null
  const { read } = found
  return read.read ? { name, design: read.design } : { name, trouble: read.sentence }
}

/** The same, fetched once for each. */
function useCard(name: string): Loaded | null {
  const [loaded, setLoaded] = useState<Loaded | null>(null)
  useEffect(() => {
    let isWanted = true
    void cardOf(name).then((found) => {
      if (isWanted && found) setLoaded(found)
    })
    return () => {
      isWanted = false
    }
  }, [name])
  return loaded?.name === name ? loaded : null
}

/** What a ruler reads on a card of the book or of one's own, and what most likely went wrong with it. */
export function Readings({ cards }: ReadingsProps): JSX.Element {
  const [chosen, setChosen] = useState<string | null>(null)
  const [own, setOwn] = useState<readonly Entry[]>([])
  useEffect(() => void ownCards().then(setOwn), [])
  const guessed = cards.find(({ card }) => card === likely.value) ?? cards[0]
  const name = chosen ?? guessed?.card ?? ''
  const loaded = useCard(name)
  const design = loaded && 'design' in loaded ? loaded.design : null
  const ids = design ? readOf(design) : []
  const [part, setPart] = useState('')
  const id = ids.includes(part) ? part : (ids[0] ?? '')
  const [opening, setOpening] = useState('90')
  const [texts, setTexts] = useState<Readonly<Partial<Record<What, string>>>>({})
  // Left to themselves: what was typed before the page woke is kept, and compared then.
  const root = useRef<HTMLDivElement>(null)
  useEffect(() => {
    const { opening: opened = '90', ...read } = Object.fromEntries(
      Array.from(root.current?.querySelectorAll('input') ?? [], (input) => [input.name, input.value]),
    )
    setOpening(opened)
    setTexts(read)
  }, [])
  const length = lengthUnit.value
  const at = typed(opening, 'deg', length)
  const most = design && id !== '' ? opensTo(design, id) : 180
  const isOpening = at !== null && at >= 1 && at <= most
  const given: Partial<Record<What, number>> = {}
  const wrong: What[] = []
  for (const { what, unit, most: far } of ASKED) {
    const text = texts[what]?.trim() ?? ''
    if (text === '') continue
    const value = typed(text, unit, length)
    if (value === null || value < 0 || value > far) wrong.push(what)
    else given[what] = value
  }
  const isGiven = Object.keys(given).length > 0
  const config = { camera: DEFAULT_CAMERA, opening: at ?? 90, lead: id, fields: [], handles: [] }
  const tell = (card: Design, opened: number): { says: readonly string[]; causes: readonly string[] } => {
    const where = { id, opening: opened }
    const { rise, ...further } = given
    // Of one reading alone the nearest slips are told, as in a chapter; of several what explains them together.
    if (rise !== undefined && Object.keys(further).length === 0) {
      const one = compare(card, config, null, where, rise)
      const model = says.modelSays(opened, shown(one.model, 'mm', length))
      return { says: [model, ...comparisonSays(one, length, id)], causes: [] }
    }
    return severalSay(compareSeveral(card, config, where, given), opened, length, id)
  }
  const said = design && id !== '' && isGiven && isOpening ? tell(design, at) : null
  return (
    <div class="fault-readings" ref={root}>
      <p class="fault-sentence">
        <label>
          {says.cardBefore}{' '}
          <select value={name} onChange={(event) => setChosen(event.currentTarget.value)}>
            <optgroup label={says.fromTheChapter}>
              {cards.map(({ card, title }) => (
                <option key={card} value={card}>
                  {title}
                </option>
              ))}
            </optgroup>
            <OwnCards own={own} />
          </select>
        </label>
        {ids.length > 1 ? (
          <label>
            {says.partBefore}{' '}
            <select value={id} onChange={(event) => setPart(event.currentTarget.value)}>
              {ids.map((one) => (
                <option key={one} value={one}>
                  {nameOf(one)}
                </option>
              ))}
            </select>
          </label>
        ) : null}
        <label>
          {says.openBefore}{' '}
          <input
            type="text"
            inputMode="decimal"
            autocomplete="off"
            name="opening"
            defaultValue={opening}
            aria-invalid={!isOpening}
            onInput={(event) => setOpening(event.currentTarget.value)}
          />
          {says.openAfter}
        </label>
      </p>
      {loaded && 'trouble' in loaded ? <p role="alert">{loaded.trouble}</p> : null}
      {isOpening ? null : <p role="alert">{says.openingIs(Math.floor(most))}</p>}
      {design && ids.length === 0 ? (
        <p>{says.nothingRises}</p>
      ) : (
        <ul class="fault-fields">
          {ASKED.map(({ what, says: before, unit, most: far }) => (
            <li key={what}>
              <label>
                {before}{' '}
                <input
                  type="text"
                  inputMode="decimal"
                  autocomplete="off"
                  name={what}
                  defaultValue={texts[what] ?? ''}
                  aria-invalid={wrong.includes(what)}
                  onInput={(event) => setTexts({ ...texts, [what]: event.currentTarget.value })}
                />{' '}
                {unitSign(unit, length)}
              </label>
              {wrong.includes(what) ? (
                <span role="alert" class="refusal">
                  {says.numberUpTo(far)}
                </span>
              ) : null}
            </li>
          ))}
        </ul>
      )}
      <div role="status" class="fault-said">
        {said ? (
          <>
            {said.says.map((sentence) => (
              <p key={sentence}>{sentence}</p>
            ))}
            <ul>
              {said.causes.map((cause) => (
                <li key={cause}>{cause}</li>
              ))}
            </ul>
          </>
        ) : (
          <p class="quiet">{says.typeAReading}</p>
        )}
      </div>
    </div>
  )
}
