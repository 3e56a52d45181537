import '../drawing/pen/marks.css'
import type { JSX } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'
import * as words from '../../content/words/site/choose.ts'
import type { Drawing } from '../drawing/pen/marks.ts'
// What draws comes first, as on the home page: in another order what wakes a bench squeezes worse.
import { SIDE_BY_SIDE, sideBySide } from '../drawing/view/side-by-side.ts'
import type { Design, Poser } from '../paper/index.ts'
import { compile } from '../paper/index.ts'
import { RangeField } from '../widgets/fields/RangeField.tsx'
import { Figure } from '../widgets/figures/Figure.tsx'
import { wantsCalm } from '../widgets/model/calm.ts'
import { fetched } from '../widgets/model/loading.ts'

/** One mechanism as the page tells of it: words and numbers as they are shown. */
export interface Choice {
  readonly id: string
  readonly title: string
  /** The address of its picture, and what it shows. */
  readonly picture: string
  readonly says: string
  readonly does: string
  readonly facts: readonly (readonly [name: string, says: string])[]
  readonly ways: readonly string[]
  /** How hard it is, of three. */
  readonly level: number
  readonly work: string
  readonly chapter: { readonly href: string; readonly title: string }
}

interface ChoicesProps {
  readonly choices: readonly Choice[]
  /** The address of all designs, by id. */
  readonly designs: string
}

/** They are at rest when nothing has moved them for this long, ms. */
const REST = 140

/** Seconds from shut to open and back. */
const ROUND = 7

/** How far one press opens them where motion is unwelcome, degrees. */
const STEP = 15

const { from, least, most } = SIDE_BY_SIDE

/** Back and forth, slower at both ends. */
const swung = (phase: number): number => least + ((most - least) / 2) * (1 - Math.cos(phase))

const phaseOf = (opening: number): number => Math.acos(1 - (2 * (opening - least)) / (most - least))

/** A card that is drawn anew while it can be seen. */
function Live({ poser, now, moving }: { poser: Poser; now: number; moving: boolean }): JSX.Element {
  const place = useRef<HTMLDivElement>(null)
  const kept = useRef<Drawing | null>(null)
  const [seen, setSeen] = useState(true)
  useEffect(() => {
    if (!place.current) return undefined
    const watch = new IntersectionObserver(([entry]) => setSeen(entry?.isIntersecting ?? true))
    watch.observe(place.current)
    return () => watch.disconnect()
  }, [])
  if (seen || kept.current === null) kept.current = sideBySide(poser, now, moving)
  return (
    <div ref={place}>
      <Figure drawing={kept.current} />
    </div>
  )
}

/** All mechanisms side by side, which open and shut together: what they do is compared at one look. */
export function Choices({ choices, designs }: ChoicesProps): JSX.Element {
  const [posers, setPosers] = useState<Readonly<Record<string, Poser>> | null>(null)
  const [now, setNow] = useState<number>(from)
  const [moving, setMoving] = useState(false)
  const [playing, setPlaying] = useState(false)
  const rest = useRef(0)
  const move = (opening: number) => {
    setNow(Math.min(most, Math.max(least, opening)))
    setMoving(true)
    clearTimeout(rest.current)
    rest.current = setTimeout(() => setMoving(false), REST) as unknown as number
  }
  useEffect(() => {
    let gone = false
    const wake = async () => {
      const answer = await fetched(designs)
      // The site's own file, checked when the site was built.
      const found = (await answer.json()) as Readonly<Record<string, Design>>
      if (!gone)
        setPosers(Object.fromEntries(Object.entries(found).map(([id, design]) => [id, compile(design)])))
    }
    // Where they cannot be fetched the pictures stay.
    wake().catch(() => {})
    return () => {
      gone = true
      clearTimeout(rest.current)
    }
  }, [designs])
  useEffect(() => {
    if (!playing) return undefined
    const phase = phaseOf(now)
    let began: number | null = null
    let ticket = requestAnimationFrame(function show(time) {
      began ??= time
      move(swung(phase + (2 * Math.PI * (time - began)) / (1000 * ROUND)))
      ticket = requestAnimationFrame(show)
    })
    return () => cancelAnimationFrame(ticket)
    // From where they stand when it begins.
  }, [playing])
  const press = () => {
    if (!wantsCalm()) setPlaying(!playing)
    else move(now >= most ? least : now + STEP)
  }
  return (
    <div class="choices">
      <div class="choices-bar">
        <button type="button" class="button" data-plays={playing} onClick={press} disabled={posers === null}>
          {playing ? words.stop : words.openAndShut}
        </button>
        <span aria-hidden="true">{words.opening}</span>
        <RangeField
          label={words.openingOfAll}
          value={now}
          min={least}
          max={most}
          unit="deg"
          length="mm"
          onSet={(opening) => {
            setPlaying(false)
            move(opening)
          }}
          onRest={() => {}}
        />
        <span class="number" aria-hidden="true">
          {now.toFixed(0)}°
        </span>
      </div>
      <ul class="shown-all">
        {choices.map(({ id, title, picture, says, does, facts, ways, level, work, chapter }) => {
          const poser = posers?.[id]
          return (
            <li class="shown choice" key={id} id={id} data-ways={ways.join(' ')}>
              <div class="choice-figure">
                {poser ? (
                  <Live poser={poser} now={now} moving={moving} />
                ) : (
                  <img src={picture} alt={says} width="348" height="232" loading="lazy" decoding="async" />
                )}
              </div>
              <h2>{title}</h2>
              <p>{does}</p>
              <dl class="choice-facts">
                {facts.map(([name, fact]) => (
                  <div key={name}>
                    <dt>{name}</dt>
                    <dd>{fact}</dd>
                  </div>
                ))}
                <div>
                  <dt>{words.work}</dt>
                  <dd class="shown-hands">
                    <svg class="marks-of-work" viewBox="0 0 46 12" aria-hidden="true">
                      {[0, 1, 2].map((k) => (
                        <path
                          key={k}
                          class={k < level ? 'full' : undefined}
                          d={`M${16 * k + 1} 11 ${16 * k + 7} 1 ${16 * k + 13} 11Z`}
                        />
                      ))}
                    </svg>
                    <span>{work}</span>
                  </dd>
                </div>
              </dl>
              <p class="choice-chapter">
                <a href={chapter.href}>{chapter.title}</a>
              </p>
            </li>
          )
        })}
      </ul>
    </div>
  )
}
