import { builtinSensors, parseDocument, passingBodies, toDoor } from '@sillsight/document'
import type { Door as EngineDoor, Field, Obstacle, Sensor } from '@sillsight/engine'
import { describe, expect, it } from 'vitest'
import { doorOf } from '../src/door.ts'
import type { Door, Passer, Solid } from '../src/plain.ts'
import { SHIPPED_BODIES, SHIPPED_SENSORS } from '../src/shipped.ts'
import { linesOf } from './oracle.ts'
import { randomDoorFile, sha256 } from './random-door-files.ts'

describe('a door file read by the verifier', () => {
  it('has the states, beams, fields, bodies, zones and tolerances that the document package makes of it (seeds 1 to 300)', () => {
    for (let seed = 1; seed <= 300; seed++) {
      const { text, readLibrary, door } = randomDoorFile(seed)
      expect({ seed, ...rounded(withoutTurns(doorOf(text, { sha256, readLibrary }))) }).toEqual({ seed, ...rounded(asRead(door)) })
    }
  })
  it('has what ships with the program in every sensor and body that names it', () => {
    expect(Object.keys(SHIPPED_SENSORS)).toEqual(builtinSensors().map(({ id }) => id))
    for (const use of Object.keys(SHIPPED_SENSORS))
      for (const side of ['a', 'b'])
        for (const tilt_deg of [undefined, 11]) {
          const sensors = [{ use, side, mountingHeight_mm: 2000, offset_mm: 100, tilt_deg }]
          const text = JSON.stringify({ sillsight: 1, survey: { opening: { width_mm: 1500, height_mm: 2100 } }, sensors })
          const parsed = parseDocument(text)
          if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
          expect(rounded(withoutTurns(doorOf(text, { sha256 })))).toEqual(rounded(asRead(toDoor(parsed.document))))
        }
    const bodies = Object.keys(SHIPPED_BODIES).map((use) => ({ id: use, use }))
    const text = JSON.stringify({ sillsight: 1, survey: { opening: { width_mm: 1500, height_mm: 2100 } }, sensors: [], bodies })
    const parsed = parseDocument(text)
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
    expect(doorOf(text, { sha256 }).bodies).toEqual(asRead(toDoor(parsed.document)).bodies)
    expect(bodies.map(({ id }) => id)).toEqual(['presence-reference-body', ...passingBodies().map(({ id }) => id)])
  })
})

/** To a millionth of a mm or degree: both sides turn and add in their own order. */
function rounded(value: object): object {
  const round = (each: unknown) =>
    typeof each !== 'number' ? each : Number.isFinite(each) ? Math.round(each * 1e6) / 1e6 + 0 : String(each)
  return JSON.parse(JSON.stringify(value, (_, each) => round(each)))
}

function withoutTurns({ fields, ...door }: Door) {
  const sensorOf = (sensor: Door['fields'][number]['sensor']) => ({
    ...sensor,
    planes: sensor.planes.map(({ id, beams }) => ({ id, beams })),
  })
  return { ...door, fields: fields.map(({ sensor, ...field }) => ({ ...field, sensor: sensorOf(sensor) })) }
}

/** The engine's door in the verifier's words. */
function asRead({
  states,
  sensors,
  bodies,
  zones,
  extinction_per_mm,
  tolerances,
}: EngineDoor): Omit<Door, 'fields'> & { readonly fields: readonly object[] } {
  return {
    states: states.map(({ id, floor, obstacles }) => ({
      id,
      floor: { profile: floor.profile.map(({ y_mm, z_mm }) => [y_mm, z_mm] as const), slope: floor.slopeX },
      obstacles: obstacles.map(obstacleAsRead),
    })),
    fields: sensors.flatMap((sensor) =>
      sensor.kind === 'zone-only' ? [] : sensor.fields.map((field) => fieldAsRead(sensor, field, states[0]?.id ?? '')),
    ),
    bodies: bodies.map(({ id, reflectance, postures }) => ({
      id,
      reflectance,
      ofParts: postures.some((posture) => posture.shape === 'box' && posture.parts !== undefined),
      passers: postures.map((posture) => passerAsRead(posture, reflectance)),
      postures: postures.flatMap((posture) =>
        posture.shape === 'box' && posture.parts !== undefined
          ? []
          : posture.shape === 'cylinder'
            ? { shape: 'cylinder', radius: posture.radius_mm, height: posture.height_mm }
            : {
                shape: 'box',
                size: [posture.a_mm, posture.b_mm, posture.c_mm],
                yaw_deg: [degrees(posture.yawFrom_rad), degrees(posture.yawTo_rad)],
              },
      ),
    })),
    zones: zones.map((zone) => ({
      id: zone.id,
      acts: zone.function,
      mustNotSee: zone.purpose === 'must-not-see',
      bodies: zone.bodies,
      longestStay_s: zone.longestStay_s,
      xMin: zone.xMin_mm,
      xMax: zone.xMax_mm,
      yMin: zone.yMin_mm,
      yMax: zone.yMax_mm,
    })),
    extinction: extinction_per_mm,
    tolerances: tolerances && {
      length: tolerances.length_mm,
      position: tolerances.position_mm,
      tilt: degrees(tolerances.tilt_rad),
      roll: degrees(tolerances.roll_rad),
      yaw: degrees(tolerances.yaw_rad),
      floor: tolerances.floor_mm,
      range: tolerances.range * 100,
    },
  }
}

