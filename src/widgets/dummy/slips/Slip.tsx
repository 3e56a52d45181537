import type { ComponentChildren, JSX } from 'preact'
import { useLayoutEffect, useRef } from 'preact/hooks'
import * as says from '../../../../content/words/dummy/slips.ts'
import { intoSight } from '../in-sight.ts'
import type { Dummy } from '../model/dummy-model.ts'
import { noteOpener, putAway } from './put-away.ts'

interface SlipProps {
  readonly dummy: Dummy
  readonly title: string
  /** What it is about, where its title changes while one works beside it: only of something else does it take the focus. */
  readonly about?: string
  readonly children: ComponentChildren
  /** It cannot be put away. */
  readonly stays?: boolean
}

/** A slip of paper beside the card: what can be done here. Escape puts it away. */
export function Slip({ dummy, title, about = title, children, stays = false }: SlipProps): JSX.Element {
  const heading = useRef<HTMLHeadingElement>(null)
  const first = useRef(true)
  // At once: a key that is pressed next is pressed here.
  useLayoutEffect(() => {
    // What stands there when the page opens takes no focus.
    if ((!stays || !first.current) && heading.current) {
      noteOpener()
      heading.current.focus({ preventScroll: true })
      intoSight(heading.current, 'anywhere')
    }
    first.current = false
  }, [about, stays])
  return (
    <section
      class="dummy-slip"
      aria-label={title}
      onKeyDown={(event) => {
        if (event.key !== 'Escape' || stays) return
        event.stopPropagation()
        putAway(dummy)
      }}
    >
      <header class="slip-head">
        <h2 tabIndex={-1} ref={heading}>
          {title}
        </h2>
        {stays ? null : (
          <button type="button" class="press" aria-label={says.putAway} onClick={() => putAway(dummy)}>
            ×
          </button>
        )}
      </header>
      {children}
    </section>
  )
}
