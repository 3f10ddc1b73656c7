import type { declares as english } from './en-declares.ts'

export const declares: typeof english = {
  unknown: 'hat niemand nachgesehen',
  kind: 'Sein Hersteller gibt ihn so an: {device}; Performance Level {level}, Kategorie {category}.',
  device: {
    label: 'Welche Art von Schutzeinrichtung er ist',
    options: {
      'electro-sensitive': 'Schutzeinrichtung, die ohne Berührung erkennt',
      'pressure-sensitive': 'Schutzeinrichtung, die berührt wird',
      'not-protective': 'keine Schutzeinrichtung',
    },
  },
  performanceLevel: { label: 'Performance Level (Stufe)' },
  category: { label: 'Kategorie' },
  test: 'Seine Fehler findet: {testedBy}. Gelistet ist er für: {listedFor}.',
  testedBy: { label: 'Wer seine Fehler findet', options: { itself: 'er selbst', control: 'die Steuerung', nobody: 'niemand' } },
  listedFor: {
    label: 'Für welche Antriebe er gelistet ist',
    options: { 'this-drive': 'diesen Antrieb', 'other-drives': 'andere Antriebe', nothing: 'keinen Antrieb' },
  },
  numbers:
    'In Zahlen: mittlere Zeit bis zum gefährlichen Ausfall {mttfd} Jahre, oder B10d {b10d} bei {operations} Schaltungen im Jahr; Diagnosedeckungsgrad {coverage}; {common} Punkte gegen Ausfälle gemeinsamer Ursache.',
  figures: {
    mttfd_y: 'mittlere Zeit bis zum gefährlichen Ausfall, in Jahren',
    b10d: 'Schaltungen, bis ein Zehntel gefährlich ausgefallen ist (B10d)',
    operations_per_y: 'Schaltungen im Jahr',
    diagnosticCoverage_percent: 'Diagnosedeckungsgrad',
    commonCause: 'Punkte gegen Ausfälle gemeinsamer Ursache',
  },
  known: 'Bekannt ist das aus {basis}: {where}.',
  basis: 'Woher man es weiß',
  bases: { datasheet: 'seinen Papieren', 'from memory': 'bloßer Erinnerung', invented: 'einem erfundenen Beispiel' },
  where: 'welches Papier und welche Seite',
}
