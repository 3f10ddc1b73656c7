import type { Control } from '@sillsight/engine'
import type { FileControl } from '../schema/control.ts'

/** What nobody stated is unknown, not absent. */
export function controlOf(stated: FileControl): Control {
  return {
    sensorFault: stated.sensorFault,
    powerReturn: stated.powerReturn,
    fire: stated.fire,
    escape: stated.escape,
    interlock: stated.interlock,
  }
}
