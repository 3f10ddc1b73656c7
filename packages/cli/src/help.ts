import { type Command, commands, everywhere, type Option } from './commands.ts'
import { exitMeanings } from './exit-codes.ts'

/** The help of the program, or of one of its commands. `demoDoor` is a real door file, so that the examples can be tried as they stand. */
export function helpText(command: Command | undefined, demoDoor: string): string {
  const text = command ? commandHelp(command) : programHelp()
  return text.replaceAll('DEMO/DOOR', demoDoor)
}

function programHelp(): string {
  return [
    'sillsight - what presence sensors on powered doors and gates see, do not see, and why',
    '',
    'You give it a door file: the measured doorway with its sensors, and the bodies that must be seen.',
    'It answers where a body can stand or lie unseen, how large that place is, and what hides it.',
    '',
    'Start here',
    ...examples([
      ['sillsight demo', 'judge the invented doors that come along, and draw them'],
      ['sillsight judge DEMO/DOOR', 'one of them: findings and a plan'],
      ['sillsight new my-door.json', 'your own door in six questions'],
    ]),
    '',
    'Commands',
    ...table(commands.map(({ name, takes, summary }) => [`${name} ${takes}`.trim(), summary])),
    '',
    'Options for every command',
    ...table(everywhere.map(optionRow)),
    '',
    'Exit codes',
    ...table(exitMeanings.map(([code, means]) => [String(code), means])),
    '  Of many files the first of 70, 3, 1, 2 counts. Results go to standard output, all else to standard error.',
    '',
    'More: `sillsight COMMAND --help`, and docs/command-line.md. The program computes; a competent person decides.',
    '',
  ].join('\n')
}

function commandHelp({ name, takes, summary, tells, options, examples: shown }: Command): string {
  return [
    `sillsight ${name} ${takes}`.trim(),
    `  ${summary}`,
    '',
    ...tells,
    '',
    ...(options.length > 0 ? ['Options', ...table(options.map(optionRow)), ''] : []),
    'Examples',
    ...examples(shown),
    '',
    `Options for every command: ${everywhere.map((option) => `--${option.name}`).join(', ')}; see \`sillsight --help\`.`,
    '',
  ].join('\n')
}

function optionRow({ name, short, value, means }: Option): readonly [string, string] {
  return [`${short ? `-${short}, ` : ''}--${name}${value ? ` ${value}` : ''}`, means]
}

function table(rows: readonly (readonly [string, string])[]): readonly string[] {
  const left = Math.max(...rows.map(([head]) => head.length)) + 2
  return rows.map(([head, means]) => `  ${head.padEnd(left)}${means}`)
}

/** Each example on a line of its own that can be copied, with what it does below. */
function examples(list: readonly (readonly [command: string, does: string])[]): readonly string[] {
  return list.flatMap(([command, does]) => [`  $ ${command}`, `      ${does}`])
}
