import type { Field, Output, SensingFunction, Sensor } from '@sillsight/engine'
import type { FileField, FileOutput } from '../schema/sensor.ts'
import { shownText } from '../shown.ts'
import type { Given } from './sensors.ts'
import { reportTwins } from './states.ts'

/** What the file says of the outputs and the warm-up of a sensor; nothing where it says nothing. */
export function outputsOf({ values, path, remarks }: Given): Pick<Sensor, 'outputs' | 'warmUp_s'> {
  const { outputs, warmUp_s } = values
  const awake = warmUp_s === undefined ? {} : { warmUp_s }
  if (outputs === undefined) return awake
  reportTwins(
    outputs.map(({ name }) => name),
    (k) => `${path}/outputs/${k}/name`,
    remarks,
  )
  for (const [k, output] of outputs.entries())
    if (output.function !== 'presence' && output.presenceTime_s !== undefined)
      remarks.issue({
        code: 'does-not-fit',
        path: `${path}/outputs/${k}/presenceTime_s`,
        expected: 'nothing here for an output that does not act for presence',
        got: shownText(String(output.presenceTime_s)),
      })
  return { ...awake, outputs: outputs.map(asOutput) }
}

function asOutput({ name, function: acts, whileWarmingUp }: FileOutput): Output {
  return { name, function: acts, whileWarmingUp }
}

type OfOutput = Pick<Field, 'function' | 'presenceTime_s' | 'response_s' | 'fastestResponse_s' | 'hold_s'>

/** What a field has of its own, and of its output where that is listed: its own figures stand before those of the output, its function is that of the output. */
export function ofOutput(field: FileField, path: string, given: Given): OfOutput {
  const { values, remarks } = given
  const listed = values.outputs?.find(({ name }) => name === field.output)
  if (values.outputs !== undefined && listed === undefined) {
    const known = values.outputs.slice(0, 10).map(({ name }) => shownText(name))
    const expected = `an output of this sensor (${known.join(', ')})`
    remarks.issue({ code: 'unknown-id', path: `${path}/output`, expected, got: shownText(field.output) })
  }
  const presence_s = field.presenceTime_s ?? listed?.presenceTime_s
  return {
    function: functionOf(field, listed, path, given),
    presenceTime_s: presence_s === 'for-ever' ? Infinity : presence_s,
    response_s: field.response_s ?? listed?.response_s,
    fastestResponse_s: field.fastestResponse_s ?? listed?.fastestResponse_s,
    hold_s: field.hold_s ?? listed?.hold_s,
  }
}

function functionOf(field: FileField, listed: FileOutput | undefined, path: string, { values, remarks }: Given): SensingFunction {
  const hasList = values.outputs !== undefined
  const acts = listed?.function ?? field.function
  if (acts === undefined && !hasList) remarks.missing(`${path}/function`, 'presence, opening or call')
  if (listed !== undefined && field.function !== undefined && field.function !== listed.function)
    remarks.issue({
      code: 'does-not-fit',
      path: `${path}/function`,
      expected: `the function of its output, ${shownText(listed.function)}`,
      got: shownText(field.function),
    })
  return acts ?? 'presence'
}
