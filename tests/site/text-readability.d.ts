declare module 'text-readability' {
  const readability: {
    /** Words, parted by spaces and commas. */
    lexiconCount(text: string): number
    syllableCount(text: string): number
  }
  export default readability
}
