import { describe, expect, it } from 'vitest'
import { seedsFrom } from './evidence-holds.ts'
import { contactsOf, doorOfFile, onlyJust, type PassingFile, passagesOf, verifiedPassages } from './passing-doors.ts'
import { diceOf } from './random-numbers.ts'
import { TURNING_CORRUPTIONS, type TurningPassages } from './turning-corruptions.ts'
import { fileOfTurning, TURNING } from './turning-doors.ts'

/** A door only just in time, and what is written about it. */
function written(kind: string, seed: number): { readonly file: PassingFile; readonly passages: TurningPassages[] } | undefined {
  const file = onlyJust(fileOfTurning(kind, seed))
  const door = file && doorOfFile(file)
  return file && door && { file, passages: passagesOf(door) as TurningPassages[] }
}

describe('corrupted evidence about leaves that turn', () => {
  it(`is refused, whatever is corrupted (${Object.keys(TURNING_CORRUPTIONS).length} ways; the first door of seeds 1 to 9 of three kinds that is in time, and only just)`, {
    timeout: 120_000,
  }, () => {
    const accepted: string[] = []
    const tried = new Set<string>()
    for (const kind of Object.keys(TURNING).filter((each) => !/follow|weak|parts/.test(each))) {
      const { file, passages } =
        seedsFrom(1, 9).reduce<ReturnType<typeof written>>((found, seed) => found ?? written(kind, seed), undefined) ?? {}
      if (file === undefined || passages === undefined) throw new Error(`a door must be in time: ${kind}`)
      expect(verifiedPassages(file, passages).ok).toBe(true)
      for (const [name, corrupt] of Object.entries(TURNING_CORRUPTIONS)) {
        const changed = structuredClone(passages)
        if (changed[0] === undefined || !corrupt(changed[0], diceOf(7))) continue
        tried.add(name)
        if (verifiedPassages(file, changed).ok) accepted.push(`${name}, ${kind}`)
      }
    }
    expect(accepted).toEqual([])
    expect(Object.keys(TURNING_CORRUPTIONS).filter((name) => !tried.has(name))).toEqual([])
  })

  it('is refused where a contact has another speed, instant, place, side, opening or part, or its field sees by the leaf', {
    timeout: 120_000,
  }, () => {
    const accepted: string[] = []
    let tried = 0
    for (const seed of [4, 6]) {
      const file = fileOfTurning('leaves that turn, with weak brakes', seed)
      const door = doorOfFile(file)
      const [contact] = door === undefined ? [] : contactsOf(door)
      if (contact === undefined) continue
      tried++
      const isOk = (change: object, of = file) => verifiedPassages(of, [], [{ ...contact, ...change }]).ok
      expect(isOk({})).toBe(true)
      const at = (name: string) => contact[name] as number
      const changes = {
        faster: { relative_mm_per_s: at('relative_mm_per_s') + 1000 },
        slower: { relative_mm_per_s: Math.max(0, at('relative_mm_per_s') - 200) },
        later: { contact_s: at('contact_s') + 0.5 },
        sooner: { contact_s: at('contact_s') * 0.7 },
        'begun sooner': { begins_s: at('begins_s') - 1 },
        'beside the lane': { x_mm: at('x_mm') + 5000 },
        'from elsewhere': { opening_mm: at('opening_mm') - 5 },
        'a part': { met: 0 },
        'a body of nobody': { body: 'nobody' },
      }
      for (const [name, change] of Object.entries(changes)) if (isOk(change)) accepted.push(`${name}, seed ${seed}`)
      const hides = structuredClone(file)
      for (const { fields } of hides.sensors) for (const field of fields) field['leafHides'] = 'bodies'
      if (isOk({}, hides)) accepted.push(`hides, seed ${seed}`)
    }
    expect(accepted).toEqual([])
    expect(tried).toBeGreaterThan(0)
  })

  it('cannot be shown where a field on its list sees by the leaf, and says so', { timeout: 60_000 }, () => {
    const { file, passages } = written('leaves that swing', 1) ?? {}
    if (file === undefined) throw new Error('the door must be in time')
    for (const change of [{ leafHides: 'bodies' }, { leafBlanking: { beside_mm: 10, before_mm: 10 } }]) {
      const changed = structuredClone(file)
      for (const { fields } of changed.sensors) for (const field of fields) Object.assign(field, change)
      const result = verifiedPassages(changed, passages)
      expect(result.ok ? 'ok' : result.issues[0]).toMatchObject({ code: 'cannot-show', path: 'passages/0/fields' })
    }
  })

  it('is refused or accepted, and never crashes, whatever stands in place of any of its values', { timeout: 60_000 }, () => {
    const { file, passages } = written('leaves that turn, and falls', 5) ?? {}
    if (file === undefined || passages === undefined) throw new Error('the door must be in time')
    const accepted: string[] = []
    let tried = 0
    const walk = (at: Record<string, unknown>, depth: number) => {
      for (const key of Object.keys(at).slice(depth > 4 ? 0 : -4)) {
        const kept = at[key]
        for (const junk of [undefined, -1e9, 1e308, 'x', {}, [[[]]], true]) {
          at[key] = junk
          tried++
          if (verifiedPassages(file, passages).ok && !(key === 'to_mm' && junk === 1e308)) accepted.push(`${key} ${JSON.stringify(junk)}`)
        }
        at[key] = kept
        if (depth < 7 && typeof kept === 'object' && kept !== null) walk(kept as Record<string, unknown>, depth + 1)
      }
    }
    const [{ falls = [] } = {}] = passages
    walk((falls[0]?.closings[0] ?? {}) as unknown as Record<string, unknown>, 5)
    walk((passages[0]?.stands[0]?.closings[0] ?? {}) as unknown as Record<string, unknown>, 4)
    expect(accepted).toEqual([])
    expect(tried).toBeGreaterThan(60)
  })
})
