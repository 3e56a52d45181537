/** `make(key)`, made once for each key and forgotten with it. */
export function once<K extends object, V>(make: (key: K) => V): (key: K) => V {
  const known = new WeakMap<K, { readonly value: V }>()
  return (key) => {
    const found = known.get(key) ?? { value: make(key) }
    known.set(key, found)
    return found.value
  }
}
