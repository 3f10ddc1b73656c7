import type { OutsideValue } from '../model/source.ts'
import type { Wiring } from '../model/wiring.ts'
import { conductorValues, copperAt } from '../values/conductors.ts'
import type { CopperFactors } from '../wiring/supply.ts'
import { WIRING } from './paths.ts'
import { sourcesOf } from './single-fault.ts'

/** Where somebody writes how cold and how hot the copper gets. */
export const COPPER = `${WIRING}/copper`

/** Of its copper where somebody said how cold and hot it gets. */
export function copperOf({ copper }: Wiring): CopperFactors | undefined {
  return copper && { coldest: copperAt(copper.coldest_degC).factor, hottest: copperAt(copper.hottest_degC).factor }
}

/** What a verdict on voltages rests on: the data of the parts, the resistance of the cables, and copper at its hottest; its coldest only informs. */
export function groundsOf(wiring: Wiring): readonly OutsideValue[] {
  const { cables, copper } = wiring
  return [
    ...sourcesOf(wiring),
    ...new Set(cables.flatMap(({ conductor }) => conductorValues(conductor))),
    ...(copper ? [copperAt(copper.hottest_degC).value] : []),
  ]
}
