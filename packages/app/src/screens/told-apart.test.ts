import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { doorFileJsonSchema, toDoor } from '@sillsight/document'
import { english, german, type Reader } from '@sillsight/report'
import { describe, expect, it } from 'vitest'
import { same } from '../store/take-back.ts'
import { differing as inGerman } from '../words/de-differing.ts'
import { differing as inEnglish } from '../words/en-differing.ts'
import { placeSaid, type Speech, toldApart } from './told-apart.ts'

type Json = Readonly<Record<string, unknown>>
const DEMO = join(import.meta.dirname, '../../../cli/demo')
const metric: Speech = { words: inEnglish, reader: { units: 'metric', language: english }, nameOf: () => undefined }
const feet: Speech = { ...metric, reader: { units: 'feet-inches', language: english } }
const deutsch: Speech = { ...metric, words: inGerman, reader: { units: 'metric', language: german } as Reader }
const shorts = (values: readonly unknown[], field: string, speech = metric) => toldApart(values, field, speech).map(({ short }) => short)

/** Every field of the door file, its lists of things, and every word that it holds and nobody makes up. */
function written(): Readonly<Record<'fields' | 'fixed' | 'lists' | 'places', ReadonlySet<string>>> {
  const [fields, fixed, lists, places] = [new Set<string>(), new Set<string>(), new Set<string>(), new Set<string>()]
  const isThing = (schema: Json): boolean =>
    schema['properties'] !== undefined || ((schema['anyOf'] ?? schema['oneOf'] ?? []) as readonly Json[]).some(isThing)
  const walk = (schema: Json, field: string, place = ''): void => {
    if (place !== '') places.add(place)
    if (typeof schema['items'] === 'object' && isThing(schema['items'] as Json)) lists.add(field)
    for (const each of (schema['anyOf'] ?? schema['oneOf'] ?? schema['prefixItems'] ?? []) as readonly Json[]) walk(each, field, place)
    const words = (schema['enum'] ?? (schema['const'] === undefined ? [] : [schema['const']])) as readonly unknown[]
    for (const word of words) if (typeof word === 'string') fixed.add(`${field} ${word}`)
    for (const [name, each] of Object.entries((schema['properties'] ?? {}) as Record<string, Json>)) {
      fields.add(name)
      walk(each, name, place === '' ? name : `${place}/${name}`)
    }
    for (const inner of ['items', 'additionalProperties'])
      if (typeof schema[inner] === 'object') walk(schema[inner] as Json, field, `${place}/0`)
  }
  walk(doorFileJsonSchema(), '')
  return { fields, fixed, lists, places }
}

