/** The page for a lesson with paper: the class in one sentence, the lesson, the pack, the readings. */

export const yourClass = 'Your class'

export const yourClassNote = 'Press what is blue to change it.'

export const theLesson = 'The lesson'

export const putItOnTheWall = 'Put it on the wall'

export const wallNote = 'One thing at a time. Answers stay covered until you press Show.'

export const thePack = 'The pack'

export const thePackNote = 'one PDF'

export const afterwards = 'Afterwards'

export const afterwardsNote = 'the class against the model'

export const readSoFar = (read: number, pupils: number): string => `${read} of ${pupils} readings`

export const minutes = (count: number): string => `${count} minutes`

export const shortMinutes = (count: number): string => `${count} min`

/** Stand in the lesson's texts until a card is known. */
export const someSize = 'size'

export const wholeCard = 'card'

export const notWorkedOut = 'What works this out could not be loaded. Load the page again.'

export const noChapterForIt = 'There is no chapter whose words the lesson could have.'

export const noSuchCard = 'There is no such card.'

export const cardNotFetched = 'The card could not be fetched.'

/* The class in one sentence. */

/** In place of each word in braces stands what is chosen or typed there. */
export const classInOneSentence = (isEachItsOwn: boolean): string =>
  `I teach {card} to {pupils} pupils, ages {ages}, in {groups} groups. We have {minutes} and print on {paper} in {print}. Each sheet has {differs}${isEachItsOwn ? ', so that the class measures the whole curve' : ''}, with {picture} and {certificate}.`

export const card = 'Card'

export const cardOfLink = 'the card of the link'

export const chapters = 'Chapters'

export const nightGarden = 'Night garden'

export const pupils = 'Pupils'

export const ages = 'Ages'

export const groups = 'Groups'

export const minutesLabel = 'Minutes'

export const paper = 'Paper'

export const a4 = 'A4'

export const usLetter = 'US Letter'

export const a3 = 'A3'

export const usLegal = 'US Legal'

export const usTabloid = 'US Tabloid'

export const print = 'Print'

export const ordinaryPrint = 'ordinary print'

export const largePrint = 'large print'

export const whatDiffers = 'What differs from sheet to sheet'

export const itsOwn = (size: string): string => `its own ${size}`

export const itsOwnSize = 'its own size'

export const sameSizes = 'the same sizes'

export const picture = 'Picture'

export const noPicture = 'no picture'

export const pictureToColour = 'a picture to colour in'

export const certificate = 'Certificate'

export const noCertificate = 'no certificate'

export const withCertificate = 'a certificate'

/* The lesson by its minutes. */

export const endsAfter = (part: string, minutes: number | undefined): string =>
  `${part} ends after ${minutes} minutes`

export const endOf = (part: string): string => `End of ${part}`

export const oneMinuteLess = (part: string): string => `One minute less for ${part}`

export const oneMinuteMore = (part: string): string => `One minute more for ${part}`

/* The pack. */

export const layingOut = 'Laying out the sheets …'

export const packSaved = (file: string, pages: number): string =>
  `${file} is saved: ${pages} pages. Print it at 100 %.`

export const packStopped = 'Stopped. Nothing was saved.'

export const teachersPages = 'Teacher’s pages'

export const teachersPagesNote = 'the lesson by the clock, questions, mistakes and their cure'

export const sheets = (count: number): string => `${count} sheets`

export const sheetsAllDifferent = (count: number): string => `${count} sheets, all different`

export const sheetsAllAlike = (count: number): string => `${count} sheets, all alike`

export const lineForTheName = 'a line for the name'

export const sizesAndName = (size: string, least: string, most: string): string =>
  `${size} ${least} to ${most}, a line for the name`

export const worksheets = (count: number): string => `${count} worksheets`

export const worksheetsNote = 'guess, cut, measure, compare'

export const recallSlips = (count: number): string => `${count} recall slips`

export const recallSlipsNote = 'questions from memory'

export const answerKey = '1 answer key'

export const answerKeyNote = 'what the ruler reads on every sheet'

export const timesTheSteps = (count: number): string => `${count} times the steps`

export const timesTheStepsNote = 'in large print, wide apart'

export const certificates = (count: number): string => `${count} certificates`

export const certificatesNote = 'for the finished card'

export const onTheTables = 'On the tables'

export const getThePack = 'Get the pack'

export const onlyTheSheets = 'Only the sheets'

export const howFar = 'How far the pack is'

export const stop = 'Stop'

export const madeHere = 'Made on this device. Nothing is sent anywhere.'

/* The class against the model. */

export const chartAcrossMm = (size: string): string => `${size}, mm`

export const chartAcrossDegrees = (size: string): string => `${size}, degrees`

export const chartUp = 'reading, mm'

export const classReadsAlike = 'On the whole the class reads as the model does.'

export const classReadsLess = (by: string): string =>
  `On the whole the class reads ${by} mm less than the model.`

export const classReadsMore = (by: string): string =>
  `On the whole the class reads ${by} mm more than the model.`

/** `onTheWhole` is one of the three sentences above. */
export const allReadings = (count: number, onTheWhole: string, scatter: string): string =>
  `${count} readings. ${onTheWhole} Round that they scatter by ${scatter} mm.`

export const openedOtherwise = (to: number, right: number): string =>
  `It looks as if the cards had been opened to ${to}°, not ${right}°.`

export const readingsLater = 'Places for the readings come as soon as the card is worked out.'

export const nothingToRead = 'Nothing on this card is read by a ruler.'

export const takenOver = (count: number): string =>
  `${count === 1 ? '1 reading' : `${count} readings`} taken over.`

export const whatRulersRead = 'What the rulers read, mm'

export const readingOfSheet = (code: string): string => `Reading of sheet ${code}`

export const readingOfSized = (code: string, size: string, value: string): string =>
  `Reading of sheet ${code}, ${size} ${value}`

export const coverModel = 'Cover the model'

export const showModel = 'Show the model'

export const saveReadings = 'Save the readings'

export const openTable = 'Open a table'

export const clearAll = 'Clear all'

export const haveThemBack = 'Have them back'

export const pasteReadings = 'Paste readings'

export const howToPaste =
  'One line for each sheet: its code and the reading, as in “A1, 31.5”. A table from a spreadsheet will do.'

export const takeThemOver = 'Take them over'

export const andMore = (count: number): string => `And ${count} more.`

export const lookingForCauses = 'Looking for what explains them …'

export const lieOff = (count: number): string =>
  `${count === 1 ? '1 reading lies' : `${count} readings lie`} off by half a millimetre or more`

export const more = (count: number): string => `${count} more`

export const readingsStayHere =
  'Readings stay on this device. Save them as a table to take them elsewhere. No names are asked for.'