function passerAsRead(posture: EngineDoor['bodies'][number]['postures'][number], reflectance: number): Passer {
  const lies = posture.lies === true
  const place = { x: 0, y: 0, from: 0, reflectance }
  if (posture.shape === 'cylinder') {
    const { radius_mm: radius, height_mm: height } = posture
    return {
      solids: [{ shape: 'cylinder', ...place, radius, height }],
      ofParts: false,
      half: [radius, radius],
      round: true,
      yaw_deg: [0, 0],
      lies,
    }
  }
  const common = { half: [posture.a_mm / 2, posture.b_mm / 2], round: false, lies } as const
  const yaw_deg = [degrees(posture.yawFrom_rad), degrees(posture.yawTo_rad)] as const
  if (posture.parts === undefined) {
    const size = [posture.a_mm, posture.b_mm, posture.c_mm] as const
    return { solids: [{ shape: 'box', ...place, size, turn_deg: 0 }], ofParts: false, ...common, yaw_deg }
  }
  const solids = posture.parts.map((part): Solid => {
    const at = { x: part.alongX_mm, y: part.alongY_mm, from: part.from_mm, reflectance: part.reflectance }
    return part.shape === 'cylinder'
      ? { shape: 'cylinder', ...at, radius: part.radius_mm, height: part.height_mm }
      : { shape: 'box', ...at, size: [part.a_mm, part.b_mm, part.c_mm], turn_deg: 0 }
  })
  return { solids, ofParts: true, ...common, yaw_deg }
}

function obstacleAsRead(obstacle: Obstacle): Door['states'][number]['obstacles'][number] {
  const place = { id: obstacle.id, x: obstacle.x_mm, y: obstacle.y_mm, from: obstacle.from_mm, to: obstacle.to_mm }
  if (obstacle.shape === 'post') return { shape: 'post', ...place, radius: obstacle.radius_mm }
  return { shape: 'box', ...place, half: [obstacle.size_mm[0] / 2, obstacle.size_mm[1] / 2], yaw_deg: degrees(obstacle.yaw_rad) }
}

function fieldAsRead(sensor: Exclude<Sensor, { kind: 'zone-only' }>, field: Field, firstState: string): object {
  const ranging = sensor.kind === 'ranging'
  return {
    name: `${sensor.id}/${field.id}`,
    planes: field.planes,
    x: [field.xMin_mm, field.xMax_mm],
    y: [field.yMin_mm, field.yMax_mm],
    clearance: field.clearance_mm,
    top: field.top_mm,
    cluster: field.clusterBeams,
    acts: field.function,
    presence_s: field.presenceTime_s,
    blanks: field.blanking.length > 0,
    sensor: {
      id: sensor.id,
      segments: !ranging,
      planes: sensor.planes.map(({ id }, p) => ({ id, beams: linesOf(sensor, p) })),
      maxRange: ranging ? sensor.maxRange_mm : 0,
      rangeRef: ranging ? sensor.rangeRef_mm : 0,
      reflectanceRef: ranging ? sensor.reflectanceRef : 0,
      margin: ranging ? sensor.backgroundMargin_mm : 0,
      spot: sensor.spotRadius_mm,
      learnedIn: ranging ? sensor.learnedIn : firstState,
    },
  }
}

function degrees(rad: number): number {
  return (rad * 180) / Math.PI
}
