/** Loaded when the first change is made: the kernel's checks. */
export { check } from '../paper/index.ts'
