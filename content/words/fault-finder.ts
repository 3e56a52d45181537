/** Finding what is wrong with a card, by picture or by words. */

export const youSee = 'You see'

export const youSeeNote = 'Press the picture that looks like yours.'

export const orSayIt = 'Or say it yourself'

export const forExample = 'nothing happens when I open it'

export const itMayBe = 'It may be'

export const likeliestFirst = 'Likeliest first.'

export const nothingFits = 'Nothing fits those words.'

export const nothingFitsTry =
  'Nothing fits those words. Try fewer, or press a picture: “Something else” is one of them.'

export const found = (count: number): string => `${count} found.`

export const causes = (sign: string, count: number): string => `${sign}: ${count} causes.`

export const causesComeHere =
  'The causes stand here as soon as you have pressed a picture or typed what you see.'

export const now = 'Now:'

export const nextTime = 'Next time:'

export const whichCard = 'Which card is most like yours?'

export const anyCard = 'any'

export const chapter = (number: number, title: string): string => `Chapter ${number}: ${title}`
