import type { Door, ProtectionConcept } from '../model/door.ts'
import type { Declared, Sensor } from '../model/sensor.ts'
import type { InputPath, OutsideValue } from '../model/source.ts'
import { asValue } from './control-fact.ts'
import { NOTHING, notApplicable, orNoSubject, quantity, step } from './drafts.ts'
import { protects } from './fields.ts'
import { CONCEPT, sensorPath, WIRING } from './paths.ts'
import type { Context, Draft, Rule } from './rule.ts'

/**
 * A sensor on whose presence detection the concept rests is declared by its maker for that: as a protective device of the kind that the concept needs, of a
 * performance level or category that is enough, with somebody who finds its faults, and listed for the drive where the law wants that. However well it
 * sees, without evidence it is not settled. One finding for each such sensor. Measured is how many of these four are shown.
 *
 * Facts: `sensor`, `sensorName`, `lacks` (`nothing`, `device`, `level`, `test`, `listing`), [`device`, `performanceLevel`, `category`, `testedBy`, `listedFor`],
 * `required` (a letter), `requiredCategory`.
 */
export const permittedFunction: Rule = {
  id: 'permitted-function',
  source: { basis: 'common practice', note: 'what protects people is declared for that by its maker' },
  judge: (context) => {
    const { sensors, concept } = context.door
    const protecting = sensors.filter(protects)
    if (protecting.length > 0 && concept && !restsOnPresence(concept))
      return [notApplicable('not-required-by-concept', { drive: concept.drive, closingEdge: concept.closingEdge })]
    return orNoSubject(protecting.map((sensor) => draftOf(context, sensor)))
  },
}

export function restsOnPresence({ drive, closingEdge }: ProtectionConcept): boolean {
  return drive !== 'hold-to-run' && closingEdge !== 'force-limited-edge'
}

export const LEVELS = ['a', 'b', 'c', 'd', 'e'] as const
const CATEGORIES = ['B', '1', '2', '3', '4'] as const

/** Shown, not so, or what has to be said first. */
type Answer = 'yes' | 'no' | readonly InputPath[]

interface Demand {
  readonly what: 'device' | 'level' | 'test' | 'listing'
  readonly answer: Answer
}

function draftOf({ door, values }: Context, sensor: Sensor): Draft {
  const path = `${sensorPath(door, sensor)}/declares`
  const { declares } = sensor
  const { requiredLevel } = values
  const [level = 0, category = 0] = requiredLevel.value
  const subject = { kind: 'sensor', id: sensor.id } as const
  const names = { sensor: sensor.id, sensorName: sensor.name, required: LEVELS[level - 1] ?? '', requiredCategory: category }
  const inputs = [path, CONCEPT, ...(declares?.testedBy === 'control' ? [WIRING] : [])]
  const lacking = (needs: readonly InputPath[]): Draft => ({
    verdict: 'undetermined',
    reason: 'missing-input',
    needs,
    subject,
    steps: [],
    facts: { ...names, lacks: 'nothing' },
    restsOn: { ...NOTHING, inputs },
  })
  if (!door.concept) return lacking([CONCEPT])
  if (!declares) return lacking([path])
  const demands = demandsOf({ door, concept: door.concept, declares, path, requiredLevel })
  const refused = demands.find(({ answer }) => answer === 'no')
  const needs = demands.flatMap(({ answer }) => (typeof answer === 'string' ? [] : answer))
  const measured = quantity(demands.filter(({ answer }) => answer === 'yes').length, '1')
  const frame = {
    subject,
    measured,
    limit: quantity(demands.length, '1'),
    steps: [step('shown by what its maker declares', measured, 'judge/permitted-function', { inputs, values: [requiredLevel] })],
    facts: { ...names, lacks: refused?.what ?? 'nothing', ...statedOf(declares) },
    restsOn: { ...NOTHING, inputs, values: [requiredLevel, asValue(path, declares.source)] },
  }
  if (refused) return { ...frame, verdict: 'fail' }
  if (needs.length > 0) return { ...frame, verdict: 'undetermined', reason: 'missing-input', needs }
  return { ...frame, verdict: 'pass' }
}

function statedOf({ device, performanceLevel, category, testedBy, listedFor }: Declared): Draft['facts'] {
  const stated = Object.entries<string | undefined>({ device, performanceLevel, category, testedBy, listedFor })
  return Object.fromEntries(stated.flatMap(([name, says]) => (says === undefined ? [] : [[name, says]])))
}

interface Grounds {
  readonly door: Door
  readonly concept: ProtectionConcept
  readonly declares: Declared
  readonly path: InputPath
  readonly requiredLevel: OutsideValue & { readonly value: readonly number[] }
}

function demandsOf({ door, concept, declares, path, requiredLevel }: Grounds): readonly Demand[] {
  const { device, testedBy, listedFor } = declares
  const isEnough = device === 'electro-sensitive' || (device === 'pressure-sensitive' && concept.closingEdge !== 'contact-free')
  return [
    { what: 'device', answer: device === undefined ? [`${path}/device`] : isEnough ? 'yes' : 'no' },
    { what: 'level', answer: levelAnswer(declares, path, requiredLevel.value) },
    {
      what: 'test',
      answer: testedBy === undefined ? [`${path}/testedBy`] : testedBy === 'control' ? testAnswer(door) : yes(testedBy === 'itself'),
    },
    ...(concept.listing === 'not-needed' ? [] : [{ what: 'listing', answer: listingAnswer(concept, listedFor, path) } as const]),
  ]
}

const yes = (is: boolean): Answer => (is ? 'yes' : 'no')

/** Whatever is declared of both has to be enough; one of them is evidence. */
function levelAnswer({ performanceLevel, category }: Declared, path: InputPath, [level = 0, least = 0]: readonly number[]): Answer {
  if (performanceLevel === undefined && category === undefined) return [`${path}/performanceLevel`]
  const isLevel = performanceLevel === undefined || LEVELS.indexOf(performanceLevel) + 1 >= level
  return yes(isLevel && (category === undefined || CATEGORIES.indexOf(category) >= least))
}

/** A device that leaves its test to the control needs one that does not close where the test failed. */
function testAnswer({ wiring }: Door): Answer {
  if (wiring === undefined) return [WIRING]
  return yes(wiring.control.test?.whenFailed === 'does-not-close')
}

function listingAnswer({ listing }: ProtectionConcept, listedFor: Declared['listedFor'], path: InputPath): Answer {
  if (listedFor === 'this-drive') return 'yes'
  if (listing === undefined) return [`${CONCEPT}/listing`]
  return listedFor === undefined ? [`${path}/listedFor`] : 'no'
}
