export { aiming, check, wayOf } from '../../paper/index.ts'
