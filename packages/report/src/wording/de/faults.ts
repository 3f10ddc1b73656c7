import { plain } from '../plain.ts'

type Facts = Readonly<Record<string, string | number | boolean>>

const STATES: Readonly<Record<string, string>> = {
  clear: '\u201eniemand da\u201c',
  seen: '\u201ejemand da\u201c',
  unpowered: 'nichts, wie ohne Spannung',
  'warming-up': 'dasselbe wie beim Aufwachen',
  fault: 'eine St\u00f6rung',
}
const RAILS: Readonly<Record<string, string>> = { plus: 'Plus', minus: 'Minus', earth: 'Erde' }

/** Ein Fehler als Satzanfang; undefined, wo der Befund keinen nennt. */
export function faultWords(facts: Facts): string | undefined {
  const told = (key: string) => plain(String(facts[key] ?? '?'))
  const [core, other] = [told('core'), told('other')]
  const at = facts['at'] === 'closed' ? 'geschlossen' : 'offen'
  switch (facts['fault']) {
    case 'none':
      return 'ganz ohne Fehler'
    case 'core-open':
      return `Ader ${core} gebrochen`
    case 'cable-off':
      return `Kabel ${told('cable')} abgezogen`
    case 'cores-shorted':
      return `Adern ${core} und ${other} ber\u00fchren sich`
    case 'core-to-rail':
      return `Ader ${core} ber\u00fchrt ${RAILS[told('rail')] ?? '?'}`
    case 'supply-lost':
      return 'Versorgung ausgefallen'
    case 'supply-reversed':
      return 'Plus und Minus vertauscht'
    case 'supply-low':
      return `Versorgung auf ${Number(facts['volt']).toFixed(1).replace('.', ',')}\u00a0V gesunken`
    case 'switch-stuck':
      return `Kontakt ${told('switch').replace('/energised', ' (angezogen)').replace('/released', ' (abgefallen)')} von Sensor ${told('ofSensor')} bleibt ${at}`
    case 'output-stuck':
      return `Ausgang ${told('output')} von Sensor ${told('ofSensor')} bleibt wie bei ${STATES[told('as')] ?? '?'}`
    case 'test-stuck':
      return `Testausgang bleibt ${at}`
    case 'resistor-open':
      return `Widerstand ${told('resistor')} gebrochen`
    case 'resistor-shorted':
      return `Widerstand ${told('resistor')} kurzgeschlossen`
    case 'sensor-stuck':
      return `Sensor ${told('ofSensor')} meldet dauernd ${STATES[told('in')] ?? '?'}`
    default:
      return undefined
  }
}
