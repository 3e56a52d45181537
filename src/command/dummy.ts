/**
 * The kernel on a reader's own design file, from the command line:
 * `npm run -s dummy -- check FILE`. Runs unbuilt on the project's own Node.
 */
import { answer } from './answer.ts'

process.exitCode = await answer(process.argv.slice(2))
