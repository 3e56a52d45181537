/** The template at true size: what is asked before it is saved, and what is said then. */

export const atTrueSize = 'The template, at true size'

/* The questions, and their answers. */

export const paper = 'Paper'

export const a4 = 'A4'

export const usLetter = 'US Letter'

export const picture = 'Picture'

export const toColourIn = 'to colour in'

export const inColour = 'in colour'

export const noPicture = 'none'

export const lines = 'Lines'

export const linesOnFront = 'on the front'

export const ticksOnly = 'ticks only'

export const linesOnBack = 'on the back'

export const tabs = 'Tabs'

export const tabsAsShown = 'as on the screen'

export const tabsThroughSlits = 'through slits'

export const form = 'As'

export const pdfToPrint = 'PDF, to print'

export const svgToEdit = 'SVG, to edit'

/** What is printed on the face that will be seen. */
export const whatLinesMean = {
  front: 'Every line is printed on the face that you will see: good to practise with.',
  ticks:
    'The face that you will see has ticks at the ends of the folds only, and glue places: for a good copy.',
  back: 'The face that you will see stays clean. On the other face left and right are swapped, and mountain and valley too.',
}

export const whatSlitsMean =
  'Each tab goes through a slit and is glued behind, where nobody sees it. Slits need a knife: a job for an adult.'

export const pictureOnBack = 'Of the picture, only what is drawn on that face is printed.'

export const measureTheCheckLine =
  'Print at 100 %, “actual size”. Then lay a ruler on the check line: it must be 100 mm or 4 in long.'

/* More about paper and printer. */

export const morePrint = 'More about paper and printer'

export const ownSize = 'a size of my own'

export const widthBefore = 'It is'

export const widthAfter = 'mm wide'

export const heightBefore = 'and'

export const heightAfter = 'mm high'

export const copies = 'Copies of each piece'

export const onSeveralSheets = 'What is larger than the paper goes on several sheets, to be joined'

export const checkLineBefore = 'On my last print the 100 mm line was'

export const checkLineAfter = 'mm long'

export const printersErr =
  'Printers err a little. Measure the check line, type its length, and the next print makes up for it.'

export const makesUpForPrinter =
  'This print makes up for your printer, and says so. Measure its check line again.'

/* Counting and saving. */

export const counting = 'Counting the sheets …'

export const countNotLoaded = 'What counts the sheets could not be loaded.'

export const saveTemplate = 'Save the template'

export const close = 'Close'

export const drawing = 'Drawing the template …'

export const theFont = 'The font of the template'

export const notMade = (why: string): string => `The template could not be made: ${why}.`

export const saved = (file: string): string => `${file} is saved.`

export const savedToPrint = (file: string): string => `${file} is saved. Print it at 100 %.`

export const pagesSaved = (pages: number, first: string): string =>
  `${pages} pages are saved, ${first} and on.`

export const tooLarge = (sentence: string): string =>
  `${sentence} Or let it go on several sheets: see ${morePrint}.`
