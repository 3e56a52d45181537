/** Run beside the page: the checks, while a finger drags. What has not changed is not looked at again. */
import type { Design } from '../../paper/index.ts'
import { check } from '../../paper/index.ts'
import type { Parcel } from './parcel.ts'
import { unpacked } from './parcel.ts'

let last: Design | null = null

addEventListener('message', ({ data }: MessageEvent<Parcel>) => {
  last = unpacked(data, last)
  postMessage(check(last, { repairs: false }))
})
