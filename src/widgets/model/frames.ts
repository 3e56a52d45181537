/** The screen's frames: `ask` calls back once before the next picture, with the time in milliseconds. */
export interface Frames {
  ask(run: (time: number) => void): number
  drop(ticket: number): void
}

/** Without a screen every change happens at once, and nothing plays. */
export const NO_FRAMES: Frames = {
  ask(run) {
    run(0)
    return 0
  },
  drop() {},
}

/** One thing to do before the next picture. */
export interface Pending<T> {
  /** What waits to be taken; null if nothing does. */
  readonly waiting: T | null
  /** Takes the place of what waits. */
  ask(one: T): void
  /** Takes now what waits, if anything does. */
  settle(): void
  /** Forgets what waits. */
  forget(): void
}

/** However much is asked for between two pictures, the last of it is taken, once. */
export function pending<T>(frames: Frames, take: (one: T) => void): Pending<T> {
  let waiting: T | null = null
  let ticket: number | null = null
  const drop = (): void => {
    if (ticket !== null) frames.drop(ticket)
    ticket = null
  }
  const settle = (): void => {
    drop()
    const one = waiting
    waiting = null
    if (one !== null) take(one)
  }
  return {
    get waiting() {
      return waiting
    },
    ask(one) {
      waiting = one
      if (ticket !== null) return
      let ran = false
      const asked = frames.ask(() => {
        ran = true
        ticket = null
        settle()
      })
      if (!ran) ticket = asked
    },
    settle,
    forget() {
      drop()
      waiting = null
    },
  }
}
