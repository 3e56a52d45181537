import { useEffect, useState } from 'preact/hooks'

/** W3C, Media Queries Level 5. */
const CALM = '(prefers-reduced-motion: reduce)'

/** Whether the reader's device asks for no more motion than must be. */
export const wantsCalm = (): boolean => matchMedia(CALM).matches

/** The same, followed while it changes; no until the page is awake, as the server drew it. */
export function useCalm(): boolean {
  const [calm, setCalm] = useState(false)
  useEffect(() => {
    const asked = matchMedia(CALM)
    const look = () => setCalm(asked.matches)
    look()
    asked.addEventListener('change', look)
    return () => asked.removeEventListener('change', look)
  }, [])
  return calm
}
