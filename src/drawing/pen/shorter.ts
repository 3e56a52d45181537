/**
 * A picture's text with the points of its paths told from the one before: a quarter shorter, a third when squeezed. Each
 * number keeps its decimals and is told exactly, so that nothing adds up along a path (SVG 2, 9.3: relative commands; of
 * a curve all points are told from its start, and a closed path goes on from where it began).
 */

/** Numbers for each point of these commands; a path with others is left as it is. */
const NUMBERS: Readonly<Record<string, number>> = { M: 2, L: 2, C: 6, Z: 0 }

const TOKEN = /[A-Za-z]|-?(?:\d+\.?\d*|\.\d+)/g

const decimals = (text: string): number => text.split('.')[1]?.length ?? 0

/** A whole number of the last decimal's steps as a number, without a nought that says nothing. */
function told(steps: number, digits: number): string {
  if (digits === 0) return `${steps}`
  const sign = steps < 0 ? '-' : ''
  const text = `${Math.abs(steps)}`.padStart(digits + 1, '0')
  const [whole, part] = [text.slice(0, -digits), text.slice(-digits).replace(/0+$/, '')]
  if (part === '') return `${sign}${whole}`
  return `${sign}${whole === '0' ? '' : whole}.${part}`
}

/** The `d` of a path. */
export function shorterPath(d: string): string {
  const tokens = d.match(TOKEN) ?? []
  const numbers = tokens.filter((token) => !(token in NUMBERS))
  if (numbers.some((token) => /[A-Za-z]/.test(token))) return d
  const digits = Math.max(0, ...numbers.map(decimals))
  const scale = 10 ** digits
  let [x, y, startX, startY] = [0, 0, 0, 0]
  let out = ''
  /** The command that numbers alone would go on with. */
  let going = ''
  let command = ''
  let last = ''
  for (let k = 0; k < tokens.length; ) {
    if ((tokens[k] as string) in NUMBERS) command = tokens[k++] as string
    if (command === 'Z') {
      out += 'z'
      going = ''
      ;[x, y] = [startX, startY]
      continue
    }
    const count = NUMBERS[command] ?? 0
    const steps = tokens.slice(k, k + count).map((token) => Math.round(Number(token) * scale))
    if (count === 0 || steps.length < count) return d
    k += count
    const words = steps.map((n, i) => told(n - (i % 2 === 0 ? x : y), digits))
    const name = command.toLowerCase()
    out += going === name ? '' : name
    words.forEach((word, i) => {
      const before = i > 0 ? words[i - 1] : going === name ? last : null
      // A number ends where a sign, or a second point, begins another.
      const touches =
        before === null || word.startsWith('-') || (word.startsWith('.') && before?.includes('.'))
      out += touches ? word : ` ${word}`
    })
    last = words.at(-1) ?? ''
    ;[x, y] = steps.slice(-2) as [number, number]
    if (command === 'M') {
      ;[startX, startY] = [x, y]
      command = 'L'
    }
    // After a start, numbers alone are the ends of lines.
    going = name === 'm' ? 'l' : name
  }
  return out
}

/** The text of a picture. */
export const shorter = (svg: string): string =>
  svg.replace(/ d="([^"]*)"/g, (_, d: string) => ` d="${shorterPath(d)}"`)
