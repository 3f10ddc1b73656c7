import { type Command, commands, everywhere, type Option } from './commands.ts'
import { didYouMean } from './near.ts'
import { type Problem, Refusal, shown } from './problem.ts'

/** What somebody asked for, checked against the table of commands. */
export interface Request {
  readonly command: string
  readonly words: readonly string[]
  readonly switches: ReadonlySet<string>
  readonly values: ReadonlyMap<string, string>
}

export type Decision =
  | { readonly kind: 'run'; readonly request: Request }
  | { readonly kind: 'help'; readonly command: Command | undefined }
  | { readonly kind: 'version' }

/** Reads the words after the program's name. @throws Refusal with every problem found. */
export function decide(typed: readonly string[]): Decision {
  const { words, options, problems } = tokens(typed)
  if (options.some(({ name }) => name === 'version')) return { kind: 'version' }
  const asksHelp = options.some(({ name }) => name === 'help') || words[0] === 'help'
  const [name, ...rest] = words[0] === 'help' ? words.slice(1) : words
  const command = commands.find((candidate) => candidate.name === name)
  if (name !== undefined && !command) throw new Refusal(unknownCommand(name))
  if (asksHelp) return { kind: 'help', command }
  if (!command) throw new Refusal(noCommand)
  problems.push(...foreignOptions(command, options), ...wordProblems(command, rest))
  if (problems.length > 0) throw new Refusal(...problems)
  return { kind: 'run', request: requestOf(command, rest, options) }
}

/** An option with a whole number as its value. @throws Refusal if it is none, or outside the limits. */
export function wholeNumber(request: Request, name: string, from: number, to: number): number | undefined {
  const typed = request.values.get(name)
  if (typed === undefined) return undefined
  const value = /^\d{1,9}$/.test(typed) ? Number(typed) : Number.NaN
  if (value >= from && value <= to) return value
  throw new Refusal({
    code: 'bad-option-value',
    place: `--${name}`,
    expected: `a whole number from ${from} to ${to}`,
    got: shown(typed),
    repair: `write for example \`--${name} ${Math.min(to, Math.max(from, 2))}\`, or leave the option out`,
  })
}

interface TypedOption {
  readonly name: string
  readonly typedName: string
  readonly value: string | undefined
}

/**
 * Takes apart what was typed: `--name value`, `--name=value`, `-n value`, words; all is a word after `--`, and so is a lone dash.
 * Not done by `parseArgs` of Node, which takes 3 ms to load: a tenth of what Node itself needs to start.
 */
function tokens(typed: readonly string[]): { words: string[]; options: TypedOption[]; problems: Problem[] } {
  const known = knownOptions()
  const words: string[] = []
  const options: TypedOption[] = []
  const problems: Problem[] = []
  for (let i = 0; i < typed.length; i++) {
    const token = typed[i] ?? ''
    if (token === '--') {
      words.push(...typed.slice(i + 1))
      break
    }
    if (token === '-' || !token.startsWith('-')) {
      words.push(token)
      continue
    }
    const [typedName = '', inline] = splitOnce(token, '=')
    const option = known.find(({ name, short }) => typedName === `--${name}` || (short !== undefined && typedName === `-${short}`))
    if (!option) {
      problems.push(unknownOption(typedName, known))
      continue
    }
    const value = inline ?? (option.value !== undefined && isValue(typed[i + 1]) ? typed[++i] : undefined)
    options.push({ name: option.name, typedName, value })
    problems.push(...valueProblems(option, value, typed[i + 1]))
  }
  return { words, options, problems }
}

function splitOnce(token: string, at: string): readonly string[] {
  const i = token.indexOf(at)
  return i < 0 ? [token] : [token.slice(0, i), token.slice(i + 1)]
}

function isValue(token: string | undefined): boolean {
  return token !== undefined && (token === '-' || !token.startsWith('-'))
}

function knownOptions(): readonly Option[] {
  return [...everywhere, ...commands.flatMap(({ options }) => options)]
}

