import type { Declared, Sensor } from '../model/sensor.ts'
import type { InputPath } from '../model/source.ts'
import { meanYears, simplifiedLevel } from '../wiring/reliability.ts'
import { asValue } from './control-fact.ts'
import { NOTHING, orNoSubject, quantity, step } from './drafts.ts'
import { protects } from './fields.ts'
import { CONCEPT, sensorPath } from './paths.ts'
import { LEVELS, restsOnPresence } from './permitted-function.ts'
import type { Context, Draft, Rule } from './rule.ts'

/**
 * What performance level a protecting sensor reaches whose maker declares figures but no level: by the simplified procedure, of the device alone, as an
 * estimate for the competent person. Bands and table are from memory, so that it never passes unconfirmed; figures that are missing are named. One finding
 * for each sensor that declares anything of itself but no level.
 *
 * Facts: `sensor`, `sensorName`, `required` (a letter), [`level` (a letter, or `none`), `category`, `mttfd_y`, `coverage_percent`, `commonCause`].
 */
export const reliabilityEstimate: Rule = {
  id: 'reliability-estimate',
  source: { basis: 'from memory', document: 'ISO 13849-1', edition: '2015', clause: '4.5', note: 'the simplified procedure' },
  judge: (context) => {
    const { sensors, concept } = context.door
    const isAsked = concept === undefined || restsOnPresence(concept)
    return orNoSubject(
      sensors.flatMap((sensor) => {
        const { declares } = sensor
        const isOpen = declares && declares.device !== 'not-protective' && declares.performanceLevel === undefined
        return isAsked && protects(sensor) && isOpen ? [draftOf(context, sensor, declares)] : []
      }),
    )
  },
}

const BY = 'wiring/reliability'
const CATEGORIES = ['B', '1', '2', '3', '4'] as const
/** From here on faults are looked for, and failures of common cause count. */
const FIRST_TESTED = 2

function draftOf({ door, values }: Context, sensor: Sensor, declares: Declared): Draft {
  const path = `${sensorPath(door, sensor)}/declares`
  const [required = 0] = values.requiredLevel.value
  const { category, b10d, diagnosticCoverage_percent, commonCause } = declares
  const number = category === undefined ? undefined : CATEGORIES.indexOf(category)
  const isTested = number === undefined || number >= FIRST_TESTED
  const mttfd_y = meanYears(declares, values.dangerousShare.value)
  const coverage_percent = isTested ? diagnosticCoverage_percent : 0
  const { requiredLevel, coverageBands, failureBands, simplifiedLevels, commonCauseScore, dangerousShare } = values
  const usesCycles = declares.mttfd_y === undefined && mttfd_y !== undefined
  const frame = {
    subject: { kind: 'sensor', id: sensor.id } as const,
    facts: {
      sensor: sensor.id,
      sensorName: sensor.name,
      required: LEVELS[required - 1] ?? '',
      ...(category === undefined ? {} : { category }),
      ...(mttfd_y === undefined ? {} : { mttfd_y }),
      ...(isTested && coverage_percent !== undefined ? { coverage_percent } : {}),
      ...(commonCause === undefined ? {} : { commonCause }),
    },
    restsOn: {
      ...NOTHING,
      inputs: [path, CONCEPT],
      values: [
        requiredLevel,
        simplifiedLevels,
        failureBands,
        ...(isTested ? [coverageBands, commonCauseScore] : []),
        ...(usesCycles ? [dangerousShare] : []),
        asValue(path, declares.source),
      ],
    },
  }
  const cycles = usesCycles
    ? [
        step(
          'years to dangerous failure',
          quantity(mttfd_y, 'y'),
          BY,
          { inputs: [path], values: [dangerousShare] },
          'B10d / (0.1 * operations in a year)',
        ),
      ]
    : []
  if (number === undefined || mttfd_y === undefined || coverage_percent === undefined || (isTested && commonCause === undefined)) {
    const needs: readonly InputPath[] = [
      ...(number === undefined ? [`${path}/category`] : []),
      ...(mttfd_y === undefined ? [b10d === undefined ? `${path}/mttfd_y` : `${path}/operations_per_y`] : []),
      ...(coverage_percent === undefined ? [`${path}/diagnosticCoverage_percent`] : []),
      ...(isTested && commonCause === undefined ? [`${path}/commonCause`] : []),
    ]
    return { ...frame, verdict: 'undetermined', reason: 'missing-input', needs, steps: cycles }
  }
  const isSeparate = !isTested || (commonCause ?? 0) >= commonCauseScore.value
  const procedure = { coverageBands: coverageBands.value, failureBands: failureBands.value, levels: simplifiedLevels.value }
  const level = isSeparate ? simplifiedLevel({ category: number, mttfd_y, coverage_percent }, procedure) : 0
  const measured = quantity(level, '1')
  return {
    ...frame,
    verdict: level >= required ? 'pass' : 'fail',
    measured,
    limit: quantity(required, '1'),
    facts: { ...frame.facts, level: LEVELS[level - 1] ?? 'none' },
    steps: [
      ...cycles,
      step('level that is reached, 1 for a to 5 for e', measured, BY, {
        inputs: [path],
        values: [simplifiedLevels, failureBands, coverageBands],
      }),
    ],
  }
}
