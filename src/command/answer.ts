import { resolve } from 'node:path'
import { parseArgs } from 'node:util'
import * as says from '../../content/words/command/answer.ts'
import { visibleText } from '../paper/index.ts'
import { check } from './check.ts'
import { classPack } from './class.ts'
import type { Command, Options } from './command.ts'
import { cut } from './cut.ts'
import { find } from './find.ts'
import { mend } from './mend.ts'
import { picture } from './picture.ts'
import { pose } from './pose.ts'
import { readDesign } from './read-design.ts'
import { Refusal } from './refusal.ts'
import { sheet } from './sheet.ts'
import { steps } from './steps.ts'

const commands: readonly Command[] = [check, mend, find, sheet, cut, steps, classPack, pose, picture]

const HELP = says.help(commands.map(({ name, usage, help }) => says.commandHelp(name, usage, help)))

/**
 * Does what the words of a command line ask for, and says so on the console.
 * @returns the exit code: 0; 1 if the file or an option is wrong; 2 if a check does not hold, or nothing was found
 */
export async function answer(args: readonly string[]): Promise<number> {
  try {
    return await answered(args)
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    // A file's own bytes stand in some sentences: a terminal would obey the control characters among them.
    console.error(visibleText(error.message))
    return 1
  }
}

async function answered(args: readonly string[]): Promise<number> {
  const [name, ...rest] = args
  if (args.includes('--help') || name === 'help') {
    console.log(HELP)
    return 0
  }
  const command = commands.find((one) => one.name === name)
  if (!command) {
    const names = commands.map((one) => one.name)
    throw new Refusal(says.unknownCommand(names, name))
  }
  const { file, options } = understood(command, rest)
  // npm moves to the project's root; paths are meant from where the reader stood.
  const place = (path: string): string => resolve(process.env.INIT_CWD ?? '', path)
  return command.run(readDesign(file, place(file)), options, place)
}

function understood(command: Command, args: readonly string[]): { file: string; options: Options } {
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      options: command.options,
      allowPositionals: true,
    })
    const [file, ...more] = positionals
    if (file && more.length === 0) return { file, options: { ...values } }
  } catch (error) {
    if (!(error instanceof TypeError)) throw error
    throw new Refusal(says.notUnderstood(firstSentence(error.message), command.name, command.usage))
  }
  throw new Refusal(says.nameOneFile(command.name, command.usage))
}

/** Node's own message goes on to explain positional arguments; its first sentence says what is wrong. */
const firstSentence = (message: string): string => `${message.split(/\. |\n/)[0]?.replace(/\.$/, '')}.`
