import { doorFileJsonSchema } from '@sillsight/document'
import { describe, expect, it, vi } from 'vitest'
import { FULL } from '../../test/full-doors.ts'
import { demoFiles, LACKING, patternOf } from '../../test/lacking-doors.ts'
import { placesOn } from '../../test/places-on.ts'

vi.mock('../preferences.ts', () => ({ usePreferences: () => ({ theme: 'paper', units: 'metric', language: 'en' }) }))

/** What nobody enters by hand in the app, and why. A pattern stands for all below it. */
const NOT_BY_HAND: Readonly<Record<string, string>> = {
  sillsight: 'the version of the file: the program writes it',
  '**/id': 'ids are made when a thing is added; people see its name',
  '**/shape': 'chosen by which thing is added, and never changed afterwards',
  'survey/dangers/points/*/guards/*/how': 'chosen by which guard is added',
  'sensors/*/use': 'chosen by which sensor is added',
  'bodies/*/use': 'chosen by which body is added',
  'sensors/*/device': 'a data sheet: comes with the sensor',
  'sensors/*/planes': 'a data sheet: hundreds of beams, which nobody types on a lift; they come with the sensor, from a library or a file',
  'sensors/*/usualTilt_deg': 'a data sheet: the tilt itself is entered',
  'sensors/*/sources': "written when a figure takes the place of the library's; better known by the source of all of them",
  'sensors/*/fields/*/function': 'follows the function of its output, which is chosen',
  'sensors/*/outputs/*/response_s': 'entered at each field, whose own figure goes before it',
  'sensors/*/outputs/*/fastestResponse_s': 'entered at each field, whose own figure goes before it',
  'sensors/*/outputs/*/hold_s': 'entered at each field, whose own figure goes before it',
  'sensors/*/outputs/*/presenceTime_s': 'entered at each field, whose own figure goes before it',
  'bodies/*/name': 'bodies are named by their size, which comes with them',
  'bodies/*/postures': 'sizes of standards come with the body; only how one lies after a fall is entered',
  confirmations: 'made at a finding, by who holds the page: a dialog of its own writes all of one at once',
  libraries: 'pinned by the hash of their content: the command line reads them',
  drive: 'reserved',
  'wiring/supply/plus': 'comes with the wiring that is begun',
  'wiring/supply/minus': 'comes with the wiring that is begun',
  'wiring/sensors/*/sensor': 'chosen by which sensors are wired',
  'wiring/sensors/*/outputs/*/kind': 'chosen by which output is added',
  'wiring/sensors/*/outputs/*/name': 'made when an output is added',
  surroundings: 'reserved',
  records: 'reserved',
}

type Json = Readonly<Record<string, unknown>>

/** Every place of the door file in which a value may stand; `*` for any of a list. */
function placesOf(schema: Json, at = ''): readonly string[] {
  const below = (name: string) => (at === '' ? name : `${at}/${name}`)
  const either = (schema['anyOf'] ?? schema['oneOf']) as readonly Json[] | undefined
  if (either) return [...new Set(either.flatMap((each) => placesOf(each, at)))]
  if (schema['properties'])
    return Object.entries(schema['properties'] as Record<string, Json>).flatMap(([name, each]) => placesOf(each, below(name)))
  if (schema['prefixItems']) return (schema['prefixItems'] as readonly Json[]).flatMap((each, i) => placesOf(each, below(`${i}`)))
  if (schema['type'] === 'array') return placesOf(schema['items'] as Json, below('*'))
  if (typeof schema['additionalProperties'] === 'object') return placesOf(schema['additionalProperties'] as Json, below('*'))
  return [at]
}

function isUnder(place: string, pattern: string): boolean {
  if (pattern.startsWith('**/')) return place === pattern.slice(3) || place.endsWith(pattern.slice(2))
  return place === pattern || place.startsWith(`${pattern}/`)
}

/** A control enters its place, by number in a tuple; one of a list of words enters the list. */
function entered(places: ReadonlySet<string>, place: string): boolean {
  const loose = place.replace(/\/\d+(?=\/|$)/g, '/*')
  return places.has(loose) || (place.endsWith('/*') && places.has(place.slice(0, -2)))
}

describe('every value of the door file', () => {
  const places = new Set(
    [...FULL, ...LACKING, ...demoFiles()]
      .flatMap(placesOn)
      .map(patternOf)
      .map((place) => place.replace(/(\/none)\/[a-z-]+$/, '$1')),
  )
  const all = placesOf(doorFileJsonSchema())
  const listed = (place: string) => Object.keys(NOT_BY_HAND).some((pattern) => isUnder(place, pattern))

  it('is entered by a control of the app, or is named here with the reason why not', () => {
    expect(all.filter((place) => !listed(place) && !entered(places, place))).toEqual([])
  })
  it('is not named here without need', () => {
    const needed = (pattern: string) => all.some((place) => isUnder(place, pattern) && !entered(places, place))
    expect(Object.keys(NOT_BY_HAND).filter((pattern) => !needed(pattern))).toEqual([])
    expect(all.length).toBeGreaterThan(300)
  })
})
