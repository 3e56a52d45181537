import { useEffect, useRef, useState } from 'preact/hooks'
import * as says from '../../../content/words/template/dialog.ts'
import type { Design } from '../../paper/index.ts'
import type { Said, TemplateChoice } from './choice.ts'
import type { CountAsk } from './count-worker.ts'

/** Nothing is counted while a number is being typed, ms. */
const REST = 250

const start = (): Worker => new Worker(new URL('./count-worker.ts', import.meta.url), { type: 'module' })

/** What is said of the sheets that a choice takes, worked out beside the page; a newer choice calls the older off. */
export function useCount(design: () => Design, choice: TemplateChoice): Said {
  const [count, setCount] = useState('')
  const [faults, setFaults] = useState('')
  const worker = useRef<Worker | null>(null)
  const isBusy = useRef(false)
  const end = () => {
    worker.current?.terminate()
    worker.current = null
    isBusy.current = false
  }
  useEffect(() => end, [])
  useEffect(() => {
    setCount(says.counting)
    const rest = setTimeout(() => {
      if (isBusy.current) end()
      const mine = worker.current ?? start()
      worker.current = mine
      isBusy.current = true
      mine.onmessage = ({ data }: MessageEvent<Said>) => {
        isBusy.current = false
        setCount(data.count)
        setFaults(data.faults)
      }
      mine.onerror = () => {
        end()
        setCount(says.countNotLoaded)
      }
      mine.postMessage({ design: design(), choice } satisfies CountAsk)
    }, REST)
    return () => clearTimeout(rest)
  }, [choice])
  return { count, faults }
}
