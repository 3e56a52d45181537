import 'astro'

declare module 'astro' {
  interface AstroClientDirectives {
    /** Wakes at the first sign of a hand. */
    'client:hand'?: boolean
  }
}
