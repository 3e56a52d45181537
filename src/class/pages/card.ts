import type { Class } from '../class.ts'
import type { Seen } from '../seen.ts'
import { cardFigure } from './figures.ts'
import type { Pictured } from './frame.ts'
import { cardPicture, cropped } from './picture.ts'

/** The class's card as a block of any width: where the answer would stand there is a question mark. */
export type Figure = (width: number) => Pictured

const PIXELS = { width: 480, height: 330 }

/** The card without any measure. */
export function plainFigure({ design }: Pick<Class, 'design'>, seen: Seen): Figure {
  const drawing = cropped(cardFigure(design, null, seen, PIXELS))
  return (width) => cardPicture(drawing, width)
}

export function figureBlock({ design, measured }: Pick<Class, 'design' | 'measured'>, seen: Seen): Figure {
  const drawing = cropped(cardFigure(design, measured, seen, PIXELS))
  const covered = {
    ...drawing,
    marks: drawing.marks.map((mark) =>
      mark.mark === 'word' && mark.role === 'dimension' ? { ...mark, text: '?', bold: true } : mark,
    ),
  }
  return (width) => cardPicture(covered, width)
}
