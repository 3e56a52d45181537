import 'astro'

declare module 'astro' {
  interface AstroClientDirectives {
    /** Wakes at the first sign of a hand; `rest`: when the hand has done the first thing; `calm`: no sooner even where fingers work. */
    'client:hand'?: boolean | 'rest' | 'calm'
  }
}
