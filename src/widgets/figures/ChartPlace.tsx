import type { ComponentChildren, ComponentType, JSX } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'
import type { Bench } from '../model/bench-model.ts'
import { notLoaded } from '../model/loading.ts'

interface ChartProps {
  readonly bench: Bench
  readonly lead: string | undefined
}

/** The chart's place: it holds the picture that the page came with until it is seen, and then the living chart. */
export function ChartPlace({
  children,
  ...chart
}: ChartProps & { readonly children?: ComponentChildren }): JSX.Element {
  const [Chart, setChart] = useState<{ readonly it: ComponentType<ChartProps> } | null>(null)
  const place = useRef<HTMLDivElement>(null)
  const { trouble } = chart.bench
  useEffect(() => {
    const fetchChart = async () => {
      try {
        const { ChartFigure } = await import('./ChartFigure.tsx')
        watch.disconnect()
        setChart({ it: ChartFigure })
      } catch (error) {
        trouble.value = notLoaded('The chart', error)
      }
    }
    const watch = new IntersectionObserver(([entry]) => entry?.isIntersecting && void fetchChart(), {
      threshold: 0.1,
    })
    if (place.current) watch.observe(place.current)
    return () => watch.disconnect()
  }, [trouble])
  return <div ref={place}>{Chart ? <Chart.it {...chart} /> : children}</div>
}
