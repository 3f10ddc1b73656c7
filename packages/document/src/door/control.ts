import type { Control } from '@sillsight/engine'
import type { FileControl } from '../schema/control.ts'

/** What nobody stated is unknown, not absent. */
export function controlOf({ sensorFault, powerReturn, fire, escape, interlock }: FileControl): Control {
  return { sensorFault, powerReturn, fire, escape, interlock }
}
