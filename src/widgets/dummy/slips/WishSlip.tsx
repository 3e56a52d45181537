import type { JSX } from 'preact'
import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import * as slipSays from '../../../../content/words/dummy/slips.ts'
import * as says from '../../../../content/words/dummy/wish.ts'
import type { Find, Wish } from '../../../paper/index.ts'
import { kindNamed, settable, settingOf } from '../../../paper/index.ts'
import { reasonOf } from '../../model/loading.ts'
import { lengthUnit } from '../../model/page.ts'
import { digits, shown, small } from '../../state/format.ts'
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
        (error) => setFound({ finds: [], done: true, none: slipSays.notWorkedOut(reasonOf(error)) }),
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
      {says.aTip}{' '}
      <Blank
        label={says.howHigh}
        value={rise}
        unit="mm"
        min={1}
        max={2 * width}
        onSet={(value) => put({ rise: value })}
      />{' '}
      {says.highAnd}{' '}
      <Blank
        label={says.howFar}
        value={along}
        unit="mm"
        min={-height}
        max={2 * height}
        onSet={(value) => put({ along: value })}
      />{' '}
      {says.fromYourEndWhenOpen}{' '}
      <Blank label={says.opening} value={now.opening} unit="deg" {...WISH_OPENING} onSet={open} />
      {says.itComes}{' '}
      <Pick
        label={says.comesFrom}
        value={now.from ?? ''}
        of={ORIGINS}
        onPick={(value) => set('from', value)}
      />
      {says.shutIt}{' '}
      <Pick
        label={says.whenShut}
        value={now.hidden === false ? 'free' : 'hidden'}
        of={SHUT}
        onPick={(value) => set('hidden', value === 'free' ? false : undefined)}
      />
      {says.sentenceEnd}{' '}
      {more ? (
        <>
          {says.itStands}{' '}
          <Blank
            label={says.howFarAside}
            value={aside}
            unit="mm"
            min={-width}
            max={width}
            onSet={(value) => put({ aside: value })}
          />{' '}
          {says.toTheRightMade}{' '}
          <Pick label={says.madeOf} value={now.made ?? ''} of={MADE} onPick={(value) => set('made', value)} />
          {says.thereItStays}{' '}
          <Blank
            label={says.staysOff}
            value={now.above ?? 0}
            unit="mm"
            min={0}
            max={2 * width}
            onSet={(value) => set('above', value > 0 ? value : undefined)}
          />{' '}
          {says.offThePage}
        </>
      ) : (
        <button type="button" class="link" onClick={() => setMore(true)}>
          {says.addCondition}
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
  const like = says.wayIs({
    miss: miss < 0.05 ? null : shown(miss, 'mm', unit),
    strays: wish.value.path ? shown(strays, 'mm', unit) : null,
    layers: facts.layers,
    joints: facts.joints,
    paper: facts.paper.map(({ width, height }) =>
      says.by(digits(width, 'mm', unit), shown(height, 'mm', unit)),
    ),
    sway: shown(sway, 'mm', unit),
  })
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
        <strong>{says.oneOnAnother(names)}</strong>
        <p>{like}</p>
        <details class="way-sizes">
          <summary>{says.sizes}</summary>
          <ul>
            {parts.flatMap((part, k) =>
              settable(part).map(({ name, label, unit: of }) => {
                const size = shown(settingOf(part, name), of, unit)
                return (
                  <li key={`${k} ${name}`}>
                    {parts.length > 1
                      ? says.sizeOfPart(names[k] ?? part.id, small(label), size)
                      : says.sizeOf(label, size)}
                  </li>
                )
              }),
            )}
          </ul>
        </details>
        <p class="way-found-acts">
          {chapter ? <a href={chapter.href}>{chapter.title}</a> : null}
          <button
            type="button"
            class="button"
            onFocus={show}
            onBlur={hide}
            onClick={() => {
              dummy.put(design, says.onCard, last ? { what: 'part', name: last.id } : undefined)
              dummy.slip.value = null
            }}
          >
            {says.useThis}
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
  const count = finds.length
  const told = !done
    ? count === 0
      ? says.looking
      : says.lookingFound(count)
    : count === 0
      ? none || says.noWay
      : says.ways(count)
  useEffect(() => {
    if (done && announced.current !== told) {
      announced.current = told
      dummy.told.value = told
    }
  }, [dummy, done, told])
  return (
    <Slip dummy={dummy} title={says.title}>
      <Sentence dummy={dummy} />
      <WishPath dummy={dummy} />
      <p class="slip-says">{told}</p>
      <ul class="ways-found">
        {finds.map((find) => (
          <Way key={JSON.stringify(find.design.mechanisms.slice(-2))} {...{ dummy, find, teaches }} />
        ))}
      </ul>
      <p class="quiet">{says.dragTip}</p>
    </Slip>
  )
}
