import type { Approach, Field } from '@sillsight/engine'
import type { FileField } from '../schema/sensor.ts'
import { shown, shownText } from '../shown.ts'
import { DEFAULTS } from './defaults.ts'
import { ofOutput } from './outputs.ts'
import { type Given, mustRise } from './sensors.ts'
import { NO_SOURCE } from './sources.ts'
import { reportTwins } from './states.ts'

type Device = 'scanner' | 'downward-row' | 'segments'

/** The fields of a sensor. Without any it has one that sees with every beam and acts for presence: assumed, so nothing passes by it. */
export function fieldsOf(given: Given, device: Device): readonly Field[] {
  const { values, path, remarks } = given
  const planes = (values.planes ?? []).map((plane) => plane.id)
  if (values.fields === undefined) {
    remarks.assume(`${path}/fields`)
    return [
      {
        ...open(planes),
        id: 'all',
        name: 'all',
        clearance_mm: DEFAULTS.clearance_mm,
        clusterBeams: DEFAULTS.clusterBeams,
        output: values.outputs?.find(({ function: acts }) => acts === 'presence')?.name ?? 'output',
        function: 'presence',
        presenceTime_s: undefined,
        blanking: [],
      },
    ]
  }
  reportTwins(
    values.fields.map((field) => field.id),
    (i) => `${path}/fields/${i}/id`,
    remarks,
  )
  return values.fields.map((field, i) => fieldOf(field, planes, `${path}/fields/${i}`, device, given))
}

function fieldOf(field: FileField, planes: readonly string[], path: string, device: Device, given: Given): Field {
  const { remarks } = given
  for (const [i, id] of (field.planes ?? []).entries()) {
    if (!planes.includes(id))
      remarks.issue({
        code: 'unknown-id',
        path: `${path}/planes/${i}`,
        expected: `a plane of this sensor (${planes.slice(0, 10).map(shownText).join(', ')})`,
        got: shownText(id),
      })
  }
  for (const [i, window] of (field.blanking ?? []).entries())
    mustRise(window.from_mm, window.to_mm, `${path}/blanking/${i}/to_mm`, 'from_mm', remarks)
  const limits = device === 'segments' ? noLimits(field, path, remarks) : limitsOf(field, path, remarks)
  return {
    ...open(planes),
    ...limits,
    id: field.id,
    name: field.name ?? field.id,
    planes: [...new Set(field.planes ?? planes)],
    output: field.output,
    ...ofOutput(field, path, given),
    ...(field.approach ? { approach: approachOf(field.approach) } : {}),
    blanking: field.blanking ?? [],
    ...leafOf(field, path, device, remarks),
  }
}

function leafOf({ leafBlanking, leafHides }: FileField, path: string, device: Device, remarks: Given['remarks']) {
  if (device === 'segments' && leafBlanking !== undefined)
    remarks.issue({
      code: 'does-not-fit',
      path: `${path}/leafBlanking`,
      expected: 'nothing here for device "segments"',
      got: shown(leafBlanking),
    })
  return { ...(leafBlanking ? { leafBlanking } : {}), ...(leafHides === 'bodies' ? { leafHides: true } : {}) }
}

type Limits = Pick<Field, 'xMin_mm' | 'xMax_mm' | 'yMin_mm' | 'yMax_mm' | 'clearance_mm' | 'top_mm' | 'clusterBeams'>

/** Sides of y and a wanting `top_mm` are open by meaning; sides of x, clearance and cluster are settings that somebody has to say. */
function limitsOf(field: FileField, path: string, remarks: Given['remarks']): Limits {
  for (const name of ['xMin_mm', 'xMax_mm', 'top_mm', 'clearance_mm', 'clusterBeams'] as const)
    if (field[name] === undefined) remarks.assume(`${path}/${name}`)
  const limits = {
    xMin_mm: limit(field.xMin_mm, -Infinity),
    xMax_mm: limit(field.xMax_mm, Infinity),
    yMin_mm: limit(field.yMin_mm, -Infinity),
    yMax_mm: limit(field.yMax_mm, Infinity),
    clearance_mm: field.clearance_mm ?? DEFAULTS.clearance_mm,
    top_mm: limit(field.top_mm, Infinity),
    clusterBeams: field.clusterBeams ?? DEFAULTS.clusterBeams,
  }
  mustRise(limits.xMin_mm, limits.xMax_mm, `${path}/xMax_mm`, 'xMin_mm', remarks)
  mustRise(limits.yMin_mm, limits.yMax_mm, `${path}/yMax_mm`, 'yMin_mm', remarks)
  mustRise(limits.clearance_mm, limits.top_mm, `${path}/top_mm`, 'clearance_mm', remarks)
  return limits
}

/** A segment is interrupted or not: a limit on it would be believed to act. */
function noLimits(field: FileField, path: string, remarks: Given['remarks']): Pick<Limits, 'clearance_mm' | 'clusterBeams'> {
  for (const name of ['xMin_mm', 'xMax_mm', 'yMin_mm', 'yMax_mm', 'clearance_mm', 'top_mm'] as const) {
    if (field[name] !== undefined)
      remarks.issue({
        code: 'does-not-fit',
        path: `${path}/${name}`,
        expected: 'nothing here for device "segments"',
        got: shown(field[name]),
      })
  }
  return { clearance_mm: 0, clusterBeams: field.clusterBeams ?? 1 }
}

function open(planes: readonly string[]): Pick<Field, 'planes' | 'xMin_mm' | 'xMax_mm' | 'yMin_mm' | 'yMax_mm' | 'top_mm'> {
  return { planes, xMin_mm: -Infinity, xMax_mm: Infinity, yMin_mm: -Infinity, yMax_mm: Infinity, top_mm: Infinity }
}

function limit(given: number | 'open' | undefined, otherwise: number): number {
  return given === undefined || given === 'open' ? otherwise : given
}

function approachOf({ way, capability_mm, height_mm, addend_mm, supplement_mm, source }: NonNullable<FileField['approach']>): Approach {
  return { way, capability_mm, height_mm, addend_mm, supplement_mm, source: source ?? NO_SOURCE }
}
