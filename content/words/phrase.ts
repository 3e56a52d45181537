/** Behind a phrase that has moved the card. */

export const putItBack = 'put it back'
