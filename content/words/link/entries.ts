/** What a link may say of a bench, as a sentence calls it. */
export const opening = 'opening'

export const turn = 'turn of the view'

export const tilt = 'tilt of the view'

export const section = 'place of the section'

export const pointAcross = 'point (across)'

export const pointAlong = 'point (along)'
