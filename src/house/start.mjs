// npm start: install, build, serve. What is done already is not done again.
import { parseArgs } from 'node:util'
import { serve } from './serve.mjs'
import { build, install, requireNode } from './steps.mjs'

const say = (/** @type {string} */ line) => console.log(line)

requireNode()
const port = chosenPort()
if (!((await install(say)) && (await build(say)))) process.exit(1)
try {
  await serve(port)
  say(`Hingebook is open at http://localhost:${port}/ (Ctrl+C closes it).`)
} catch (error) {
  if (!(error instanceof Error && 'code' in error && error.code === 'EADDRINUSE')) throw error
  console.error(
    `Port ${port} is taken, perhaps by an earlier npm start. ` +
      `Close that program, or choose another port: npm start -- --port ${port + 1}`,
  )
  process.exit(1)
}

function chosenPort() {
  try {
    const { values } = parseArgs({ options: { port: { type: 'string', default: '4321' } } })
    const chosen = Number(values.port)
    if (Number.isInteger(chosen) && chosen >= 1 && chosen <= 65535) return chosen
    console.error(`--port must be a whole number from 1 to 65535; it was ${values.port}.`)
  } catch (error) {
    console.error(`npm start knows one option, --port. ${error instanceof Error ? error.message : ''}`)
  }
  process.exit(1)
}
