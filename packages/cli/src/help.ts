import { type Command, commands, everywhere, type Option } from './commands.ts'
import { exitMeanings } from './exit-codes.ts'

/**
 * The help of the program, or of one of its commands.
 * @param demoDoor a real door file, so that the examples can be tried as they stand
 * @param program how it is started here, for the examples
 * @param width columns; example lines are never broken, they are there to be copied
 */
export function helpText(
  command: Command | undefined,
  { demoDoor, program, width }: { readonly demoDoor: string; readonly program: string; readonly width: number },
): string {
  const lines = command ? commandHelp(command, width) : programHelp(width)
  const text = lines.join('\n').replaceAll('DEMO/DOOR', demoDoor)
  return `${text.replaceAll(/(?<=^ {2}\$ )sillsight\b/gm, program)}\n`
}

function programHelp(width: number): readonly string[] {
  return [
    ...wrapped('sillsight - what presence sensors on powered doors and gates see, do not see, and why', width),
    '',
    ...wrapped(
      'You give it a door file: the measured doorway with its sensors, and the bodies that must be seen. ' +
        'It answers where a body can stand or lie unseen, how large that place is, and what hides it.',
      width,
    ),
    '',
    'Start here',
    ...examples([
      ['sillsight demo', 'judge the invented doors that come along, and draw them'],
      ['sillsight judge DEMO/DOOR', 'one of them: findings and a plan'],
      ['sillsight new my-door.json', 'your own door in six questions'],
    ]),
    '',
    'Commands',
    ...table(
      commands.map(({ name, takes, summary }) => [`${name} ${takes}`.trim(), summary]),
      width,
    ),
    '',
    'Options for every command',
    ...table(everywhere.map(optionRow), width),
    '',
    'Exit codes',
    ...table(
      exitMeanings.map(([code, means]) => [String(code), means]),
      width,
    ),
    ...wrapped(
      'Of many files the first of 70, 3, 1, 2 counts. Results go to standard output, all else to standard error. ' +
        'More: `sillsight COMMAND --help`.',
      width,
    ),
    '',
    'The program computes; a competent person decides, and local codes rule.',
  ]
}

function commandHelp({ name, takes, summary, tells, options, examples: shown }: Command, width: number): readonly string[] {
  return [
    `sillsight ${name} ${takes}`.trim(),
    `  ${summary}`,
    '',
    ...wrapped(tells.join(' '), width),
    '',
    ...(options.length > 0 ? ['Options', ...table(options.map(optionRow), width), ''] : []),
    'Examples',
    ...examples(shown),
    '',
    ...wrapped(`For every command: ${everywhere.map((option) => `--${option.name}`).join(', ')}; see \`sillsight --help\`.`, width),
  ]
}

function optionRow({ name, short, value, means }: Option): readonly [string, string] {
  return [`${short ? `-${short}, ` : ''}--${name}${value ? ` ${value}` : ''}`, means]
}

function table(rows: readonly (readonly [string, string])[], width: number): readonly string[] {
  const left = Math.max(...rows.map(([head]) => head.length)) + 4
  return rows.flatMap(([head, means]) =>
    wrapped(means, width - left).map((line, i) => `${(i === 0 ? `  ${head}` : '').padEnd(left)}${line}`),
  )
}

/** Each example on a line of its own, with what it does below. */
function examples(list: readonly (readonly [command: string, does: string])[]): readonly string[] {
  return list.flatMap(([command, does]) => [`  $ ${command}`, `      ${does}`])
}

/** Lines of whole words; a word longer than a line stays whole. */
export function wrapped(text: string, width: number): readonly string[] {
  const lines: string[] = []
  for (const word of text.split(' ')) {
    const last = lines[lines.length - 1]
    if (last !== undefined && last.length + 1 + word.length <= width) lines[lines.length - 1] = `${last} ${word}`
    else lines.push(word)
  }
  return lines
}
