/** The teacher's own window beside the wall, and what is said when tools do not come. */

export const notesForTeacher = 'Notes for the teacher'

export const nextIs = (next: string): string => `Next: ${next}`

export const theTools = 'The tools'
