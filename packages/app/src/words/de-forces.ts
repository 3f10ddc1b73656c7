import type { forces as english } from './en-forces.ts'

export const forces: typeof english = {
  title: 'Kräfte an der Schließkante',
  none: 'Noch wurde keine Kraft gemessen. Wo die Kante jemanden berühren darf, wird sie gemessen und nie berechnet.',
  cautions: ['Mit einem Messgerät und einem Prüfkörper prüfen, nie mit einem Menschen.', 'Die Spur absperren, bevor der Flügel läuft.'],
  where: 'Bei {place}, mit {gap} Abstand, war die Spitze {peak}.',
  lasting: 'Hoch blieb sie {time}, danach im Mittel {mean}, und nach 5 s blieben {after5s}.',
  how: 'Gemessen mit {instrument}, gültig bis {calibratedUntil}, am {on} von {by}.',
  name: (place) => `Kraft bei ${place}`,
  place: 'wo an der Schließkante',
  gap: 'was zwischen Flügel und Gegenstück blieb',
  peak: 'Spitze der Kraft',
  time: 'wie lange die Kraft über dem blieb, was dauern darf',
  mean: 'Mittel der Kraft nach der Spitze',
  after5s: 'Kraft 5 s nach der Berührung',
  notRead: 'nicht abgelesen',
  instrument: 'das Messgerät und seine Nummer',
  calibratedUntil: 'letzter Tag seiner Kalibrierung',
  on: 'Tag der Messung',
  by: 'wer gemessen hat',
  add: 'Eine gemessene Kraft',
  keep: 'Behalten',
}
