/** The small card at the top of the screen while a phrase moves it. */

export const theCard = 'The card'

export const was = (value: string): string => `was ${value}`

export const openTo = (opening: string): string => `open ${opening}`

export const upToBench = 'Up to the bench'

export const close = 'Close'
