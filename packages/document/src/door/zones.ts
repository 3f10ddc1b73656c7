import { type Body, isOfParts, type SensingFunction, type Sensor, type SizeFamily, type Zone } from '@sillsight/engine'
import { BOUNDS } from '../bounds.ts'
import type { Remarks } from '../remarks.ts'
import type { FileZone } from '../schema/zone.ts'
import { shown, shownText } from '../shown.ts'
import { DEFAULTS } from './defaults.ts'
import { mustRise } from './sensors.ts'
import { reportTwins } from './states.ts'

interface Around {
  readonly width_mm: number
  readonly sides: { readonly a: string; readonly b: string }
  readonly bodies: readonly Body[]
  readonly sensors: readonly (Sensor | undefined)[]
}

/** The zones; presence at the leaf, on each side that has a sensor, where the file lists none; undefined where one makes no sense. */
export function doorZones(listed: readonly FileZone[] | undefined, around: Around, remarks: Remarks): readonly (Zone | undefined)[] {
  if (listed === undefined) {
    remarks.assume('zones')
    return sidesWithSensors(around.sensors.filter((sensor) => sensor !== undefined)).map((side) => zoneAtLeaf(side, around))
  }
  reportTwins(
    listed.map((zone) => zone.id),
    (i) => `zones/${i}/id`,
    remarks,
  )
  return listed.map((zone, i) => zoneOf(zone, around, `zones/${i}`, remarks))
}

/** All bodies of one part; those of several where there are no others. */
function usualBodies(bodies: readonly Body[]): readonly string[] {
  const whole = bodies.filter((body) => !isOfParts(body))
  return (whole.length > 0 ? whole : bodies).map(({ id }) => id)
}

function zoneOf(zone: FileZone, around: Around, path: string, remarks: Remarks): Zone | undefined {
  const bodies = around.bodies.map((body) => body.id)
  const { id, name = id, purpose, xMin_mm, xMax_mm, yMin_mm, yMax_mm, pitch_mm = DEFAULTS.pitch_mm } = zone
  mustRise(xMin_mm, xMax_mm, `${path}/xMax_mm`, 'xMin_mm', remarks)
  mustRise(yMin_mm, yMax_mm, `${path}/yMax_mm`, 'yMin_mm', remarks)
  const cells = Math.ceil((xMax_mm - xMin_mm) / pitch_mm) * Math.ceil((yMax_mm - yMin_mm) / pitch_mm)
  if (cells > BOUNDS.cellsOfZone)
    remarks.issue({
      code: 'too-much',
      path: `${path}/pitch_mm`,
      expected: `at most ${BOUNDS.cellsOfZone} cells in one zone`,
      got: `${cells}`,
      repair: 'choose a larger pitch or a smaller zone',
    })
  for (const [i, body] of (zone.bodies ?? []).entries()) {
    if (!bodies.includes(body))
      remarks.issue({
        code: 'unknown-id',
        path: `${path}/bodies/${i}`,
        expected: `a body (${bodies.slice(0, 10).map(shownText).join(', ')})`,
        got: shownText(body),
      })
  }
  const acts = functionOf(zone, path, remarks)
  const family = familyOf(zone, path, remarks)
  const allowedPocket_mm = allowedPocket(zone, path, remarks)
  const { longestStay_s } = zone
  return (
    acts && {
      id,
      name,
      purpose,
      function: acts,
      xMin_mm,
      xMax_mm,
      yMin_mm,
      yMax_mm,
      bodies: [...new Set(zone.bodies ?? usualBodies(around.bodies))],
      allowedPocket_mm,
      pitch_mm,
      longestStay_s,
      family,
    }
  )
}

const FUNCTION_OF = { 'presence-at-leaf': 'presence', opening: 'opening', call: 'call' } as const satisfies Record<string, SensingFunction>

