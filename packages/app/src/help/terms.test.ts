import { describe, expect, it } from 'vitest'
import { deTerms } from '../words/de-terms.ts'
import { enTerms } from '../words/en-terms.ts'
import { pieces, type Terms, termsIn } from './terms.ts'

const terms: Terms = {
  plane: { word: 'scan plane', forms: ['scan plane', 'plane', 'planes'], says: '' },
  body: { word: 'body', forms: ['body'], says: '' },
  testBody: { word: 'test body', forms: ['test body', 'Prüfkörper'], says: '' },
}
const shown = (text: string) => pieces(text, terms, new Set()).map((piece) => (typeof piece === 'string' ? piece : [piece.shown]))

describe('words of the trade in a text', () => {
  it('are found in the case and at the place where they stand, and the text around them stays as it is', () => {
    expect(shown('Planes pass here.')).toEqual([['Planes'], ' pass here.'])
    expect(shown('no\nword')).toEqual(['no\nword'])
    expect(shown('')).toEqual([])
  })
  it('are found by the longest form', () => {
    expect(shown('a scan plane and a test body')).toEqual(['a ', ['scan plane'], ' and a ', ['test body']])
  })
  it('are marked once in a paragraph, whatever the form', () => {
    expect(shown('one plane, two planes')).toEqual(['one ', ['plane'], ', two planes'])
    const met = new Set(['plane'])
    expect(pieces('one plane', terms, met)).toEqual(['one plane'])
  })
  it('are left alone inside of other words, of places in the door file and of names in quotation marks', () => {
    for (const text of ['aeroplane', 'planes/0', 'plane-1', 'plané', 'zone “plane” here', 'Zone „plane“ hier'])
      expect(shown(text)).toEqual([text])
    expect(shown('zone “plane” and plane')).toEqual(['zone “plane” and ', ['plane']])
  })
  it('are found with letters beyond ASCII', () => {
    expect(shown('der Prüfkörper dort')).toEqual(['der ', ['Prüfkörper'], ' dort'])
  })
})

describe.each([
  ['English', enTerms],
  ['German', deTerms],
])('the words in %s', (_, terms) => {
  const all = Object.entries(terms)
  it('have no form that belongs to two of them', () => {
    const forms = all.flatMap(([, { forms }]) => forms.map((form) => form.toLowerCase()))
    expect(forms.filter((form, i) => forms.indexOf(form) !== i)).toEqual([])
  })
  it('find themselves by each of their forms', () => {
    expect(all.flatMap(([id, { forms }]) => forms.filter((form) => termsIn(`so ${form}.`, terms).join() !== id))).toEqual([])
  })
  it('are explained in one or two sentences that end', () => {
    const sentences = (says: string) => says.split(/(?<=[.?!])\s+/).length
    expect(all.filter(([, { says }]) => sentences(says) > 2 || !says.endsWith('.')).map(([id]) => id)).toEqual([])
  })
})
