/**
 * The place in which a page says that the book is kept on the device. public/keep.js and public/folder.js write there, in
 * words that it has with it.
 */
export const OFFLINE_PLACE = 'offline-says'

/**
 * Runs at the end of the page, and waits longer than a reader does. What keeps the book comes in a file of its own, so
 * that no first drag waits for it. A page that no host gave, but some folder of a disk, has all of the book beside it.
 */
export const AT_LAST = `/^file/.test(location)||setTimeout(()=>import('/keep.js'),6e3)`
