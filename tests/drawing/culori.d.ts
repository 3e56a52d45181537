// What the tests use of culori, which brings no types.
declare module 'culori' {
  interface Rgb {
    readonly r: number
    readonly g: number
    readonly b: number
  }
  export function converter(mode: 'rgb'): (colour: unknown) => Rgb
  export function interpolate(colours: readonly string[], mode: 'rgb' | 'oklab'): (share: number) => unknown
}
