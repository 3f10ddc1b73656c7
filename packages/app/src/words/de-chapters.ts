import type { chapters as english } from './en-chapters.ts'

export const chapters: typeof english = {
  known: (known, of) => (known === of ? 'alles ist bekannt' : `${known} von ${of} bekannt`),
  listed: (count) => (count === 0 ? 'noch nichts ist aufgeführt' : count === 1 ? '1 ist aufgeführt' : `${count} sind aufgeführt`),
  control: 'Was die Steuerung tut',
  dangers: 'Wo es sonst verletzen kann',
  passingBy: 'Wer vorübergeht',
}
