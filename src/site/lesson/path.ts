/** The page for classes with a chapter's card. */
export const classPath = (slug: string): string => `/class/?chapter=${slug}`

/** The same with a card of the garden. */
export const classPathOf = (dummy: string): string => `/class/?from=${dummy}`
