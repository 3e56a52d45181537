/** What the command line says before a command begins: its help, and why it does not understand. */

export const commandHelp = (name: string, usage: string, help: string): string =>
  `  npm run -s dummy -- ${name} FILE ${usage}\n      ${help}`

/** `commands`: what there is, one after another as `commandHelp` writes it. */
export const help = (commands: readonly string[]): string => `Works on a design file (.hingebook.json).

${commands.join('\n')}

Ends with code 0; 1 if the file or an option is wrong; 2 if a check of the design does not hold, or nothing was found.`

export const unknownCommand = (names: readonly string[], got: string | undefined): string =>
  `The first word must be one of ${names.join(', ')}, not ${got ?? 'left out'}. See --help.`

/** `why`: one sentence on what is wrong. */
export const notUnderstood = (why: string, command: string, usage: string): string =>
  `${why} Say: ${command} FILE ${usage}`

export const nameOneFile = (command: string, usage: string): string =>
  notUnderstood('Name one design file.', command, usage)
