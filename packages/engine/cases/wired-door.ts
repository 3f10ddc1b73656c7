import type { Door } from '../src/model/door.ts'
import type { Declared } from '../src/model/sensor.ts'
import type { Wiring } from '../src/model/wiring.ts'
import { downward, measured, plainDoor } from './plain-door.ts'
import { twoRelayDoor } from './two-relay-door.ts'

/** The plain door with its sensor called `scanner`, wired as in `two-relay-door.ts`; copper from 5 to 30 °C, a source that says what it is. */
export function wiredDoor(changes: (wiring: Wiring) => Wiring = (wiring) => wiring, door: Partial<Door> = {}): Door {
  const plain = twoRelayDoor()
  const wiring: Wiring = {
    ...plain,
    supply: { ...plain.supply, limited: 'extra-low', source: measured },
    control: { ...plain.control, source: measured },
    sensors: plain.sensors.map((sensor) => ({ ...sensor, source: measured })),
    copper: { coldest_degC: 5, hottest_degC: 30 },
  }
  return plainDoor({ sensors: [scanner()], wiring: changes(wiring), ...door })
}

export function scanner(declares?: Partial<Declared>): ReturnType<typeof downward> {
  const place = { x_mm: 500, y_mm: 0, z_mm: 2000 }
  return downward([place], { id: 'scanner', ...(declares ? { declares: { ...UNSAID, ...declares } } : {}) })
}

const UNSAID: Declared = {
  device: undefined,
  performanceLevel: undefined,
  category: undefined,
  testedBy: undefined,
  listedFor: undefined,
  mttfd_y: undefined,
  b10d: undefined,
  operations_per_y: undefined,
  diagnosticCoverage_percent: undefined,
  commonCause: undefined,
  source: measured,
}