describe('two things that people wrote apart', () => {
  it('have a name for every field of the door file and for every fixed word in it, and no name for what is not there', () => {
    const { fields, fixed } = written()
    expect(Object.keys(inEnglish.fields).sort()).toEqual([...fields].sort())
    expect(fixed.size).toBeGreaterThan(120)
    for (const each of fixed) {
      const [field = '', word] = [each.slice(0, each.indexOf(' ')), each.slice(each.indexOf(' ') + 1)]
      const [said] = shorts([word, 'anything'], field)
      expect({ each, said }).toEqual({ each, said: inEnglish.said[each] ?? inEnglish.said[word] })
      expect(said, each).toBeDefined()
    }
    const words = new Set([...fixed].flatMap((each) => [each, each.slice(each.indexOf(' ') + 1)]))
    expect(Object.keys(inEnglish.said).filter((word) => !words.has(word))).toEqual([])
  })

  it('stand at a place that has a name, wherever in the door file, and are called by one name of each list', () => {
    const { lists, places } = written()
    const file = JSON.parse(readFileSync(join(DEMO, 'traffic-passage.json'), 'utf8'))
    const door = toDoor(file)
    expect(places.size).toBeGreaterThan(400)
    for (const speech of [metric, deutsch])
      for (const judged of [door, undefined]) {
        const said = [...places].map((place) => `${place}: ${placeSaid(judged, place, speech)}`)
        expect(said.filter((each) => /: .*(\w\/\w|_|[a-z][A-Z])/.test(each))).toEqual([])
      }
    for (const { one } of [inEnglish, inGerman]) expect(Object.keys(one).sort()).toEqual([...lists].sort())
    const cables = (colour: string) => ({ cables: [{ id: 'W1', cores: [{ id: '3', colour }] }] })
    expect(shorts([cables('GY'), cables('WH')], 'wiring')[0]).toBe('cable W1, core 3, colour: GY')
    expect(shorts([cables('GY'), cables('WH')], 'wiring', deutsch)[0]).toBe('Kabel W1, Ader 3, Farbe: GY')
  })

  it('are said as figures in the units and words in the language of who reads, and what one has not is said', () => {
    expect(shorts([3455, 3470], 'width_mm')).toEqual(['3455 mm', '3470 mm'])
    expect(shorts([2438.4, 2413], 'width_mm', feet)).toEqual([`8' 0"`, `7' 11"`])
    expect(shorts([0.45, 0.5], 'closeSpeed_m_per_s', deutsch)).toEqual(['0,45 m/s', '0,5 m/s'])
    expect(shorts(['public', 'trained'], 'people', deutsch)).toEqual(['jeder', 'eingewiesene Personen'])
    const post = { id: 'post-1abc', name: 'Bollard', shape: 'post', x_mm: 300, y_mm: -600, from_mm: 0, to_mm: 1000, radius_mm: 60 }
    const other = { ...post, radius_mm: 80, note: 'hall' }
    expect(shorts([post, other], '0')).toEqual(['radius: 60 mm; note: not entered', 'radius: 80 mm; note: hall'])
  })

  it('never look alike where a figure is shown rounded, where two things have one name, and where names hide what they are', () => {
    expect(shorts([1000, 1000.01], 'width_mm')).toEqual(['1000 mm (1000)', '1000 mm (1000.01)'])
    const lane = { name: 'Lane', who: 'both', xMin_mm: 100, xMax_mm: 2900 }
    expect(
      shorts(
        [
          [{ id: 'lane-1abc', ...lane }],
          [
            { id: 'lane-1xyz', ...lane },
            { id: 'lane-2xyz', ...lane },
          ],
        ],
        'lanes',
      ),
    ).toEqual(['Lane (lane-1abc)', 'Lane (lane-1xyz); Lane (lane-2xyz)'])
    const listed = (to_mm: number) => [{ id: 'a', name: 'Rack' }, ...(to_mm > 0 ? [{ id: 'b', name: 'Box', to_mm }] : [])]
    expect(shorts([listed(500), listed(0)], 'obstacles')).toEqual(['Box', 'without Box'])
    expect(shorts([listed(500), listed(600), listed(0)], 'obstacles')).toEqual(['Box (top: 500 mm)', 'Box (top: 600 mm)', 'without Box'])
    expect(shorts(['Hall', 'Hall '], 'name')[0]).not.toBe(shorts(['Hall', 'Hall '], 'name')[1])
  })

  it('are told apart, without a brace or a name of the file, wherever a demonstration door is changed at random (seeds 1 to 60)', () => {
    const doors = readdirSync(DEMO).map((name) => JSON.parse(readFileSync(join(DEMO, name), 'utf8')) as Json)
    for (let seed = 1; seed <= 60; seed++) {
      let state = seed * 2_654_435_761
      const roll = (below: number) => {
        state = (Math.imul(state ^ (state >>> 15), 2_246_822_519) + 1) | 0
        return (state >>> 1) % below
      }
      const door = doors[roll(doors.length)] as Json
      const parts = ['survey', 'sensors', 'zones', 'wiring', 'bodies', 'concept'].filter((part) => door[part] !== undefined)
      const part = parts[roll(parts.length)] as string
      const values = [0, 1, 2].map(() => {
        const changed = structuredClone(door[part])
        for (let n = roll(4); n > 0; n--) change(changed, roll)
        return changed
      })
      for (const speech of [metric, feet, deutsch]) {
        const said = toldApart(values, part, speech)
        for (const [i, { short, all }] of said.entries()) {
          for (let j = 0; j < i; j++)
            if (!same(values[i], values[j])) {
              expect(said[j]?.short, `seed ${seed}`).not.toBe(short)
              expect(said[j]?.all, `seed ${seed}`).not.toEqual(all)
            }
          expect(`${short} ${all.join(' ')}`, `seed ${seed}`).not.toMatch(/[{}]|undefined|\[object|_mm|_s\b/)
        }
      }
    }
  })
})

/** One change somewhere inside: a figure a little, a word, something taken away, something doubled. */
function change(value: unknown, roll: (below: number) => number): void {
  const holders: (readonly [Record<string, unknown>, string])[] = []
  const walk = (each: unknown): void => {
    if (typeof each !== 'object' || each === null) return
    for (const [key, inner] of Object.entries(each)) {
      holders.push([each as Record<string, unknown>, key])
      walk(inner)
    }
  }
  walk(value)
  const chosen = holders[roll(holders.length)]
  if (!chosen) return // all of it is gone
  const [holder, key] = chosen
  const there = holder[key]
  if (roll(3) === 0 && Array.isArray(holder)) holder.splice(Number(key), 1)
  else if (roll(3) === 0 && !Array.isArray(holder)) delete holder[key]
  else if (typeof there === 'number') holder[key] = there + ([0.001, 1, 100][roll(3)] ?? 1)
  else if (typeof there === 'string' && (key === 'name' || key === 'note')) holder[key] = `${there} 2`
  else if (Array.isArray(there) && there.length > 0)
    there.push({ ...(there[0] as object), ...(Object(there[0]).id && { id: `new-${roll(99)}` }) })
}
