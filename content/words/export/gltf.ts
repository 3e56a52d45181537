/** What a model in space does, as other programs list it. */
export const openAndShut = 'Open and shut'
