import './fields.css'
import type { ComponentChildren, JSX } from 'preact'
import { useId, useState } from 'preact/hooks'

interface TipProps {
  /** The word that is explained. */
  readonly label: string
  readonly children: ComponentChildren
}

/**
 * A word that explains itself: on hover, on focus, and on a press (for touch). Escape shuts it, and the
 * pointer may wander into the explanation without losing it (WCAG 2.2, 1.4.13).
 */
export function Tip({ label, children }: TipProps): JSX.Element {
  const id = useId()
  const [open, setOpen] = useState(false)
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: only watches whether the pointer is over both parts
    <span class="tip" data-open={open} onMouseEnter={() => setOpen(true)} onMouseLeave={() => setOpen(false)}>
      <button
        type="button"
        class="tip-word"
        aria-describedby={id}
        onFocus={() => setOpen(true)}
        onBlur={() => setOpen(false)}
        onClick={() => setOpen(true)}
        onKeyDown={(event) => {
          if (event.key !== 'Escape' || !open) return
          event.stopPropagation()
          setOpen(false)
        }}
      >
        {label}
      </button>
      <span class="tip-says" role="tooltip" id={id}>
        {children}
      </span>
    </span>
  )
}
