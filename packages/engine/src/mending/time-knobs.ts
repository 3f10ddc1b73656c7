import type { Door } from '../model/door.ts'
import type { Field } from '../model/sensor.ts'
import type { Knob } from './knobs.ts'
import type { DrivePart, OutputPart } from './repair.ts'

/** What controls and outputs can be set to: hundredths of a metre per second and of a second, holds to a tenth. */
const SPEED_GRAIN_MM_PER_S = 10
const TIME_GRAIN_S = 0.01
const HOLD_GRAIN_S = 0.1

/** Slower than this a door stands open for longer than anybody puts up with. */
const SLOWEST_SHARE = 0.3
const LONGEST_HOLD_S = 10
const MOST_HOLD_S = 5

/** What can be set in time for whoever passes: a slower leaf, shorter delays, outputs that answer faster or hold longer. Only toward the safer side. */
export function timeKnobs(door: Door): readonly Knob[] {
  return [
    ...driveKnob(door, 'closeSpeed_mm_per_s', SPEED_GRAIN_MM_PER_S, SLOWEST_SHARE),
    ...driveKnob(door, 'stopDelay_s', TIME_GRAIN_S, 0),
    ...driveKnob(door, 'reverseDelay_s', TIME_GRAIN_S, 0),
    ...responseKnob(door),
    ...holdKnob(door),
  ]
}

function driveKnob({ drive }: Door, part: DrivePart, grain: number, leastShare: number): readonly Knob[] {
  const from = drive?.[part]
  if (from === undefined || from <= grain) return []
  const low = Math.max(grain, from * leastShare)
  return [{ from, grain, low, high: from, most: from - low, step: (to) => ({ kind: 'set-drive', part, from, to: tidy(to) }) }]
}

interface Output {
  readonly sensor: string
  readonly field: Field
}

function presenceOutputs(door: Door): readonly Output[] {
  return door.sensors.flatMap((sensor) =>
    sensor.kind === 'zone-only'
      ? []
      : sensor.fields.filter((field) => field.function === 'presence').map((field) => ({ sensor: sensor.id, field })),
  )
}

/** Only devices that say how fast they can be set; all of them together, for a body may come from either side. */
function responseKnob(door: Door): readonly Knob[] {
  const settable = presenceOutputs(door).flatMap((output) => {
    const { response_s, fastestResponse_s } = output.field
    return response_s !== undefined && fastestResponse_s !== undefined && response_s > fastestResponse_s
      ? [{ ...output, set_s: response_s, fastest_s: fastestResponse_s }]
      : []
  })
  if (settable.length === 0) return []
  const from = Math.max(...settable.map(({ set_s }) => set_s))
  const low = Math.max(...settable.map(({ fastest_s }) => fastest_s))
  return outputKnob('response_s', from, { grain: TIME_GRAIN_S, low, high: from, most: from - low }, (to) =>
    settable.filter(({ set_s }) => set_s > to),
  )
}

function holdKnob(door: Door): readonly Knob[] {
  const held = presenceOutputs(door).flatMap((output) =>
    output.field.hold_s === undefined ? [] : [{ ...output, set_s: output.field.hold_s }],
  )
  if (held.length === 0) return []
  const from = Math.min(...held.map(({ set_s }) => set_s))
  return outputKnob('hold_s', from, { grain: HOLD_GRAIN_S, low: from, high: LONGEST_HOLD_S, most: MOST_HOLD_S }, (to) =>
    held.filter(({ set_s }) => set_s < to),
  )
}

function outputKnob(
  part: OutputPart,
  from: number,
  limits: Pick<Knob, 'grain' | 'low' | 'high' | 'most'>,
  concerned: (to: number) => readonly Output[],
): readonly Knob[] {
  const step = (wanted: number) => {
    const to = tidy(wanted)
    const fields = concerned(to).map(({ sensor, field }) => ({ sensor, field: field.id }))
    return { kind: 'set-outputs', part, fields, from, to } as const
  }
  return [{ ...limits, from, step }]
}

/** Whole grains, without what binary leaves of them. */
function tidy(value: number): number {
  return Math.round(value * 1e6) / 1e6
}
