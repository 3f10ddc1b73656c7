import type { Words } from '../words/en.ts'
import { rollOf, slope_percent } from './rise.ts'

/** What a field wants of the level. */
export interface LevelWish {
  /** Where the device's right end may point, the end that counts upward first. */
  readonly ends: readonly [string, string]
  readonly note?: string
  /** The field's value where that end goes up by so much; undefined where none follows. */
  readonly valueOf: (rise_deg: number) => number | undefined
}

type Sides = { readonly a?: string | undefined; readonly b?: string | undefined } | undefined

/** The rise of the floor along x, which runs to the right for whoever stands on side B. */
export function floorWish({ ends }: Words['level'], sides: Sides): LevelWish {
  const side = sides?.b ?? 'B'
  return { ends: [ends.right(side), ends.left(side)], valueOf: slope_percent }
}

/** The lean of a field, which takes the way out from the leaf up with it. */
export function tiltWish({ ends, ofSensor }: Words['level'], sides: Sides, looks: 'a' | 'b' | undefined): LevelWish {
  const out = looks === undefined ? ends.faced : ends.toward(sides?.[looks] ?? looks.toUpperCase())
  return { ends: [out, ends.fromWall], note: ofSensor, valueOf: (rise_deg) => rise_deg }
}

export function rollWish({ ends, ofSensor }: Words['level'], tilt_deg: number): LevelWish {
  return { ends: [ends.sensorRight, ends.sensorLeft], note: ofSensor, valueOf: (rise_deg) => rollOf({ rise_deg, tilt_deg }) }
}

/** The side that a sensor with this yaw looks to; undefined where it looks along or askew. */
export function looksTo(yaw_deg: number): 'a' | 'b' | undefined {
  const turned = Math.abs(yaw_deg % 360)
  return turned === 0 ? 'a' : turned === 180 ? 'b' : undefined
}
