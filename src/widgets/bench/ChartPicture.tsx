import type { JSX } from 'preact'
import type { Design } from '../../paper/index.ts'
import { ChartFigure } from '../figures/ChartFigure.tsx'
import { benchModel } from '../model/bench-model.ts'
import type { BenchConfig } from '../state/config.ts'
import { leadOf } from '../state/state.ts'

interface ChartPictureProps {
  readonly design: Design
  readonly config: BenchConfig
}

/** The chart as a bench shows it first: for the page that is made, not for the reader's screen. */
export const ChartPicture = ({ design, config }: ChartPictureProps): JSX.Element => (
  <ChartFigure bench={benchModel(design, config)} lead={leadOf(design, config)?.id} />
)
