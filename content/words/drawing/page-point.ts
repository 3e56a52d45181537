/** What pictures say of a point of a bare card and of its twin on the other page. */
export const apart = (gap: string): string => `The two points are ${gap} apart.`

export const onCircle = (far: string, gap: string): string =>
  `Each point is ${far} from the gutter, and they are ${gap} apart.`

export const fromGutter = (far: string): string => `The point lies ${far} from the gutter.`
