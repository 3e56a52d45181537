declare module 'text-readability' {
  const readability: {
    /** Words, parted by spaces and commas. */
    lexiconCount(text: string): number
    syllableCount(text: string): number
  }

  // biome-ignore lint/style/noDefaultExport: the library has one
  export default readability
}
