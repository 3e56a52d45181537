/** Over the reader's own in a list of cards. */
export const mine = 'My dummies'
