import { putAt } from '../entry/places.ts'
import type { Draft } from '../store/contract.ts'

/** Takes a sensor away. One without an id is called by its place: those behind the one that goes keep what they were called. */
export function withoutSensor(draft: Draft, index: number): void {
  for (const [i, sensor] of (draft.sensors ?? []).entries())
    if (i > index && sensor.id === undefined) putAt(draft, `sensors/${i}/id`, `sensor-${i + 1}`)
  ;(draft.sensors as unknown[]).splice(index, 1)
}
