/** What the command line cannot do, in one sentence for the reader; ends the command with code 1. */
export class Refusal extends Error {}
