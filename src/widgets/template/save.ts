/** Gives a file to the reader; the page stays where it is. */
export function save(parts: readonly BlobPart[], type: string, name: string): void {
  const address = URL.createObjectURL(new Blob([...parts], { type }))
  const link = document.createElement('a')
  link.href = address
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(address), 10_000)
}
