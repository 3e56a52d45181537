/** Run beside the page: the checks, while a finger drags and when it rests. What has not changed is not looked at again. */
import type { Design } from '../../../paper/index.ts'
import { check } from '../../../paper/index.ts'
import type { Parcel } from './parcel.ts'
import { unpacked } from './parcel.ts'

/** Verdicts on a design, with what would mend each fault or without. */
export interface Examine {
  readonly parcel: Parcel
  readonly repairs: boolean
}

let last: Design | null = null

addEventListener('message', ({ data: { parcel, repairs } }: MessageEvent<Examine>) => {
  last = unpacked(parcel, last)
  postMessage(check(last, { repairs }))
})
