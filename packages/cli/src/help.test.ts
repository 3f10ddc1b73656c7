import { describe, expect, it } from 'vitest'
import { decide } from './arguments.ts'
import { commands } from './commands.ts'
import { helpText, wrapped } from './help.ts'

const at80 = { demoDoor: 'demo/door.json', program: 'sillsight', width: 80 }
const programHelp = helpText(undefined, at80)

describe('the help', () => {
  it('shows every command and every exit code', () => {
    const flat = programHelp.replaceAll(/\s+/g, ' ')
    for (const { name, takes, summary } of commands) expect(flat).toContain(`${name} ${takes} ${summary}`.replace('  ', ' '))
    for (const code of [0, 1, 2, 3, 70, 130, 141]) expect(programHelp).toMatch(new RegExp(`^ {2}${code} `, 'm'))
  })

  it('shows every option of a command with what it means', () => {
    for (const command of commands) {
      const text = helpText(command, at80).replaceAll(/\s+/g, ' ')
      for (const { name, value, means } of command.options) expect(text).toContain(`--${name} ${value ? `${value} ` : ''}${means}`)
    }
  })

  it('gives examples that the program accepts as they stand', () => {
    const examples = commands.flatMap((command) => helpText(command, at80).match(/(?<=^ {2}\$ ).*/gm) ?? [])
    expect(examples.length).toBeGreaterThan(commands.length)
    for (const example of examples) {
      const words = /\bsillsight ([^<>|)]*)/.exec(example)?.[1]?.trim().split(' ')
      expect(decide(words ?? []), example).toMatchObject({ kind: 'run' })
    }
  })

  it('keeps to 80 columns, apart from examples', () => {
    for (const text of [programHelp, ...commands.map((command) => helpText(command, at80))]) {
      for (const line of text.split('\n').filter((each) => !each.startsWith('  $'))) expect(line.length, line).toBeLessThanOrEqual(80)
    }
  })

  it('breaks lines between words only', () => {
    expect(wrapped('aa bb cccccc d', 5)).toEqual(['aa bb', 'cccccc', 'd'])
  })
})
