import type { ComponentType, JSX } from 'preact'
import { useRef, useState } from 'preact/hooks'
import * as says from '../../../content/words/wall-notes.ts'
import { notLoaded } from '../model/loading.ts'
import type { AtWall } from './at-wall.ts'
import type { WallProps } from './Wall.tsx'

interface Tools {
  readonly open: () => void
  /** Stands within whatever fills the screen: a dialog, a part of the page. */
  readonly kit: JSX.Element | null
}

/** The tools of a widget that fills the screen by itself: fetched when they are asked for. */
export function useTools(at: AtWall): Tools {
  const [Kit, setKit] = useState<ComponentType<WallProps> | null>(null)
  const [isOut, setOut] = useState(false)
  const [said, setSaid] = useState('')
  const from = useRef<Element | null>(null)
  const open = async () => {
    from.current = document.activeElement
    setSaid('')
    try {
      const { Wall } = await import('./Wall.tsx')
      setKit(() => Wall)
      setOut(true)
    } catch (error) {
      setSaid(notLoaded(says.theTools, error))
    }
  }
  const close = () => {
    setOut(false)
    if (from.current instanceof HTMLElement) from.current.focus()
  }
  return {
    open: () => void open(),
    kit:
      Kit && isOut ? (
        <Kit at={at} onClose={close} />
      ) : said === '' ? null : (
        <p class="wall-says" role="alert">
          {said}
        </p>
      ),
  }
}
