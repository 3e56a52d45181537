/** What somebody may look for, in the order in which it is offered. */
export const WANTS = [
  { name: 'rises', label: 'rises' },
  { name: 'swings', label: 'swings to you or away' },
  { name: 'sweeps', label: 'sweeps' },
  { name: 'turns', label: 'nods and turns' },
  { name: 'mouth', label: 'opens like a mouth' },
  { name: 'platform', label: 'makes a platform' },
  { name: 'guest', label: 'sits on another part' },
  { name: 'uncut', label: 'needs no glue' },
] as const
