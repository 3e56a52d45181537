/** What comes of the desks beside the page. */

/** Why something could not be worked out, at the end of a sentence. */
export const notLoaded = 'the page could not load what works it out'

/** The checks failed to run. */
export const notChecked = (reason: string): string => `The checks could not be made: ${reason}.`

/** How far a size may be off. */
export const needsNoCare = 'needs no care'

export const mustBeExact = 'must be exact'

export const mayBeOff = (much: string): string => `may be ${much} off`

/** So much less and so much more: each as below. */
export const mayBe = (less: string, more: string): string => `may be ${less}, ${more}`

export const less = (much: string): string => `${much} less`

export const noLess = 'no less'

export const muchLess = 'much less'

export const more = (much: string): string => `${much} more`

export const noMore = 'no more'

export const muchMore = 'much more'
