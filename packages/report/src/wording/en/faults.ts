import { plain } from '../plain.ts'

type Facts = Readonly<Record<string, string | number | boolean>>

const STATES: Readonly<Record<string, string>> = {
  clear: '\u201cnobody there\u201d',
  seen: '\u201csomebody there\u201d',
  unpowered: 'nothing, as without power',
  'warming-up': 'what it says while it wakes',
  fault: 'that it is faulted',
}

/** A fault as the subject of a sentence; undefined where the finding has none. */
export function faultWords(facts: Facts): string | undefined {
  const told = (key: string) => plain(String(facts[key] ?? '?'))
  const [core, other] = [told('core'), told('other')]
  const at = facts['at'] === 'closed' ? 'closed' : 'open'
  switch (facts['fault']) {
    case 'none':
      return 'with nothing wrong at all'
    case 'core-open':
      return `core ${core} broken`
    case 'cable-off':
      return `cable ${told('cable')} unplugged`
    case 'cores-shorted':
      return `cores ${core} and ${other} touching`
    case 'core-to-rail':
      return `core ${core} touching ${told('rail')}`
    case 'supply-lost':
      return 'the supply lost'
    case 'supply-reversed':
      return 'plus and minus exchanged'
    case 'supply-low':
      return `the supply sagging to ${(Number(facts['volt'])).toFixed(1)}\u00a0V`
    case 'switch-stuck':
      return `contact ${told('switch')} of sensor ${told('ofSensor')} stuck ${at}`
    case 'output-stuck':
      return `output ${told('output')} of sensor ${told('ofSensor')} stuck as with ${STATES[told('as')] ?? '?'}`
    case 'test-stuck':
      return `the test output stuck ${at}`
    case 'resistor-open':
      return `resistor ${told('resistor')} broken`
    case 'resistor-shorted':
      return `resistor ${told('resistor')} shorted`
    case 'sensor-stuck':
      return `sensor ${told('ofSensor')} for ever saying ${STATES[told('in')] ?? '?'}`
    default:
      return undefined
  }
}
