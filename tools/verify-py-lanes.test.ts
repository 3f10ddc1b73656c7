import { describe, expect, it } from 'vitest'
import { PASSING_CORRUPTIONS, type Passages } from '../packages/verify/test/passing-corruptions.ts'
import {
  changedDoors,
  contactsOf,
  doorOfFile,
  isStruck,
  type PassingFile,
  passagesOf,
  passingFile,
} from '../packages/verify/test/passing-doors.ts'
import { fileOfKind, KINDS } from '../packages/verify/test/passing-kinds.ts'
import { diceOf } from '../packages/verify/test/random-numbers.ts'
import { type Pair, sha256, verdicts } from './verify-py.files.ts'

const SEEDS = Array.from({ length: 14 }, (_, i) => i + 1)

function pairOf(file: PassingFile, passages: unknown, contacts: unknown = []): Pair {
  const door = JSON.stringify(file)
  return { door, evidence: JSON.stringify({ sillsightEvidence: 1, doorSha256: sha256(door), coverages: [], passages, contacts }) }
}

describe('the Python verifier, of lanes with plain bodies', () => {
  it('accepts the true evidence of who is struck and of who is not (seeds 1 to 14)', () => {
    const found = SEEDS.flatMap((seed) => {
      const file = passingFile(diceOf(seed))
      const door = doorOfFile(file)
      return door === undefined ? [] : [{ file, passages: passagesOf(door) as unknown[], contacts: contactsOf(door) }]
    })
    const answers = verdicts(found.map(({ file, passages, contacts }) => pairOf(file, passages, contacts)))
    expect(answers.filter(({ exit }) => exit !== 0)).toEqual([])
    expect(found.filter(({ passages }) => passages.length > 0).length).toBeGreaterThan(1)
    expect(found.filter(({ contacts }) => contacts.length > 0).length).toBeGreaterThan(4)
  })

  it('refuses every corruption of it (the first doors of seeds 1 to 12 in which nobody is struck)', () => {
    const broken = SEEDS.slice(0, 12).flatMap((seed) => {
      const file = passingFile(diceOf(seed))
      const door = doorOfFile(file)
      const passages = door === undefined ? [] : (passagesOf(door) as Passages[])
      return Object.entries(PASSING_CORRUPTIONS).flatMap(([name, corrupt]) => {
        const changed = structuredClone(passages)
        return changed[0] !== undefined && corrupt(changed[0], diceOf(seed + 7))
          ? [{ name: `${name}, seed ${seed}`, pair: pairOf(file, changed) }]
          : []
      })
    })
    const answers = verdicts(broken.map(({ pair }) => pair))
    expect(broken.filter((_, i) => answers[i]?.exit !== 1).map(({ name }) => name)).toEqual([])
    expect(broken.length).toBeGreaterThan(30)
  })

  it('refuses it after every change of the door by which somebody is struck (doors only just in time, seeds 1 to 14, 5 changes each)', () => {
    const changed = changedDoors(SEEDS.slice(0, 14), 5)
    const answers = verdicts(changed.map(({ file, passages }) => pairOf(file, passages)))
    const accepted = changed.filter((_, i) => answers[i]?.exit === 0)
    expect(accepted.filter(({ door }) => isStruck(door)).map(({ name }) => name)).toEqual([])
    expect(accepted.length).toBeGreaterThan(3)
    expect(changed.length - accepted.length).toBeGreaterThan(10)
  })

  it('refuses a contact that is told of another instant, place or speed (seeds 1 to 14)', () => {
    const told = SEEDS.flatMap((seed) => {
      const file = passingFile(diceOf(seed))
      const door = doorOfFile(file)
      const [contact] = door === undefined ? [] : contactsOf(door)
      if (contact === undefined) return []
      const [relative, contact_s, x, pace] = ['relative_mm_per_s', 'contact_s', 'x_mm', 'pace_mm_per_s'].map(
        (name) => contact[name] as number,
      )
      const changes = [
        { relative_mm_per_s: (relative ?? 0) + 1000 },
        { contact_s: (contact_s ?? 0) + 100 },
        { x_mm: (x ?? 0) + 5000 },
        { pace_mm_per_s: (pace ?? 0) + 9000 },
      ]
      return changes.map((change) => ({
        name: `seed ${seed}: ${JSON.stringify(change)}`,
        pair: pairOf(file, [], [{ ...contact, ...change }]),
      }))
    })
    const answers = verdicts(told.map(({ pair }) => pair))
    expect(told.filter((_, i) => answers[i]?.exit !== 1).map(({ name }) => name)).toEqual([])
    expect(told.length).toBeGreaterThan(20)
  })

  it('has the times of an output for its fields, and asks nothing of what the output says while the sensor wakes', () => {
    const file = passingFile(diceOf(3))
    const says = (whileWarmingUp: string, response_s: number): PassingFile => {
      const listed = structuredClone(file)
      for (const sensor of listed.sensors as (PassingFile['sensors'][number] & { outputs?: object[] })[]) {
        const [field] = sensor.fields
        if (field === undefined) throw new Error('a grid must have a field')
        const { function: acts, hold_s, response_s: own_s } = field
        sensor.outputs = [{ name: 'OUT', function: acts, response_s: (own_s as number) + response_s, hold_s, whileWarmingUp }]
        for (const name of ['function', 'hold_s', 'response_s']) delete field[name]
      }
      return listed
    }
    const door = doorOfFile(says('detecting', 0))
    const passages = door && passagesOf(door)
    expect(passages).toHaveLength(1)
    const states = ['detecting', 'clear', 'undefined']
    expect(verdicts(states.map((each) => pairOf(says(each, 0), passages))).map(({ exit }) => exit)).toEqual([0, 0, 0])
    expect(verdicts(states.map((each) => pairOf(says(each, 5), passages))).map(({ exit }) => exit)).toEqual([1, 1, 1])
  })

  it('says of every other kind of lane that it cannot show it', () => {
    const kinds = ['weak brakes', 'measured stopping curves', 'followers', 'falls']
    const others = kinds.flatMap((kind) => {
      for (const seed of SEEDS) {
        const file = fileOfKind(kind, seed)
        const door = doorOfFile(file)
        const passages = door === undefined ? [] : (passagesOf(door) as unknown[])
        if (passages.length > 0) return [{ kind, pair: pairOf(file, passages) }]
      }
      return []
    })
    expect(others.map(({ kind }) => kind)).toEqual(kinds)
    expect(Object.keys(KINDS)).toEqual(expect.arrayContaining(kinds))
    const answers = verdicts(others.map(({ pair }) => pair))
    expect(answers.map(({ exit, issues }) => [exit, issues[0]?.got.includes('cannot show') || issues[0]?.expected])).toEqual(
      kinds.map(() => [1, true]),
    )
  })
})
