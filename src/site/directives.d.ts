import 'astro'

declare module 'astro' {
  interface AstroClientDirectives {
    /**
     * Wakes at the first sign of a hand; `rest`: when the hand has done the first thing; `calm`: no sooner even where
     * fingers work. Within a bench, and after it: `spare`: when its first drag does not wait for it; `seen`: when it
     * is seen.
     */
    'client:hand'?: boolean | 'rest' | 'calm' | 'spare' | 'seen'
  }
}
