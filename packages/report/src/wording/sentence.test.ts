import type { Finding } from '@sillsight/engine'
import { describe, expect, it } from 'vitest'
import { loadingDoor } from '../../test/doors.ts'
import { METRIC } from '../../test/readers.ts'
import { mend, sentence } from './sentence.ts'

const pocket = {
  verdict: 'fail',
  id: 'blind-pocket:leaf-yard/B',
  rule: 'blind-pocket',
  subject: { kind: 'pocket', id: 'leaf-yard/B' },
  edition: '2026-11',
  state: 'as-surveyed',
  provisional: 'grid',
  steps: [],
  basis: [],
  measured: { value: 111.80339887, unit: 'mm' },
  limit: { value: 0, unit: 'mm' },
  worstCase: { body: 'lying', posture: 1, x_mm: 3550, y_mm: 660, z_mm: 0, yaw_rad: 0, state: 'as-surveyed' },
  facts: {
    zone: 'leaf-yard',
    zoneName: 'at the leaf, yard',
    letter: 'B',
    cause: 'hidden-behind',
    obstacle: 'bollard',
    xMin_mm: 3500,
    xMax_mm: 3600,
    yMin_mm: 600,
    yMax_mm: 650,
  },
} as const satisfies Finding

describe('sentence', () => {
  // Hand calculation: 4000 - 3550 = 450 from the left jamb seen from side A; 660 - 20 = 640 from the leaf face; sqrt(100^2 + 50^2) = 111.803 -> 111.9.
  it('says of a pocket which body goes unseen, where by tape, why and how large the pocket is', () => {
    expect(sentence(loadingDoor, pocket, { ...METRIC })).toBe(
      'Pocket B: a body of 300 \u00d7 700 \u00d7 200 mm, lying across, goes unseen with its middle 450 mm from the left jamb edge, 640 mm out from the leaf face, seen from the yard. ' +
        'It is hidden behind the bollard. The pocket is 100 mm along the leaf by 50 mm deep and 111.9 mm across; none may stay in zone \u201cat the leaf, yard\u201d.',
    )
  })

  it('names what hands can do about the cause', () => {
    expect(mend(loadingDoor, pocket, { ...METRIC })).toBe('Move what is in the way, or add a sensor that looks from the other end.')
  })

  it('names the state where the door has several', () => {
    const [state] = loadingDoor.states
    if (!state) throw new Error('a door has a state')
    const door = {
      ...loadingDoor,
      states: [
        { ...state, name: 'leveller down' },
        { ...state, id: 'up', name: 'leveller up' },
      ],
    }
    expect(sentence(door, pocket, { ...METRIC })).toContain('goes unseen (leveller down) with')
  })

  it('makes hostile names harmless', () => {
    const said = sentence(loadingDoor, { ...pocket, facts: { ...pocket.facts, zoneName: 'a\u001b]0;x\u0007\nb' } }, { ...METRIC })
    expect(said).toContain('zone \u201ca ]0;x b\u201d')
  })

  it('tells a pass that waits for its grounds as no pass', () => {
    const waiting: Finding = { ...pocket, verdict: 'undetermined', reason: 'limit-from-memory', needs: ['confirmations/lying'] }
    expect(sentence(loadingDoor, waiting, { ...METRIC })).toMatch(
      /^So far in order, but it rests on what is only remembered and was never held against its page: the test body 700 \u00d7 300 \u00d7 200 mm\./,
    )
  })
})
