import { render } from 'preact'
import type { AtWall } from './at-wall.ts'
import { PageWall } from './PageWall.tsx'

/** Puts the tools over the page, or away again; `from` gets the focus back. */
export function openWall(from: HTMLElement | null, at: Pick<AtWall, 'keys' | 'rest'>): void {
  if (document.querySelector('.wall-place')) return
  const place = document.createElement('div')
  place.className = 'wall-place'
  document.body.append(place)
  const close = () => {
    render(null, place)
    place.remove()
    from?.focus()
  }
  render(<PageWall at={at} onClose={close} />, place)
}
