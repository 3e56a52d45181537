/** A script without idle space: it stands in the page, and each byte of it is waited for. */
export const squeezed = (script: string): string => script.replace(/\n\s+/g, '\n')
