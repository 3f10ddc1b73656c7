import type { OutsideValue } from '../model/source.ts'
import type { Wiring } from '../model/wiring.ts'
import { conductorValues, copperAt } from '../values/conductors.ts'
import type { CopperFactors } from '../wiring/supply.ts'
import { WIRING } from './paths.ts'
import { sourcesOf } from './single-fault.ts'

/** Where somebody writes how cold and how hot the copper gets. */
export const COPPER = `${WIRING}/copper`

/** What copper has at some 45 °C below zero: it stands in where nobody said how cold it gets, so that currents come out larger and not smaller. */
const NO_COLDER = 0.75

/** Of its copper where somebody said how hot it gets. */
export function copperOf({ copper }: Wiring): CopperFactors | undefined {
  if (copper === undefined) return undefined
  const { coldest_degC, hottest_degC } = copper
  return { coldest: coldest_degC === undefined ? NO_COLDER : copperAt(coldest_degC).factor, hottest: copperAt(hottest_degC).factor }
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
