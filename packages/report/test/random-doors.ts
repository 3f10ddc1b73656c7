import type { Door, Judgement, Obstacle, Sensor, Zone } from '@sillsight/engine'
import { coverageOf, judgementOf, loadingDoor, lyingBody, scanner, seeded } from './doors.ts'

const NAMES = ['bollard', 'pallet rack', 'column', 'crash rail at the left guide', 'cabinet for the extinguisher, painted', 'kerb']

/** A door of any size with obstacles, sensors and unseen places anywhere: for laws about drawings. Nothing of it is computed. */
export function randomDoor(seed: number): { readonly door: Door; readonly judgement: Judgement } {
  const random = seeded(seed)
  const between = (from: number, to: number): number => Math.round(from + random() * (to - from))
  const pick = <T>(values: readonly T[]): T => values[Math.floor(random() * values.length)] as T
  const width_mm = between(800, 9000)
  const height_mm = between(2000, 6000)
  const zone: Zone = {
    id: 'zone',
    name: pick(['at the leaf', 'the whole aisle on the side of the yard']),
    purpose: 'presence-at-leaf',
    function: 'presence',
    bodies: ['lying'],
    allowedPocket_mm: 0,
    xMin_mm: between(-400, 200),
    xMax_mm: width_mm + between(-200, 400),
    yMin_mm: pick([0, 0, -between(500, 2000)]),
    yMax_mm: between(300, 3500),
    pitch_mm: pick([25, 50, 100]),
    longestStay_s: 60,
    family: undefined,
  }
  const obstacles = Array.from({ length: between(0, 6) }, (_, i): Obstacle => {
    const base = {
      id: `thing-${i}`,
      name: pick(NAMES),
      implied: false,
      x_mm: between(-500, width_mm + 500),
      y_mm: between(-1500, 3500),
      from_mm: 0,
      to_mm: between(200, 2500),
    }
    if (random() < 0.5) return { ...base, shape: 'post', radius_mm: between(30, 300) }
    return { ...base, shape: 'box', size_mm: [between(50, 1500), between(50, 800)], yaw_rad: random() * 3 }
  })
  const sensors = Array.from(
    { length: between(1, 4) },
    (_, i): Sensor => ({
      ...scanner,
      id: i === 0 ? 'scanner' : `scanner-${i}`,
      name: pick(['sensor', 'corner scanner', 'row in the header over the aisle']),
      pose: {
        ...scanner.pose,
        x_mm: between(0, width_mm),
        y_mm: between(-400, 400),
        z_mm: between(1500, height_mm + 300),
        tilt_rad: pick([0, 0.2]),
      },
    }),
  )
  const [state] = loadingDoor.states
  if (!state) throw new Error('states must not be empty, got none')
  const profile =
    random() < 0.5
      ? [{ y_mm: 0, z_mm: 0 }]
      : [
          { y_mm: -800, z_mm: between(-300, 300) },
          { y_mm: 0, z_mm: 0 },
          { y_mm: 900, z_mm: between(-300, 300) },
        ]
  const walls = state.obstacles
    .filter(({ implied }) => implied)
    .map((wall): Obstacle => (wall.id === 'wall-width' ? { ...wall, x_mm: width_mm + 1000 } : wall))
  const door: Door = {
    ...loadingDoor,
    name: pick([
      'Gate',
      'North dock 4 behind the old weigh-house',
      'A door with a name that is far too long for any title block that was ever drawn anywhere',
    ]),
    opening: { width_mm, height_mm },
    states: [{ ...state, floor: { profile, slopeX: pick([0, 0.02]), tolerance_mm: 10 }, obstacles: [...walls, ...obstacles] }],
    zones: [zone],
    sensors,
    bodies: [lyingBody],
  }
  const blobs = Array.from({ length: between(0, 25) }, () => ({
    x_mm: between(zone.xMin_mm, zone.xMax_mm),
    y_mm: between(zone.yMin_mm, zone.yMax_mm),
    reach_mm: between(20, pick([80, 200, 900])),
  }))
  const strip_mm = pick([0, 0, 50, 400])
  const isBlind = (x_mm: number, y_mm: number): boolean =>
    (y_mm > 0 && y_mm < strip_mm) || blobs.some((blob) => Math.abs(x_mm - blob.x_mm) + Math.abs(y_mm - blob.y_mm) < blob.reach_mm)
  return { door, judgement: judgementOf(door, [coverageOf(door, zone, isBlind)]) }
}
