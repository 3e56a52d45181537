import { render } from 'preact'
import { Wall } from './Wall.tsx'

/** Puts the tools over the page, or away again; `from` gets the focus back. */
export function openWall(from: HTMLElement | null): void {
  if (document.querySelector('.wall-place')) return
  const place = document.createElement('div')
  place.className = 'wall-place'
  document.body.append(place)
  const close = () => {
    render(null, place)
    place.remove()
    from?.focus()
  }
  render(<Wall onClose={close} />, place)
}
