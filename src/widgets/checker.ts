/** Loaded when the first change is made: the kernel's checks, and what stands on them. */
export { aiming, check, wayOf } from '../paper/index.ts'
