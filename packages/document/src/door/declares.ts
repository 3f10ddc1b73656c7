import type { Declared, Sensor } from '@sillsight/engine'
import type { FileDeclares } from '../schema/declares.ts'

/** What a maker declares of a sensor; nothing where nobody said anything. */
export function declaredOf(declares: FileDeclares | undefined): Pick<Sensor, 'declares'> {
  return declares === undefined ? {} : { declares: asDeclared(declares) }
}

function asDeclared(declares: FileDeclares): Declared {
  return {
    device: declares.device,
    performanceLevel: declares.performanceLevel,
    category: declares.category,
    testedBy: declares.testedBy,
    listedFor: declares.listedFor,
    mttfd_y: declares.mttfd_y,
    b10d: declares.b10d,
    operations_per_y: declares.operations_per_y,
    diagnosticCoverage_percent: declares.diagnosticCoverage_percent,
    commonCause: declares.commonCause,
    source: declares.source,
  }
}
