import type { JSX } from 'preact'
import * as says from '../../../../content/words/dummy/over.ts'
import type { Point } from '../../../drawing/pen/marks.ts'
import type { FoldPlace } from '../../../drawing/view/places.ts'
import { foldPlaces } from '../../../drawing/view/places.ts'
import { roomMarks, trailOf } from '../../../drawing/view/trails.ts'
import type { View } from '../../../drawing/view/view.ts'
import type { Design, Vec3 } from '../../../paper/index.ts'
import { compile, kindOf, tipAt } from '../../../paper/index.ts'
import { hiddenIn } from '../../keeping/aside.ts'
import { useFreeRoom } from '../desk/free-room.ts'
import type { Chosen } from '../model/chosen.ts'
import { called, ownerOf, sameThing } from '../model/chosen.ts'
import type { Dummy } from '../model/dummy-model.ts'
import { PathPad } from './PathPad.tsx'
import { TipGrip } from './TipGrip.tsx'
import { WishGrip } from './WishGrip.tsx'

/** Rings nearer to one another than this are left to the outline, px. */
const APART = 40

const far = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1])

/** The folds that have room for a ring of their own, clear of what is there already, the first ones first. */
function roomy(
  places: readonly FoldPlace[],
  taken: readonly Point[],
): readonly (FoldPlace & { readonly at: Point })[] {
  const kept: (FoldPlace & { readonly at: Point })[] = []
  for (const place of places) {
    const at = place.seen.find(
      (one) => ![...taken, ...kept.map((other) => other.at)].some((other) => far(one, other) < APART),
    )
    if (at) kept.push({ ...place, at })
  }
  return kept
}

/** Ridges before side folds: they are what most is built on. */
const firstRidges = (places: readonly FoldPlace[]): readonly FoldPlace[] =>
  [...places].sort((a, b) => Number(b.name.endsWith('ridge')) - Number(a.name.endsWith('ridge')))

const line = (points: readonly Point[]): string =>
  points.map(([x, y]) => `${x.toFixed(1)},${y.toFixed(1)}`).join(' ')

/** Panels that one design has and another has not, as they would stand. */
function newPanels(now: Design, next: Design, opening: number): readonly (readonly Vec3[])[] {
  const there = new Set(now.mechanisms.map(({ id }) => id))
  const poser = compile(next)
  const { panels } = poser(opening)
  return poser.model.panels
    .filter(({ owner }) => owner >= 0 && !there.has(poser.model.builds[owner]?.mechanism.id ?? ''))
    .map(({ name }) => panels[name] ?? [])
}

interface OverProps {
  readonly dummy: Dummy
  readonly drawn: View
}

/** What lies over the standing card: the fold taken up, what is tried on it, and a ring on each fold that can be pressed. */
export function Over({ dummy, drawn }: OverProps): JSX.Element {
  const { bench, chosen, trying } = dummy
  const { opening, design } = bench.state.value
  const taken = chosen.value
  const tried = trying.value
  const owner = ownerOf(design, taken)
  const [, , width, height] = drawn.box
  const moving = bench.held.value !== null || bench.playing.value
  const out = hiddenIn(design, dummy.aside.value)
  const isOut = owner !== undefined && out.has(owner.id)
  const isLocked = owner !== undefined && dummy.aside.value.locked.includes(owner.id)
  const seen = dummy.shown.value.poser.value
  // Where folds are seen is asked only where rings are drawn: it takes longer than a frame on a crowded card.
  const places = foldPlaces(seen, opening, drawn.toScreen, moving ? [] : drawn.marks)
  const marked = places.find(({ name }) => taken?.what === 'fold' && taken.name === name)
  const index = owner ? design.mechanisms.indexOf(owner) : -1
  // Rings keep clear of the tip, which is a handle.
  const grips = index < 0 || isOut ? [] : [drawn.toScreen(tipAt(bench.poser.value, index))]
  const wishing = dummy.slip.value === 'wish'
  const free = useFreeRoom(dummy, taken?.what === 'face' ? taken.name : null)
  return (
    <>
      <svg class="over" viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
        {free && !isOut && !bench.playing.value
          ? roomMarks(bench.poser.value, opening, free, drawn.toScreen).map(({ outline, share }, k) => (
              <polygon
                key={k}
                class="over-room"
                style={`--share:${share.toFixed(2)}`}
                points={line(outline)}
              />
            ))
          : null}
        {owner && !isOut && !wishing && kindOf(owner).aims.length > 0 ? (
          // A picture of its own in this one: what of the trail is out of the picture is cut off.
          <svg aria-hidden="true" {...{ width, height }}>
            <polyline class="over-trail" points={line(trailOf(design, owner.id, drawn.toScreen))} />
          </svg>
        ) : null}
        {marked ? (
          <>
            <polyline class="over-halo" points={line(marked.ends)} />
            <polyline class="over-fold" points={line(marked.ends)} />
          </>
        ) : null}
        {tried
          ? newPanels(design, tried, opening).map((panel, k) => (
              <polygon key={k} class="over-new" points={line(panel.map(drawn.toScreen))} />
            ))
          : null}
      </svg>
      {moving || wishing
        ? null
        : roomy(firstRidges(places), grips).map(({ name, at }) => {
            const thing: Chosen = { what: 'fold', name }
            return (
              <button
                key={name}
                type="button"
                class="fold-ring"
                tabIndex={-1}
                aria-label={says.buildOn(called(thing))}
                aria-pressed={sameThing(thing, taken)}
                title={called(thing)}
                style={`left:${at[0].toFixed(1)}px;top:${at[1].toFixed(1)}px`}
                onPointerDown={(event) => event.stopPropagation()}
                onClick={() => dummy.choose(thing)}
              />
            )
          })}
      {wishing && dummy.draws.value ? <PathPad {...{ dummy, drawn }} /> : null}
      {wishing ? (
        <WishGrip {...{ dummy, drawn }} />
      ) : owner && !isOut && !isLocked ? (
        <TipGrip {...{ dummy, drawn, owner }} />
      ) : null}
    </>
  )
}
