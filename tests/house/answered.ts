// The command line in this process, and all that it says: a second of starting saved each time.
import { vi } from 'vitest'
import { answer } from '../../src/command/answer.ts'

export interface Answered {
  readonly code: number | null
  readonly out: string
  readonly err: string
}

export async function dummy(...args: string[]): Promise<Answered> {
  const said = { out: '', err: '' }
  const keep = (where: keyof typeof said) => (line: string) => {
    said[where] += `${line}\n`
  }
  const spies = [
    vi.spyOn(console, 'log').mockImplementation(keep('out')),
    vi.spyOn(console, 'error').mockImplementation(keep('err')),
  ]
  try {
    return { code: await answer(args), ...said }
  } finally {
    for (const spy of spies) spy.mockRestore()
  }
}
