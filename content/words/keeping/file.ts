/** Why a file holds no design that this page can open. */
export const tooLarge = (most: number): string => `The file is larger than ${most} MB: no design is so large.`

export const laterVersion = (version: number): string =>
  `The file is of version ${version} of the format, and this page reads version 1. Load the page again.`

export const notAsDesign = 'The file cannot be read: something in it is not as a design has it.'

/** What is wrong, and where. */
export const onLine = (line: number, fault: string): string => `Line ${line}: ${fault}`

export const cannotOpen = 'The file cannot be opened: it may have been moved or deleted.'
