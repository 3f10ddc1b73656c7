import type { Issue } from './issue.ts'
import { builtinSensors } from './libraries/catalogue.ts'
import { parseDocument } from './parse.ts'
import type { DoorFile } from './schema/door-file.ts'

/** A length of a first door. `typed` as it was read off the tape; absent where a usual value was offered and nobody measured. */
export interface FirstLength {
  readonly mm: number
  readonly typed: string | undefined
}

/** The six values that suffice for a first verdict. */
export interface FirstValues {
  readonly width: FirstLength
  readonly height: FirstLength
  /** Name of the side on which the sensor hangs. */
  readonly side: string
  /** Id of a sensor that ships with the program. */
  readonly sensor: string
  readonly mountingHeight: FirstLength
  /** From the middle of the leaf out to the sensor. */
  readonly offset: FirstLength
}

export type FirstDoor = { readonly ok: true; readonly document: DoorFile } | { readonly ok: false; readonly issues: readonly Issue[] }

/**
 * A door file from six values.
 *
 * @param otherSide name of the side across; must differ from `values.side`
 * @param offeredBy what offered the values that nobody measured, for the note that says so
 * @returns the issues where the values contradict each other
 */
export function firstDoor(
  name: string,
  values: FirstValues,
  { otherSide, offeredBy }: { readonly otherSide: string; readonly offeredBy: string },
): FirstDoor {
  const { width, height, side, sensor, mountingHeight, offset } = values
  const readings = { ...reading('widths', width), ...reading('heights', height) }
  const offered = [...(mountingHeight.typed === undefined ? ['mounting height'] : []), ...(offset.typed === undefined ? ['offset'] : [])]
  const note = `${offered.join(' and ')}: offered by ${offeredBy}, not measured`
  const file = {
    sillsight: 1,
    name,
    sides: { a: side, b: otherSide },
    survey: { opening: { width_mm: width.mm, height_mm: height.mm, ...(Object.keys(readings).length > 0 && { readings }) } },
    sensors: [
      {
        use: sensor,
        side: 'a',
        mountingHeight_mm: mountingHeight.mm,
        offset_mm: offset.mm,
        ...(offered.length > 0 && { source: { basis: 'our decision', note } }),
      },
    ],
  }
  const parsed = parseDocument(JSON.stringify(file))
  return parsed.ok ? { ok: true, document: parsed.document } : { ok: false, issues: parsed.issues }
}

/** A length that was not typed in mm is kept as it was read off the tape, beside its value in mm. */
function reading(of: 'widths' | 'heights', { typed }: FirstLength): object {
  return typed === undefined || /^\d+(?:\.\d+)?(?: ?mm)?$/.test(typed) ? {} : { [of]: [{ reading: typed }] }
}

/** The sensors of the program for which six values suffice. A light beam, for one, needs the places of both its ends. */
export function firstSensors(): readonly { readonly id: string; readonly name: string }[] {
  const length = { mm: 2400, typed: undefined }
  const rest = { width: length, height: length, side: 'outside', mountingHeight: length, offset: { mm: 150, typed: undefined } }
  return builtinSensors().filter(({ id }) => firstDoor('trial', { ...rest, sensor: id }, { otherSide: 'inside', offeredBy: 'trial' }).ok)
}
