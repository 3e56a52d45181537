/** Run beside the page: looking for repairs may take seconds, and no press waits for it. */
import type { Design } from '../../paper/index.ts'
import { check } from '../../paper/index.ts'

addEventListener('message', ({ data }: MessageEvent<Design>) => postMessage(check(data, { repairs: true })))
