/** What the readings of a bench mean: it comes with the page, and with no script. */

/** What is at the top of a part. */
export const tip = 'tip'

/** By their names in a chapter's file. `top` is what a ruler is held to: the tip, or a ridge that has none. */
export const help = (top: string) => ({
  rise: `How far the ${top} stands from the page below it. Stand a ruler on the page, square to it, and read the ${top}.`,
  reach: `How far along the gutter the ${top} has come, measured from your end of the card.`,
  'stand-off': `How far the ${top} is from the gutter itself.`,
  gape: 'How far the two tips are from each other.',
  wedge: 'The angle at the apex between the gutter and a fold.',
  slit: 'How deep the slit goes from the fold, on each page.',
  lean: 'How far the end of the slit is shifted along the gutter.',
  depth: 'How deep the cuts go from the fold.',
  margin:
    'With the card shut: the least distance from the pop-up to the card’s edge. If it sticks out, the card cannot hide it.',
  opening: 'The angle between the two pages: 0 is shut, 180 is flat.',
  highest: `The opening at which the ${top} stands highest over its page.`,
  stop: 'How far the card opens before this piece is pulled tight. 180° is flat.',
  behind: 'How far the tip lies behind its page, where no ruler reaches it from the inside of the card.',
})

/** Of the point of a bare card. */
export const pointHelp = {
  gape: 'How far the point is from its twin on the other page, straight through the air.',
  'stand-off': 'How far the point is from the gutter. Watch it: it never changes as the card opens.',
  reach: 'How far along the gutter the point lies. Opening the card never changes it.',
}