function valueProblems(
  { name, value: takes, choices, means }: Option,
  value: string | undefined,
  next: string | undefined,
): readonly Problem[] {
  const place = `--${name}`
  if (takes === undefined) {
    if (value === undefined) return []
    return [{ code: 'needless-value', place, expected: 'no value', got: shown(value), repair: `write only \`${place}\`` }]
  }
  const expected = choices ? `one of ${choices.join(', ')}` : takes
  if (value === undefined) {
    const got = next === undefined ? 'nothing' : `the option ${shown(next)}`
    return [{ code: 'missing-value', place, expected, got, repair: means }]
  }
  if (!choices || choices.includes(value)) return []
  return [{ code: 'bad-option-value', place, expected, got: shown(value), repair: didYouMean(value, choices) ?? means }]
}

function unknownOption(typedName: string, known: readonly Option[]): Problem {
  const near = didYouMean(typedName.replace(/^-+/, ''), [...new Set(known.map(({ name }) => name))])?.replaceAll(/`(\w)/g, '`--$1')
  const repair = near ?? 'see `sillsight --help`; a file whose name starts with - goes after --'
  return { code: 'unknown-option', place: 'command line', expected: 'an option of this program', got: shown(typedName), repair }
}

function foreignOptions(command: Command, options: readonly TypedOption[]): readonly Problem[] {
  const own = [...everywhere, ...command.options].map(({ name }) => name)
  return options
    .filter(({ name }) => !own.includes(name))
    .map(({ name }) => ({
      code: 'option-of-another-command',
      place: command.name,
      expected:
        command.options.length === 0
          ? 'no options of its own'
          : `options out of ${command.options.map((option) => `--${option.name}`).join(', ')}`,
      got: `--${name}`,
      repair: `--${name} belongs to ${commands
        .filter(({ options: list }) => list.some((option) => option.name === name))
        .map((other) => `\`${other.name}\``)
        .join(' and ')}; leave it out here`,
    }))
}

function wordProblems(command: Command, rest: readonly string[]): readonly Problem[] {
  const [fewest, most] = command.words
  const place = command.name
  const repair = `write \`sillsight ${[place, command.takes].join(' ').trim()}\`; see \`sillsight ${place} --help\``
  if (rest.length < fewest) return [{ code: 'missing-word', place, expected: command.takes, got: 'nothing', repair }]
  if (rest.length > most) {
    return [
      { code: 'too-many-words', place, expected: command.takes || 'nothing after it', got: rest.slice(most).map(shown).join(' '), repair },
    ]
  }
  return command.choices ? rest.filter((word) => !command.choices?.includes(word)).map((word) => unknownChoice(command, word)) : []
}

function unknownChoice({ name, takes, choices = [] }: Command, word: string): Problem {
  const expected = `${takes}: one of ${choices.join(', ')}`
  return {
    code: 'unknown-word',
    place: name,
    expected,
    got: shown(word),
    repair: didYouMean(word, choices) ?? `write one of ${choices.join(', ')}`,
  }
}

function unknownCommand(name: string): Problem {
  const names = commands.map((command) => command.name)
  const isFile = /[./\\]/.test(name)
  const repair = isFile ? `to judge a door file write \`sillsight judge ${name}\`` : (didYouMean(name, names) ?? 'see `sillsight --help`')
  return { code: 'unknown-command', place: 'command line', expected: `one of ${names.join(', ')}`, got: shown(name), repair }
}

const noCommand: Problem = {
  code: 'missing-command',
  place: 'command line',
  expected: 'a command',
  got: 'nothing',
  repair: 'try `sillsight demo`, or `sillsight --help` for all commands',
}

function requestOf(command: Command, words: readonly string[], options: readonly TypedOption[]): Request {
  const values = options.flatMap(({ name, value }) => (value === undefined ? [] : [[name, value] as const]))
  return {
    command: command.name,
    words,
    switches: new Set(options.filter(({ value }) => value === undefined).map(({ name }) => name)),
    values: new Map(values),
  }
}
