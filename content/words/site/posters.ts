/** The picture beside a link to a page: what stands on it, and what it shows for those who do not see it. */

/** Pages that are no chapter and no plan, by the names of their pictures. */
export const pages = {
  home: {
    over: 'An interactive notebook',
    title: 'How pop-up paper works',
    shows: 'A card opens, and a garden by night stands up in it.',
  },
  chapters: {
    over: 'From the first fold',
    title: 'Chapters',
    shows: 'A lantern stands up in a card.',
  },
  garden: {
    over: 'Cards that work',
    title: 'The night garden',
    shows: 'Heron, moth, owl, lantern and hedgehog stand up in one wide open card.',
  },
  dummy: {
    over: 'Plan a card',
    title: 'My dummy',
    shows: 'An owl in white paper, tried before it is painted.',
  },
  fault: {
    over: 'It jams? It tears?',
    title: 'Find the fault',
    shows: 'A card that does not work, with a red mark where it is stuck.',
  },
  class: {
    over: 'For teachers',
    title: 'A lesson with paper',
    shows: 'The height of a part of a card is measured.',
  },
  words: {
    over: 'What makers say',
    title: 'Words',
    shows: 'A plain card with its folds marked in red.',
  },
  formulas: {
    over: 'To look up',
    title: 'Formulas, sizes and weights',
    shows: 'The height of a moth over its card is measured.',
  },
  subjects: {
    over: 'From A to Z',
    title: 'Index',
    shows: 'Reeds stand up in a card.',
  },
  steps: {
    over: 'How a card is made',
    title: 'Step by step',
    shows: 'A finger pushes a part of a card through.',
  },
  choose: {
    over: 'Side by side',
    title: 'Choose a mechanism',
    shows: 'Many mechanisms in plain paper on one card.',
  },
  plans: {
    over: 'From a wish to a print',
    title: 'Plans',
    shows: 'A heron looks out of a card.',
  },
  search: {
    over: 'The whole book',
    title: 'Search',
    shows: 'A pond floats over an open card.',
  },
}

export const plan = (number: number): string => `Plan ${number}`

export const cardStandsOpen = (card: string): string => `The card “${card}” stands open.`

export const alt = (over: string, title: string, shows: string): string => `${over}: ${title}. ${shows}`
