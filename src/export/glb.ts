/**
 * A binary glTF file: glTF 2.0 (Khronos Group; ISO/IEC 12113:2022), 4.4. Twelve bytes of header, the JSON padded with
 * spaces, the buffer padded with noughts.
 */

const MAGIC = 0x46546c67

const [JSON_CHUNK, BIN_CHUNK] = [0x4e4f534a, 0x004e4942]

const padded = (bytes: Uint8Array, with_: number): Uint8Array => {
  const whole = new Uint8Array(Math.ceil(bytes.length / 4) * 4).fill(with_)
  whole.set(bytes)
  return whole
}

export function glbBytes(json: object, buffer: Uint8Array): Uint8Array<ArrayBuffer> {
  const chunks = [
    [JSON_CHUNK, padded(new TextEncoder().encode(JSON.stringify(json)), 0x20)],
    [BIN_CHUNK, padded(buffer, 0)],
  ] as const
  const long = 12 + chunks.reduce((sum, [, bytes]) => sum + 8 + bytes.length, 0)
  const whole = new Uint8Array(long)
  const words = new DataView(whole.buffer)
  for (const [k, word] of [MAGIC, 2, long].entries()) words.setUint32(4 * k, word, true)
  let at = 12
  for (const [kind, bytes] of chunks) {
    words.setUint32(at, bytes.length, true)
    words.setUint32(at + 4, kind, true)
    whole.set(bytes, at + 8)
    at += 8 + bytes.length
  }
  return whole
}

/** So many numbers make one element (3.6.2.2). */
const WIDE = { SCALAR: 1, VEC2: 2, VEC3: 3, VEC4: 4 } as const

/** Numbers that lie one behind another in the buffer, each list found by its accessor. */
export class Store {
  readonly #parts: Uint8Array[] = []
  #long = 0
  readonly views: object[] = []
  readonly accessors: object[] = []

  /** Floats of a vertex or a keyframe. Returns the accessor's index. */
  floats(type: keyof typeof WIDE, values: readonly number[], use: 'vertex' | 'key'): number {
    const wide = WIDE[type]
    const numbers = Float32Array.from(values)
    const column = (k: number): number[] => Array.from(numbers).filter((_, at) => at % wide === k)
    const ends = (of: (...list: number[]) => number): number[] =>
      Array.from({ length: wide }, (_, k) => column(k).reduce((a, b) => of(a, b)))
    return this.#put(numbers, {
      ...(use === 'vertex' ? { target: 34962 } : {}),
      accessor: {
        componentType: 5126,
        type,
        count: numbers.length / wide,
        min: ends(Math.min),
        max: ends(Math.max),
      },
    })
  }

  /** Corners of triangles. Returns the accessor's index. */
  corners(values: readonly number[]): number {
    // The longest run of vertices that half a word can count.
    const wide = values.some((corner) => corner > 65_534)
    const numbers = wide ? Uint32Array.from(values) : Uint16Array.from(values)
    return this.#put(numbers, {
      target: 34963,
      accessor: { componentType: wide ? 5125 : 5123, type: 'SCALAR', count: numbers.length },
    })
  }

  /** A file of its own within the buffer. Returns the index of its view. */
  file(bytes: Uint8Array): number {
    return this.#view(bytes, {})
  }

  #put(
    numbers: Float32Array | Uint16Array | Uint32Array,
    view: { readonly target?: number; readonly accessor: object },
  ): number {
    const { accessor, ...rest } = view
    const bytes = new Uint8Array(numbers.buffer, numbers.byteOffset, numbers.byteLength)
    return this.accessors.push({ bufferView: this.#view(bytes, rest), ...accessor }) - 1
  }

  #view(bytes: Uint8Array, rest: object): number {
    // Every list begins at a whole word.
    const part = padded(bytes, 0)
    this.#parts.push(part)
    const at = this.#long
    this.#long += part.length
    return this.views.push({ buffer: 0, byteOffset: at, byteLength: bytes.length, ...rest }) - 1
  }

  bytes(): Uint8Array {
    const whole = new Uint8Array(this.#long)
    let at = 0
    for (const part of this.#parts) {
      whole.set(part, at)
      at += part.length
    }
    return whole
  }
}
