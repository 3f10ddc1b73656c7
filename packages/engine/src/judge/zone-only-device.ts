import { orNoSubject } from './drafts.ts'
import { sensorPath } from './paths.ts'
import type { Rule } from './rule.ts'

/**
 * Radar, loops, contact edges, cords and buttons have a drawn zone that no geometry decides: they are tested on site. One finding for each.
 *
 * Facts: `sensor`, `sensorName`, `function`, `output`, `needs` (what sets it off, as its maker says).
 */
export const zoneOnlyDevice: Rule = {
  id: 'zone-only-device',
  source: { basis: 'our decision', document: 'docs/method.md', clause: '1', note: 'devices with a drawn zone are not computed' },
  judge: ({ door }) =>
    orNoSubject(
      door.sensors.flatMap((sensor) => {
        if (sensor.kind !== 'zone-only') return []
        const { id, name, output, needs } = sensor
        return {
          verdict: 'undetermined',
          reason: 'not-computable',
          needs: [],
          subject: { kind: 'sensor', id },
          steps: [],
          facts: { sensor: id, sensorName: name, function: sensor.function, output, needs },
          restsOn: { inputs: [sensorPath(door, sensor)], values: [], bodies: [], sensors: [sensor] },
        }
      }),
    ),
}
