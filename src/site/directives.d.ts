import 'astro'

declare module 'astro' {
  interface AstroClientDirectives {
    /**
     * Wakes at the first sign of a hand; `rest`: when the hand has done the first thing; `calm`: no sooner even where
     * fingers work; `seen`: when it is seen, and what it stands in is awake; `spare`: when the first drag of the bench
     * that it stands in does not wait for it.
     */
    'client:hand'?: boolean | 'rest' | 'calm' | 'spare' | 'seen'
  }
}
