import { describe, expect, it } from 'vitest'
import { findingOf, findingsOf } from '../../cases/judged.ts'
import { fromMemory, plainDoor, zoneOnly } from '../../cases/plain-door.ts'
import { scanner, wiredDoor } from '../../cases/wired-door.ts'
import type { Door, ProtectionConcept } from '../model/door.ts'
import type { Declared } from '../model/sensor.ts'

const CONCEPT: ProtectionConcept = { people: 'public', drive: 'automatic', closingEdge: 'contact-free', listing: 'not-needed' }
const ENOUGH: Partial<Declared> = { device: 'electro-sensitive', performanceLevel: 'd', category: '2', testedBy: 'itself' }
const CONFIRMED = [{ value: 'required-level', document: 'EXAMPLE', edition: '1', clause: '2', by: 'A. Reader', on: '2026-11-01' }]
const judged = (declares: Partial<Declared> | undefined, concept: Partial<ProtectionConcept> = {}, changes: Partial<Door> = {}) =>
  findingOf(
    'permitted-function',
    plainDoor({ sensors: [scanner(declares)], concept: { ...CONCEPT, ...concept }, confirmations: CONFIRMED, ...changes }),
  )

describe('permitted-function', () => {
  it('is not settled without evidence, however good the coverage', () => {
    expect(judged(undefined)).toMatchObject({ verdict: 'undetermined', reason: 'missing-input', needs: ['sensors/0/declares'] })
    expect(judged({})).toMatchObject({
      verdict: 'undetermined',
      needs: ['sensors/0/declares/device', 'sensors/0/declares/performanceLevel', 'sensors/0/declares/testedBy'],
    })
  })
  it('passes with device, level and test shown, once somebody confirmed what is needed', () => {
    expect(judged(ENOUGH)).toMatchObject({ verdict: 'pass', measured: { value: 3 }, limit: { value: 3 } })
    expect(judged(ENOUGH, {}, { confirmations: [] })).toMatchObject({
      verdict: 'undetermined',
      reason: 'limit-from-memory',
      needs: ['confirmations/required-level'],
    })
    expect(judged({ ...ENOUGH, source: fromMemory })).toMatchObject({ needs: ['confirmations/sensors/0/declares'] })
  })
  it.each([
    ['device', { device: 'not-protective' }],
    ['device', { device: 'pressure-sensitive' }],
    ['level', { performanceLevel: 'b' }],
    ['level', { category: '1' }],
    ['level', { performanceLevel: undefined, category: 'B' }],
    ['test', { testedBy: 'nobody' }],
  ] as const)('fails for what its maker does not declare: %s %o', (lacks, changes) => {
    expect(judged({ ...ENOUGH, ...changes })).toMatchObject({ verdict: 'fail', facts: { lacks } })
  })
  it('takes a level or a category for evidence, and a device that gives way where the edge may be touched', () => {
    expect(judged({ ...ENOUGH, performanceLevel: undefined }).verdict).toBe('pass')
    expect(judged({ ...ENOUGH, category: undefined }).verdict).toBe('pass')
    expect(judged({ ...ENOUGH, device: 'pressure-sensitive' }, { closingEdge: 'presence-aid' }).verdict).toBe('pass')
  })
  it('needs a test of the control where the device leaves it to that', () => {
    const byControl = { ...ENOUGH, testedBy: 'control' } as const
    expect(judged(byControl)).toMatchObject({ verdict: 'undetermined', needs: ['wiring'] })
    const { wiring } = wiredDoor()
    expect(judged(byControl, {}, { wiring }).verdict).toBe('pass')
    const untested = wiring && { ...wiring, control: { ...wiring.control, test: undefined } }
    expect(judged(byControl, {}, { wiring: untested })).toMatchObject({ verdict: 'fail', facts: { lacks: 'test' } })
    const { test } = wiring?.control ?? {}
    const idle = wiring && { ...wiring, control: { ...wiring.control, test: test && { ...test, whenFailed: 'nothing' as const } } }
    expect(judged(byControl, {}, { wiring: idle })).toMatchObject({ verdict: 'fail', facts: { lacks: 'test' } })
  })
  it('wants it listed for the drive where the law does, and asks whether it does', () => {
    const listing = 'needed' as const
    expect(judged({ ...ENOUGH, listedFor: 'this-drive' }, { listing })).toMatchObject({ verdict: 'pass', limit: { value: 4 } })
    for (const listedFor of ['other-drives', 'nothing'] as const)
      expect(judged({ ...ENOUGH, listedFor }, { listing })).toMatchObject({ verdict: 'fail', facts: { lacks: 'listing' } })
    expect(judged(ENOUGH, { listing })).toMatchObject({ needs: ['sensors/0/declares/listedFor'] })
    const { listing: _, ...unsaid } = CONCEPT
    expect(judged(ENOUGH, {}, { concept: unsaid })).toMatchObject({ verdict: 'undetermined', needs: ['concept/listing'] })
  })
  it('is not asked where the concept does not rest on presence, of what only opens, or before there is a concept', () => {
    expect(judged(ENOUGH, { drive: 'hold-to-run' }).verdict).toBe('not-applicable')
    expect(judged(ENOUGH, { closingEdge: 'force-limited-edge' }).verdict).toBe('not-applicable')
    expect(findingsOf('permitted-function', plainDoor({ sensors: [zoneOnly()] }))).toMatchObject([{ verdict: 'not-applicable' }])
    expect(judged(ENOUGH, {}, { concept: undefined })).toMatchObject({ verdict: 'undetermined', needs: ['concept'] })
  })
})
