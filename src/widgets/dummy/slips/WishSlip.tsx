import type { JSX } from 'preact'
import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import type { Find, Wish } from '../../../paper/index.ts'
import { kindNamed } from '../../../paper/index.ts'
import { reasonOf } from '../../model/loading.ts'
import { lengthUnit } from '../../model/page.ts'
import { shown } from '../../state/format.ts'
import { opened } from '../../state/state.ts'
import type { Ask } from '../desk/desk.ts'
import { deskFor } from '../desk/desk.ts'
import type { Dummy } from '../model/dummy-model.ts'
import type { WishedPlace } from '../model/wishes.ts'
import { MADE, ORIGINS, placeOfWish, SHUT, WISH_OPENING, wishAt } from '../model/wishes.ts'
import { Blank, Pick } from './Blanks.tsx'
import { Slip } from './Slip.tsx'
import { Thumb } from './Thumb.tsx'
import { WishPath } from './WishPath.tsx'

/** Which chapter teaches a kind: its address and its title. */
export type Teaches = Readonly<Record<string, { readonly href: string; readonly title: string }>>

interface Found {
  readonly finds: readonly Find[]
  readonly done: boolean
  /** Why there is none. */
  readonly none: string
}

/** A wish that rests so long is looked for, ms. */
const REST = 250

const NOTHING: Found = { finds: [], done: false, none: '' }

const sameFind = (a: Find, b: Find): boolean => JSON.stringify(a.design) === JSON.stringify(b.design)

/** What was shown stays where it was; what is new comes behind it. */
const joined = (shown: readonly Find[], next: readonly Find[]): readonly Find[] => {
  const kept = shown.filter((one) => next.some((other) => sameFind(one, other)))
  return [...kept, ...next.filter((one) => !kept.some((other) => sameFind(one, other)))]
}

/** Nothing changes its place under a pointer, or under the keys. */
const isPointedAt = (): boolean => document.querySelector('.ways-found:is(:hover, :focus-within)') !== null

/** What gives a wish, looked for beside the page as long as the slip lies there. */
function useFinds({ bench, wish }: Dummy): Found {
  const design = bench.design.value
  const wished = wish.value
  const busy = bench.held.value !== null
  const desk = useMemo(() => deskFor<Extract<Ask, { what: 'find' }>>(), [])
  const [found, setFound] = useState<Found>(NOTHING)
  /** What the last search was about. */
  const [asked, setAsked] = useState<readonly unknown[]>([])
  useEffect(() => {
    if (busy) return undefined
    const wait = setTimeout(() => {
      setFound(NOTHING)
      setAsked([design, wished])
      desk.ask(
        { what: 'find', design, wish: wished },
        ({ finds, last, none }) =>
          setFound((before) => ({
            finds: last && !isPointedAt() ? finds : joined(before.finds, finds),
            done: last,
            none,
          })),
        (error) =>
          setFound({ finds: [], done: true, none: `This could not be worked out: ${reasonOf(error)}.` }),
      )
    }, REST)
    return () => {
      clearTimeout(wait)
      desk.callOff()
    }
  }, [desk, design, wished, busy])
  // Of another wish than the one that stands there nothing is found yet.
  const isOfThis = asked[0] === design && asked[1] === wished
  return { ...found, done: found.done && isOfThis }
}

/** The same wish with one of its conditions set, or dropped (undefined). */
function withCondition(wish: Wish, name: keyof Wish, value: unknown): Wish {
  const { [name]: _gone, ...rest } = wish
  return (value === undefined ? rest : { ...rest, [name]: value }) as Wish
}

/** The wish as a sentence with blanks to fill in. */
function Sentence({ dummy }: { readonly dummy: Dummy }): JSX.Element {
  const { wish, bench } = dummy
  const { width, height } = bench.design.value.card
  const now = wish.value
  const { rise, along, aside } = placeOfWish(now)
  const [more, setMore] = useState(false)
  const put = (place: Partial<WishedPlace>) => {
    wish.value = wishAt(wish.peek(), place)
  }
  const set = (name: keyof Wish, value: unknown) => {
    wish.value = withCondition(wish.peek(), name, value === '' ? undefined : value)
  }
  const open = (opening: number) => {
    wish.value = wishAt(wish.peek(), {}, opening)
    bench.step('opening', (state) => opened(state, opening))
    bench.rest()
  }
  return (
    <div class="wish-sentence">
      A tip{' '}
      <Blank
        label="How high over the page"
        value={rise}
        unit="mm"
        min={1}
        max={2 * width}
        onSet={(value) => put({ rise: value })}
      />{' '}
      high,{' '}
      <Blank
        label="How far from my end"
        value={along}
        unit="mm"
        min={-height}
        max={2 * height}
        onSet={(value) => put({ along: value })}
      />{' '}
      from my end, when the card is open{' '}
      <Blank label="Opening of the wish" value={now.opening} unit="deg" {...WISH_OPENING} onSet={open} />. It
      comes{' '}
      <Pick
        label="From where it comes"
        value={now.from ?? ''}
        of={ORIGINS}
        onPick={(value) => set('from', value)}
      />
      . Shut, it{' '}
      <Pick
        label="When the card is shut"
        value={now.hidden === false ? 'free' : 'hidden'}
        of={SHUT}
        onPick={(value) => set('hidden', value === 'free' ? false : undefined)}
      />
      .{' '}
      {more ? (
        <>
          It stands{' '}
          <Blank
            label="How far to the right of the gutter"
            value={aside}
            unit="mm"
            min={-width}
            max={width}
            onSet={(value) => put({ aside: value })}
          />{' '}
          to the right of the gutter, and is made{' '}
          <Pick
            label="What it is made of"
            value={now.made ?? ''}
            of={MADE}
            onPick={(value) => set('made', value)}
          />
          . From there on it stays{' '}
          <Blank
            label="How far it stays off the page"
            value={now.above ?? 0}
            unit="mm"
            min={0}
            max={2 * width}
            onSet={(value) => set('above', value > 0 ? value : undefined)}
          />{' '}
          off the page.
        </>
      ) : (
        <button type="button" class="link" onClick={() => setMore(true)}>
          Add a condition
        </button>
      )}
    </div>
  )
}

