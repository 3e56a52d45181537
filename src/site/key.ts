/** Put in front of the name of whatever the device remembers. */
export const KEY = 'hingebook.'
