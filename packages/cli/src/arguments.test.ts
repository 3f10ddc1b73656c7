import { describe, expect, it } from 'vitest'
import { decide, type Request, wholeNumber } from './arguments.ts'
import { type Problem, Refusal } from './problem.ts'

const problemsOf = (...typed: readonly string[]): readonly Problem[] => {
  try {
    decide(typed)
  } catch (problem) {
    if (problem instanceof Refusal) return problem.problems
    throw problem
  }
  return []
}

const requestOf = (...typed: readonly string[]): Request => {
  const decision = decide(typed)
  if (decision.kind !== 'run') throw new Error(`expected a request, got ${decision.kind}`)
  return decision.request
}

describe('the command line', () => {
  it('reads a command with its words, switches and values, options before or after the command', () => {
    const request = requestOf('--units', 'ft-in', 'draw', 'a.json', '-o', 'a.svg', '--scale=1:25', '--force')
    expect(request.command).toBe('draw')
    expect(request.words).toEqual(['a.json'])
    expect([...request.switches]).toEqual(['force'])
    expect(Object.fromEntries(request.values)).toEqual({ units: 'ft-in', out: 'a.svg', scale: '1:25' })
  })

  it('takes a dash as standard input and as standard output, and anything after -- as a word', () => {
    expect(requestOf('judge', '-').words).toEqual(['-'])
    expect(requestOf('draw', 'a', '--out', '-').values.get('out')).toBe('-')
    expect(requestOf('judge', '--', '--odd.json').words).toEqual(['--odd.json'])
  })

  it('gives help wherever it is asked for', () => {
    expect(decide(['--help'])).toEqual({ kind: 'help', command: undefined })
    expect(decide(['-h'])).toEqual({ kind: 'help', command: undefined })
    expect(decide(['help', 'why'])).toMatchObject({ kind: 'help', command: { name: 'why' } })
    expect(decide(['why', '--help'])).toMatchObject({ kind: 'help', command: { name: 'why' } })
    expect(decide(['judge', 'x.json', '--version'])).toEqual({ kind: 'version' })
  })

  it('names every slip at once, with place, expected, got and repair', () => {
    const problems = problemsOf('judge', '--jsn', '--units', 'inches', '--brief=yes', '--scale', '2')
    expect(problems.map(({ code }) => code)).toEqual([
      'unknown-option',
      'bad-option-value',
      'needless-value',
      'option-of-another-command',
      'missing-word',
    ])
    for (const problem of problems) for (const part of Object.values(problem)) expect(part).not.toBe('')
    expect(problems[0]?.repair).toBe('Did you mean `--json`?')
    expect(problems[3]?.repair).toContain('`draw`')
  })

  it('guesses what a mistyped command meant, and that a lone file is to be judged', () => {
    expect(problemsOf('jugde', 'a.json')[0]).toMatchObject({ code: 'unknown-command', repair: 'Did you mean `judge`?' })
    expect(problemsOf('doors/a.json')[0]?.repair).toContain('sillsight judge doors/a.json')
    expect(problemsOf()[0]?.code).toBe('missing-command')
    expect(problemsOf('completion', 'bahs')[0]).toMatchObject({ code: 'unknown-word', repair: 'Did you mean `bash`?' })
  })

  it('refuses too few and too many words', () => {
    expect(problemsOf('judge')[0]?.code).toBe('missing-word')
    expect(problemsOf('schema', 'x')[0]?.code).toBe('too-many-words')
    expect(problemsOf('why', 'a', 'b', 'c')[0]).toMatchObject({ code: 'too-many-words', got: '"c"' })
  })

  it('does not take an option for the value of the option before it', () => {
    expect(problemsOf('draw', 'a', '--out', '--force')[0]).toMatchObject({ code: 'missing-value', place: '--out' })
    expect(problemsOf('draw', 'a', '--out')[0]).toMatchObject({ code: 'missing-value', got: 'nothing' })
  })

  it('reads whole numbers within their limits only', () => {
    expect(wholeNumber(requestOf('judge', 'a', '--workers', '4'), 'workers', 1, 256)).toBe(4)
    expect(wholeNumber(requestOf('judge', 'a'), 'workers', 1, 256)).toBeUndefined()
    for (const typed of ['0', '257', '-1', '1.5', 'many', '', '1e2', '99999999999']) {
      expect(() => wholeNumber(requestOf('judge', 'a', `--workers=${typed}`), 'workers', 1, 256)).toThrow(Refusal)
    }
  })
})
