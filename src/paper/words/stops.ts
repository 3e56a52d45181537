/** What keeps a card from opening, or from shutting, any further. `name`: a mechanism, at the beginning of a sentence. */

export const pulledTight = (name: string, at: string, short: string, of: 'open' | 'shut'): string =>
  `${name} stops the card at ${at}, ${short} short of ${of === 'open' ? 'flat' : 'shut'}.`

export const wouldGoThrough = (name: string, at: string, panel: string, way: 'open' | 'shut'): string =>
  `${name} stops the card at ${at}: ${way === 'open' ? 'opened' : 'shut'} further, it would have to go through ${panel}.`
