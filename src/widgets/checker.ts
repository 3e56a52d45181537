/** Loaded when the first change is made: the kernel's checks, and what stands on them. */
export { aiming, check } from '../paper/index.ts'
