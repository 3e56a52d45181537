/** What is said while files of other kinds are made, and when they are saved. */
export const saved = (file: string): string => `${file} is saved.`

export const savedPixels = (file: string, width: number, height: number): string =>
  `${file} is saved, ${width} × ${height} pixels.`

export const drawingPicture = (number: number, of: number): string => `Drawing picture ${number} of ${of} …`

export const puttingTogether = 'Putting the pictures together …'

export const savedMoving = (file: string): string =>
  `${file} is saved: it opens and shuts as long as you look.`

export const savedFlipBook = (file: string, leaves: number): string =>
  `${file} is saved: ${leaves} leaves. Print it at 100 %.`

export const savedModel = (file: string): string =>
  `${file} is saved. It opens and shuts in programs that show glTF 2.0.`

/** Why it could not be made, at the end of a sentence. */
export const cannotPaint = 'this browser cannot paint the picture'

export const noCanvas = 'this browser gives no canvas to paint on'

export const cannotWrite = 'this browser cannot write the picture'