function functionOf({ purpose, function: acts }: FileZone, path: string, remarks: Remarks): SensingFunction | undefined {
  if (purpose === 'must-not-see') {
    if (acts === undefined) remarks.missing(`${path}/function`, 'the function that must not see here')
    return acts
  }
  const follows = FUNCTION_OF[purpose]
  if (acts !== undefined && acts !== follows)
    remarks.issue({
      code: 'contradiction',
      path: `${path}/function`,
      expected: `"${follows}", as the purpose is "${purpose}"`,
      got: shownText(acts),
    })
  return follows
}

/** A pocket that may stay needs somebody who allowed it; one allowed from memory is not allowed. */
function allowedPocket({ allowedPocket_mm = 0, allowedPocketSource: source }: FileZone, path: string, remarks: Remarks): number {
  if (allowedPocket_mm === 0) return 0
  if (source === undefined) remarks.missing(`${path}/allowedPocketSource`, 'who or what allows an unseen place')
  if (source?.basis !== 'from memory') return allowedPocket_mm
  remarks.note({
    code: 'limit-from-memory',
    path: `${path}/allowedPocket_mm`,
    text: 'an unseen place allowed from memory is judged as not allowed',
  })
  return 0
}

function familyOf({ family }: FileZone, path: string, remarks: Remarks): SizeFamily | undefined {
  if (family === undefined) return undefined
  const { proportions, reflectance, largest_mm, step_mm, required_mm } = family
  const sizes = largest_mm / step_mm
  if (sizes < 1)
    remarks.issue({
      code: 'contradiction',
      path: `${path}/family/step_mm`,
      expected: `at most largest_mm (${largest_mm})`,
      got: shown(step_mm),
    })
  if (sizes > BOUNDS.familySizes)
    remarks.issue({
      code: 'too-much',
      path: `${path}/family/step_mm`,
      expected: `at most ${BOUNDS.familySizes} sizes`,
      got: `${Math.ceil(sizes)}`,
      repair: 'choose a larger step',
    })
  if (required_mm !== undefined && required_mm > largest_mm)
    remarks.issue({
      code: 'contradiction',
      path: `${path}/family/required_mm`,
      expected: `at most largest_mm (${largest_mm})`,
      got: shown(required_mm),
    })
  return { proportions, reflectance, largest_mm, step_mm, required_mm }
}

function sidesWithSensors(sensors: readonly Sensor[]): readonly ('a' | 'b')[] {
  const sides = new Set(sensors.flatMap(sidesOf))
  return sides.size === 0 ? ['a', 'b'] : (['a', 'b'] as const).filter((side) => sides.has(side))
}

function sidesOf(sensor: Sensor): readonly ('a' | 'b')[] {
  const ys =
    sensor.kind === 'ranging'
      ? sensor.planes.flatMap((plane) => (plane.kind === 'row' ? plane.places.map((place) => place.y_mm) : [sensor.pose.y_mm]))
      : sensor.kind === 'segment'
        ? sensor.planes.flatMap((plane) => plane.segments.flatMap(({ from_mm, to_mm }) => [from_mm[1], to_mm[1]]))
        : [sensor.yMin_mm, sensor.yMax_mm]
  return ys.map((y_mm) => (y_mm < 0 ? 'b' : 'a'))
}

function zoneAtLeaf(side: 'a' | 'b', { width_mm, sides, bodies }: Around): Zone {
  const depth_mm = DEFAULTS.zoneDepth_mm
  return {
    id: `leaf-${side}`,
    name: `at the leaf, ${sides[side]}`,
    purpose: 'presence-at-leaf',
    function: 'presence',
    xMin_mm: 0,
    xMax_mm: width_mm,
    yMin_mm: side === 'a' ? 0 : -depth_mm,
    yMax_mm: side === 'a' ? depth_mm : 0,
    bodies: usualBodies(bodies),
    allowedPocket_mm: 0,
    pitch_mm: DEFAULTS.pitch_mm,
    longestStay_s: undefined,
    family: undefined,
  }
}
