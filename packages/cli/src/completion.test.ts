import { execFileSync } from 'node:child_process'
import { describe, expect, it } from 'vitest'
import { commands } from './commands.ts'
import { completionScript } from './completion.ts'

/** What a real bash offers after these words, the last of which is being typed. */
function offeredByBash(...words: readonly string[]): readonly string[] {
  const script = `${completionScript('bash')}
COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _sillsight; printf '%s\\n' "\${COMPREPLY[@]}"`
  return execFileSync('bash', ['-c', script, 'bash', ...words], { encoding: 'utf8', cwd: import.meta.dirname })
    .trim()
    .split('\n')
}

describe('completion', () => {
  it('offers commands, and of these those that fit', () => {
    expect(offeredByBash('sillsight', '')).toEqual([...commands.map(({ name }) => name), 'help'])
    expect(offeredByBash('sillsight', 'd')).toEqual(['draw', 'demo'])
  })

  it('offers the options of the command, wherever it stands', () => {
    expect(offeredByBash('sillsight', 'judge', 'a.json', '--j')).toEqual(['--json', '--jsonl', '--junit'])
    expect(offeredByBash('sillsight', '--ascii', 'draw', '--sc')).toEqual(['--scale'])
    expect(offeredByBash('sillsight', '--wi')).toEqual(['--width'])
  })

  it('offers the values of an option, the words of a command, and files', () => {
    expect(offeredByBash('sillsight', 'judge', '--units', '')).toEqual(['mm', 'ft-in'])
    expect(offeredByBash('sillsight', 'completion', '')).toEqual(['bash', 'zsh', 'fish'])
    expect(offeredByBash('sillsight', 'judge', 'main')).toEqual(['main.ts'])
    expect(offeredByBash('sillsight', 'draw', 'x', '--out', 'main')).toEqual(['main.ts'])
  })

  it('names every command and option for zsh and fish too', () => {
    for (const shell of ['zsh', 'fish']) {
      const script = completionScript(shell)
      for (const { name, options } of commands) {
        expect(script).toContain(name)
        for (const option of options) expect(script, shell).toContain(shell === 'zsh' ? `--${option.name}` : `-l ${option.name}`)
      }
    }
  })
})
