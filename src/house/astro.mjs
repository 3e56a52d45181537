// Runs astro (dev, build, check) with the packages installed first and nothing reported home.
import { install, requireNode, run } from './steps.mjs'

requireNode()
if (!(await install((line) => console.error(line)))) process.exit(1)
const { code } = await run('astro', process.argv.slice(2))
process.exit(code)
