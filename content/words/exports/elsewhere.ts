/** The buttons that take a dummy out of the page as a file of another kind. */
export const summary = 'As a picture, a flip book, a model'

export const picture = 'Picture'

export const pictureSvg = 'Picture as SVG, to edit'

export const picturePng = 'Picture as PNG, to show'

export const moving = 'Moving picture'

export const movingGif = 'Moving picture as GIF'

export const flipBook = 'Flip book to print'

export const flipBookOn = (paper: string): string => `Flip book to print on ${paper} paper`

export const papers = { a4: 'A4', letter: 'US Letter' } as const

export const model = 'Model in 3D'

export const modelGltf = 'Model in 3D as glTF, opening and shutting'

export const drawing = 'Drawing …'

export const notMade = (reason: string): string => `This could not be made: ${reason}. Try again.`
