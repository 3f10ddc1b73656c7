import type { wiring as english } from '../en/wiring-words.ts'
import { faultWords } from './faults.ts'

export const wiring: typeof english = {
  title: 'Verdrahtung',
  fault: faultWords,
  effects: {
    'hidden-and-dangerous': 'Verborgen und gefährlich',
    'found-by-test': 'Von einem Test gefunden',
    'stops-the-door': 'Hält das Tor an',
    'keeps-from-closing': 'Hindert das Tor am Schließen',
    'fails-to-open': 'Öffnet nicht',
    'no-effect': 'Ohne Wirkung',
  },
  states: { clear: 'frei', seen: 'jemand gesehen', unpowered: 'ohne Spannung', 'warming-up': 'beim Aufwachen', fault: 'gestört' },
  beliefs: { clear: 'niemand da', seen: 'jemand da', fault: 'gestört', either: 'beides möglich' },
  rails: { plus: 'Plus', minus: 'Minus', earth: 'Erde' },
  parts: {
    supply: 'Versorgung',
    power: 'Spannung',
    presence: 'Anwesenheit',
    opening: 'Öffnen',
    test: 'Test',
    stop: 'Halt',
    reverse: 'Halt und Umkehr',
    open: 'Öffnen',
    hold: 'Offen halten',
  },
  closedWhen: (states) => `geschlossen: ${states}`,
  openWhen: (states) => `offen: ${states}`,
  never: 'nie',
  control: 'Steuerung',
  drawnFor: 'Kontakte sind gezeichnet, wie sie stehen, wenn Spannung anliegt und niemand da ist.',
  columns: { from: 'Von', core: 'Ader', colour: 'Farbe', to: 'Nach', function: 'Aufgabe' },
  faults: (count) => `${count} einzelne Fehler`,
  more: (count) => `und ${count} weitere`,
  cable: (id, length, size) => `${id}, ${length}, ${size}`,
}
