import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { de } from './de.ts'
import { deFacts } from './de-facts.ts'
import { deSearching } from './de-searching.ts'
import { deTerms } from './de-terms.ts'
import { en } from './en.ts'
import { enFacts } from './en-facts.ts'
import { enSearching } from './en-searching.ts'
import { enTerms } from './en-terms.ts'

/** Every text of a catalogue with its place; functions are called with marks. */
function textsOf(catalogue: object, place = ''): Map<string, string> {
  const found = new Map<string, string>()
  for (const [key, value] of Object.entries(catalogue) as [string, unknown][]) {
    const at = `${place}/${key}`
    if (key === 'forms' || key === 'demoTexts') continue // inflections are each language's own, and what demo doors say is English
    if (typeof value === 'string') found.set(at, value)
    else if (typeof value === 'function')
      for (const count of [1, 2]) found.set(`${at}(${count})`, String((value as (...given: unknown[]) => unknown)(count, count)))
    else for (const [inside, text] of textsOf(value as object, at)) found.set(inside, text)
  }
  return found
}

const english = textsOf({ ...en, facts: enFacts, searching: enSearching, terms: enTerms })
const german = textsOf({ ...de, facts: deFacts, searching: deSearching, terms: deTerms })

/** The same in both languages. */
const ALIKE =
  /^\/(direction|settings\/languages|first\/(name|sensor)$|views\/solid|measure\/(nameOf|radius)$|solid\/names\/(building|fitting|thing|sensor)|notices\/value|history\/deeds\/set|facts\/dangers\/looked$)/

describe('German', () => {
  it('has every text of the English catalogue, said otherwise', () => {
    expect([...german.keys()]).toEqual([...english.keys()])
    const alike = [...english].filter(([place, text]) => german.get(place) === text && !ALIKE.test(place))
    expect(alike).toEqual([])
  })
  it('asks for the same figures in every sentence', () => {
    const figures = (text = '') => [...text.matchAll(/\{\w+\}/g)].map(([name]) => name).sort()
    for (const [place, text] of english) expect({ place, figures: figures(german.get(place)) }).toEqual({ place, figures: figures(text) })
  })
  it('has words for everything that the demonstration doors say to a reader, and for nothing that they do not say', () => {
    const said = new Set<string>()
    const walk = (value: unknown, key: string): void => {
      if (typeof value === 'string' && /^(name|note|a|b|place|instrument|by)$/.test(key) && /\p{L}{2}/u.test(value)) said.add(value)
      if (typeof value === 'object' && value !== null) for (const [name, each] of Object.entries(value)) walk(each, name)
    }
    const folder = join(import.meta.dirname, '../../../cli/demo')
    for (const file of readdirSync(folder)) if (file.endsWith('.json')) walk(JSON.parse(readFileSync(join(folder, file), 'utf8')), '')
    expect(Object.keys(de.demoTexts).sort()).toEqual([...said].sort())
  })
  it('leaves out nothing that a sentence is told', () => {
    for (const [place, text] of english) {
      const told = /\((\d)\)$/.exec(place)?.[1]
      if (told !== undefined && text.includes(told)) expect(german.get(place), place).toContain(told)
    }
  })
})
