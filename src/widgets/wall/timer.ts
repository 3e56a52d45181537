/** A time that runs down, as a pure state: when it would end, or what is left while it rests. Times in ms. */
export type Timer =
  | { readonly runs: true; readonly endsAt: number }
  | { readonly runs: false; readonly left: number }

/** As long as a lesson has, minutes. */
export const MINUTES = { least: 1, most: 90 } as const

const MINUTE = 60_000

export const resting = (minutes: number): Timer => ({ runs: false, left: minutes * MINUTE })

export const leftOf = (timer: Timer, now: number): number =>
  Math.max(0, timer.runs ? timer.endsAt - now : timer.left)

/** Lets it run, or rest. One that has run down stays. */
export function turned(timer: Timer, now: number): Timer {
  const left = leftOf(timer, now)
  return timer.runs || left === 0 ? { runs: false, left } : { runs: true, endsAt: now + left }
}

/** `4:59`: a second that has begun counts whole, so that the end is the end. */
export function clockText(left: number): string {
  const seconds = Math.ceil(left / 1000)
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`
}

/** The minutes that were typed; null where there are none within the range. */
export function minutesIn(text: string): number | null {
  const minutes = text.trim() === '' ? Number.NaN : Number(text.trim().replace(',', '.'))
  return minutes >= MINUTES.least && minutes <= MINUTES.most ? minutes : null
}
