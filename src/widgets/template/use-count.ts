import { useEffect, useRef, useState } from 'preact/hooks'
import type { Design } from '../../paper/index.ts'
import type { TemplateChoice } from './choice.ts'
import type { CountAsk } from './count-worker.ts'

/** Nothing is counted while a number is being typed, ms. */
const REST = 250

const start = (): Worker => new Worker(new URL('./count-worker.ts', import.meta.url), { type: 'module' })

/** What is said of the sheets that a choice takes, counted beside the page; a newer choice calls the older off. */
export function useCount(design: () => Design, choice: TemplateChoice): string {
  const [says, setSays] = useState('')
  const worker = useRef<Worker | null>(null)
  const isBusy = useRef(false)
  const end = () => {
    worker.current?.terminate()
    worker.current = null
    isBusy.current = false
  }
  useEffect(() => end, [])
  useEffect(() => {
    setSays('Counting the sheets …')
    const rest = setTimeout(() => {
      if (isBusy.current) end()
      const mine = worker.current ?? start()
      worker.current = mine
      isBusy.current = true
      mine.onmessage = ({ data }: MessageEvent<string>) => {
        isBusy.current = false
        setSays(data)
      }
      mine.onerror = () => {
        end()
        setSays('What counts the sheets could not be loaded.')
      }
      mine.postMessage({ design: design(), choice } satisfies CountAsk)
    }, REST)
    return () => clearTimeout(rest)
  }, [choice])
  return says
}
