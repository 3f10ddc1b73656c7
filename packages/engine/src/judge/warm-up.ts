import type { Control } from '../model/control.ts'
import type { Door } from '../model/door.ts'
import type { Sensor } from '../model/sensor.ts'
import type { InputPath } from '../model/source.ts'
import { asValue } from './control-fact.ts'
import { notApplicable, orNoSubject, quantity, step } from './drafts.ts'
import { CONCEPT, CONTROL, sensorPath } from './paths.ts'
import type { Draft, Rule } from './rule.ts'

const POWER_RETURN: InputPath = `${CONTROL}/powerReturn`
const CLOSES_AFTER: InputPath = `${POWER_RETURN}/closesAfter_s`

/**
 * After power has returned no closing can begin while a presence output says "clear" because its sensor is not awake yet. One finding for each presence
 * output. Measured is the time for which a closing could begin unguarded; power is taken to return to control and sensors at once. An output that may
 * say either counts as clear.
 *
 * Facts: `sensor`, `sensorName`, `output`, and as far as somebody said `says` (`detecting`, `clear`, `undefined`), `warmUp_s`, `does` (what the control does),
 * `closesAfter_s`.
 */
export const warmUp: Rule = {
  id: 'warm-up',
  source: {
    basis: 'common practice',
    note: 'no closing begins while a presence sensor that is not awake yet says that nobody is there',
  },
  judge: ({ door }) => {
    const outputs = door.sensors.flatMap(presenceOutputs)
    if (outputs.length > 0 && door.concept?.drive === 'hold-to-run') return [notApplicable('not-required-by-concept')]
    return orNoSubject(outputs.map((each) => draftOf(door, each)))
  },
}

interface PresenceOutput {
  readonly sensor: Sensor
  readonly output: string
  /** Sensor, and the first field that switches it. */
  readonly key: string
}

/** Outputs that act for presence, each once. */
function presenceOutputs(sensor: Sensor): readonly PresenceOutput[] {
  if (sensor.kind === 'zone-only') return sensor.function === 'presence' ? [{ sensor, output: sensor.output, key: sensor.id }] : []
  const fields = sensor.fields.filter(({ function: acts }) => acts === 'presence')
  const firsts = fields.filter(({ output }, i) => fields.findIndex((other) => other.output === output) === i)
  return firsts.map(({ id, output }) => ({ sensor, output, key: `${sensor.id}/${id}` }))
}

function draftOf(door: Door, { sensor, output, key }: PresenceOutput): Draft {
  const { control } = door
  const stated = control?.powerReturn
  const path = sensorPath(door, sensor)
  const listed = sensor.outputs?.findIndex(({ name }) => name === output) ?? -1
  const says = sensor.outputs?.[listed]?.whileWarmingUp
  const saysPath = listed < 0 ? `${path}/outputs` : `${path}/outputs/${listed}/whileWarmingUp`
  const { warmUp_s } = sensor
  const frame = {
    subject: { kind: 'sensor', id: sensor.id } as const,
    key,
    facts: {
      sensor: sensor.id,
      sensorName: sensor.name,
      output,
      ...(says === undefined ? {} : { says }),
      ...(warmUp_s === undefined ? {} : { warmUp_s }),
      ...(stated === undefined ? {} : { does: stated.does }),
      ...(stated?.closesAfter_s === undefined ? {} : { closesAfter_s: stated.closesAfter_s }),
    },
    restsOn: {
      inputs: [`${path}/outputs`, `${path}/warmUp_s`, CONCEPT, POWER_RETURN],
      values: stated === undefined || says === 'detecting' ? [] : [asValue(POWER_RETURN, stated.source)],
      bodies: [],
      sensors: [sensor],
    },
  }
  const answer = unguarded({ says, warmUp_s, stated })
  if (answer.needs.length > 0) {
    const needs = answer.needs.map(
      (need) => ({ says: saysPath, warmUp: `${path}/warmUp_s`, control: POWER_RETURN, closes: CLOSES_AFTER })[need],
    )
    return { ...frame, verdict: 'undetermined', reason: 'missing-input', needs, steps: [] }
  }
  const measured = quantity(answer.time_s, 's')
  const inputs = [saysPath, `${path}/warmUp_s`, POWER_RETURN]
  return {
    ...frame,
    verdict: answer.time_s > 0 ? 'fail' : 'pass',
    measured,
    limit: quantity(0, 's'),
    steps: [step('time unguarded', measured, 'judge/warm-up', { inputs }, 'max(0, warm-up - time until a closing can begin)')],
  }
}

interface Given {
  readonly says: 'detecting' | 'clear' | 'undefined' | undefined
  readonly warmUp_s: number | undefined
  readonly stated: Control['powerReturn']
}

/** For how long a closing can begin unguarded, or what has to be known first. */
function unguarded({ says, warmUp_s, stated }: Given): {
  readonly time_s: number
  readonly needs: readonly ('says' | 'warmUp' | 'control' | 'closes')[]
} {
  if (says === 'detecting' || warmUp_s === 0 || stated?.does === 'moves-guarded') return { time_s: 0, needs: [] }
  // whoever moves at once can close at once; a command may come at any time, unless the control does not heed it so early
  const closesAfter_s = stated?.closesAfter_s ?? (stated?.does === 'moves' ? 0 : undefined)
  const time_s = Math.max(0, (warmUp_s ?? Infinity) - (closesAfter_s ?? 0))
  if (closesAfter_s !== undefined && time_s === 0) return { time_s, needs: [] }
  const unknown = [
    ...(says === undefined ? (['says'] as const) : []),
    ...(warmUp_s === undefined ? (['warmUp'] as const) : []),
    ...(stated === undefined ? (['control'] as const) : closesAfter_s === undefined ? (['closes'] as const) : []),
  ]
  return { time_s, needs: unknown }
}
