import { type ReverseTest, reverseTest } from '../coverage/seen-in-any-posture.ts'
import type { DoorState } from '../model/door.ts'
import type { Zone } from '../model/zone.ts'
import { coverageInputs, mustSee, restsOnCoverage, zoneFacts } from './coverage-drafts.ts'
import { orNoSubject, quantity, step } from './drafts.ts'
import { fieldsOfFunction } from './fields.ts'
import { OBSTACLES, zonePath } from './paths.ts'
import type { Context, Draft, Rule } from './rule.ts'
import { turningBodies } from './zone-covered.ts'

/**
 * The reverse test: in a zone that must not be seen (a road, a neighbour's ground) no free placement is seen in any posture.
 *
 * Facts besides `zoneFacts`: `seen`, `free` (cells), `seenArea_mm2`, `pitch_mm`, `fields` (number of that function), and where something is
 * seen `xMin_mm`, `xMax_mm`, `yMin_mm`, `yMax_mm` (extent of the seen cells).
 */
export const mustNotSee: Rule = {
  id: 'must-not-see',
  source: { basis: 'our decision', document: 'docs/method.md', clause: '3', note: 'the reverse test' },
  judge: (context) => {
    const { zones, states } = context.door
    const reversed = zones.filter((zone) => !mustSee(zone))
    return orNoSubject(reversed.flatMap((zone) => states.map((state) => draftOf(context, zone, state))))
  },
}

function draftOf(context: Context, zone: Zone, state: DoorState): Draft {
  const { door } = context
  const fields = fieldsOfFunction(door, zone.function)
  const test = reverseTest(door, zone, state, fields)
  const sensors = [...new Set(fields.map(({ sensor }) => sensor))]
  const restsOn = restsOnCoverage(context, zone, sensors)
  const frame = {
    subject: { kind: 'zone', id: zone.id } as const,
    state: state.id,
    provisional: 'grid' as const,
    steps: [
      step(
        'seen placements',
        quantity(test.seen, '1'),
        'coverage/seen-in-any-posture',
        { inputs: coverageInputs(door, zone, sensors) },
        'free and seen in at least one posture',
      ),
      step(
        'seen area',
        quantity(test.seenArea_mm2, 'mm2'),
        'coverage/seen-in-any-posture',
        { steps: ['seen placements'] },
        'cells * pitch * pitch',
      ),
    ],
    facts: { ...zoneFacts({ zone, state }), ...factsOf(test), pitch_mm: zone.pitch_mm, fields: fields.length },
    restsOn,
  }
  if (test.free === 0) return { ...frame, verdict: 'undetermined', reason: 'nothing-free', needs: [zonePath(door, zone), OBSTACLES] }
  const against = { measured: quantity(test.seenArea_mm2, 'mm2'), limit: quantity(0, 'mm2') }
  if (test.worstCase) return { ...frame, ...against, verdict: 'fail', worstCase: test.worstCase }
  const turning = turningBodies(door, restsOn.bodies)
  if (turning.length > 0) return { ...frame, ...against, verdict: 'undetermined', reason: 'yaw-range-sampled', needs: turning }
  return { ...frame, ...against, verdict: 'pass' }
}

function factsOf({ seen, free, seenArea_mm2, extent }: ReverseTest): Draft['facts'] {
  return { seen, free, seenArea_mm2, ...extent }
}