interface WayProps {
  readonly dummy: Dummy
  readonly find: Find
  readonly teaches: Teaches
}

const counted = (count: number, one: string, many: string): string =>
  count === 0 ? '' : `${count} ${count === 1 ? one : many}`

function Way({ dummy, find, teaches }: WayProps): JSX.Element {
  const { bench, trying, wish } = dummy
  const { design, ids, facts, sway, miss, strays } = find
  const parts = design.mechanisms.filter(({ id }) => ids.includes(id))
  const names = parts.map(({ kind }) => kindNamed(kind)?.label ?? kind)
  const last = parts.at(-1)
  const chapter = last ? teaches[last.kind] : undefined
  const unit = lengthUnit.value
  const show = () => {
    trying.value = design
  }
  const hide = () => {
    if (trying.peek() === design) trying.value = null
  }
  const says = [
    miss < 0.05 ? 'to the point' : `${shown(miss, 'mm', unit)} off`,
    ...(wish.value.path ? [`at most ${shown(strays, 'mm', unit)} off its way`] : []),
    `${facts.layers} layers shut`,
    counted(facts.joints, 'place to glue', 'places to glue') || 'no glue',
    `a millimetre off moves it ${shown(sway, 'mm', unit)}`,
  ]
  return (
    <li class="way-found" onPointerEnter={show} onPointerLeave={hide}>
      <Thumb
        design={design}
        opening={wish.value.opening}
        camera={bench.state.value.camera}
        lit={ids}
        moves={trying.value === design}
        width={150}
        height={112}
      />
      <div>
        <strong>{names.join(', and on it ')}</strong>
        <p>{says.join(', ')}.</p>
        <p class="way-found-acts">
          {chapter ? <a href={chapter.href}>{chapter.title}</a> : null}
          <button
            type="button"
            class="button"
            onFocus={show}
            onBlur={hide}
            onClick={() => {
              dummy.put(
                design,
                'Your wish is on the card. Undo takes it away.',
                last ? { what: 'part', name: last.id } : undefined,
              )
              dummy.slip.value = null
            }}
          >
            Use this
          </button>
        </p>
      </div>
    </li>
  )
}

/** A wish: where a tip should be, and mechanisms that bring it there, each sound. */
export function WishSlip({
  dummy,
  teaches,
}: {
  readonly dummy: Dummy
  readonly teaches: Teaches
}): JSX.Element {
  const { finds, done, none } = useFinds(dummy)
  const announced = useRef('')
  const { bench, wish } = dummy
  useEffect(() => {
    // The card stands as it does in the wish.
    bench.step('opening', (state) => opened(state, wish.peek().opening))
    bench.rest()
    return () => {
      dummy.draws.value = false
    }
  }, [dummy, bench, wish])
  const count = `${finds.length} ${finds.length === 1 ? 'way' : 'ways'}`
  const says = !done
    ? finds.length === 0
      ? 'Looking …'
      : `Looking … ${finds.length} so far.`
    : finds.length === 0
      ? none || 'There is no such way.'
      : `${count}. All shut flat and clear the rest.`
  useEffect(() => {
    if (done && announced.current !== says) {
      announced.current = says
      dummy.told.value = says
    }
  }, [dummy, done, says])
  return (
    <Slip dummy={dummy} title="Your wish">
      <Sentence dummy={dummy} />
      <WishPath dummy={dummy} />
      <p class="slip-says">{says}</p>
      <ul class="ways-found">
        {finds.map((find) => (
          <Way key={JSON.stringify(find.design.mechanisms.slice(-2))} {...{ dummy, find, teaches }} />
        ))}
      </ul>
      <p class="quiet">
        Drag the blue tip on the card, or change a number. The wish is no part of the card until you use a
        way.
      </p>
    </Slip>
  )
}
