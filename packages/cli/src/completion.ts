import { type Command, commands, everywhere, type Option } from './commands.ts'

/** A script that completes commands, options, their values and file names, made from the table of commands. */
export function completionScript(shell: string): string {
  const script = { bash, zsh, fish }[shell]
  if (!script) throw new Error(`no completion for ${shell}`)
  return script()
}

const takesFile = new Set(['FILE', 'DIR'])

function optionsOf({ options }: Command): readonly Option[] {
  return [...options, ...everywhere]
}

function flags(options: readonly Option[]): string {
  return options.map(({ name }) => `--${name}`).join(' ')
}

function bash(): string {
  const values = allOptions()
    .filter(({ value }) => value !== undefined)
    .map(
      ({ name, value = '', choices = [] }) =>
        `    --${name}) COMPREPLY=(${takesFile.has(value) ? '$(compgen -f -- "$word")' : `$(compgen -W "${choices.join(' ')}" -- "$word")`}); return ;;`,
    )
  const cases = commands.map(
    (command) => `    ${command.name}) options="${flags(optionsOf(command))}"; words="${(command.choices ?? []).join(' ')}" ;;`,
  )
  return `# sillsight completion for bash: source <(sillsight completion bash)
_sillsight() {
  local word="\${COMP_WORDS[COMP_CWORD]}" before="\${COMP_WORDS[COMP_CWORD-1]}" command="" options="${flags(everywhere)}" words="" i
  COMPREPLY=()
  case "$before" in
${values.join('\n')}
  esac
  for ((i = 1; i < COMP_CWORD; i++)); do
    case "\${COMP_WORDS[i]}" in
      ${commands.map(({ name }) => name).join('|')}) command="\${COMP_WORDS[i]}"; break ;;
    esac
  done
  case "$command" in
    "") words="${commands.map(({ name }) => name).join(' ')} help" ;;
${cases.join('\n')}
  esac
  if [[ "$word" == -* ]]; then COMPREPLY=($(compgen -W "$options" -- "$word"))
  elif [[ -n "$words" ]]; then COMPREPLY=($(compgen -W "$words" -- "$word"))
  elif [[ -n "$command" ]]; then compopt -o filenames 2>/dev/null; COMPREPLY=($(compgen -f -- "$word"))
  fi
}
complete -F _sillsight sillsight
`
}

function zsh(): string {
  const option = ({ name, short, value, choices, means }: Option): string => {
    const action =
      value === undefined
        ? ''
        : `:${value}:${choices ? `(${choices.join(' ')})` : value === 'DIR' ? '_files -/' : value === 'FILE' ? '_files' : ' '}`
    const names = short ? `'(-${short} --${name})'{-${short},--${name}}'` : `'--${name}`
    return `${names}[${zshQuoted(means)}]${zshQuoted(action, false)}'`
  }
  const cases = commands.map((command) => {
    const rest = command.choices ? `'1:${command.takes}:(${command.choices.join(' ')})'` : command.words[1] === 0 ? '' : `'*:file:_files'`
    return `    ${command.name}) _arguments ${[...optionsOf(command).map(option), rest].filter(Boolean).join(' ')} ;;`
  })
  return `#compdef sillsight
# sillsight completion for zsh
_sillsight() {
  local -a names=(${commands.map(({ name, summary }) => `'${name}:${zshQuoted(summary, false)}'`).join(' ')})
  if (( CURRENT == 2 )); then
    _describe command names
    _arguments ${everywhere.map(option).join(' ')}
    return
  fi
  local name=$words[2]
  shift words; (( CURRENT-- ))
  case $name in
${cases.join('\n')}
  esac
}
if [[ $funcstack[1] == _sillsight ]]; then _sillsight "$@"; else compdef _sillsight sillsight; fi
`
}

function zshQuoted(text: string, brackets = true): string {
  const quoted = text.replaceAll("'", `'\\''`)
  return brackets ? quoted.replaceAll(/[[\]:]/g, '\\$&') : quoted
}

function fish(): string {
  const option = (condition: string, { name, short, value, choices, means }: Option): string => {
    const takes = value === undefined ? '' : choices ? ` -x -a '${choices.join(' ')}'` : takesFile.has(value) ? ' -r -F' : ' -x'
    return `complete -c sillsight${condition}${short ? ` -s ${short}` : ''} -l ${name}${takes} -d '${fishQuoted(means)}'`
  }
  const perCommand = commands.flatMap((command) => {
    const condition = ` -n '__fish_seen_subcommand_from ${command.name}'`
    const words = command.choices ? [`complete -c sillsight -f${condition} -a '${command.choices.join(' ')}'`] : []
    return [...words, ...command.options.map((each) => option(condition, each))]
  })
  return [
    '# sillsight completion for fish',
    ...commands.map(({ name, summary }) => `complete -c sillsight -f -n __fish_use_subcommand -a ${name} -d '${fishQuoted(summary)}'`),
    ...everywhere.map((each) => option('', each)),
    ...perCommand,
    '',
  ].join('\n')
}

function fishQuoted(text: string): string {
  return text.replaceAll('\\', '\\\\').replaceAll("'", "\\'")
}

function allOptions(): readonly Option[] {
  return [...new Map([...everywhere, ...commands.flatMap(({ options }) => options)].map((option) => [option.name, option])).values()]
}
