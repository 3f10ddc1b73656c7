import type { ControlInput, ControlTest, WiredSensor } from '../model/wiring.ts'
import {
  ENDS,
  type End,
  FEEDS,
  type Feed,
  type Line,
  type Parts,
  protects,
  type SensorChoice,
  TEST_TIES,
  type TestTie,
} from './connecting.ts'

/** One way to set and connect all parts. */
export interface Way {
  readonly choices: readonly SensorChoice[]
  readonly lines: readonly Line[]
  readonly test: ControlTest | undefined
}

/** All ways, by number, none of them made before it is asked for. Sensors that are alike but for their names are connected alike, inputs set alike. */
export function waysToConnect({ sensors, inputs, tests }: Parts): { readonly count: number; readonly at: (way: number) => Way } {
  const channels = inputs.some(([input]) => input && protects(input) && input.pairedWith) ? 2 : 1
  const sensorKinds = kindsOf(sensors, (settings) => JSON.stringify(settings).replaceAll(`"${settings[0]?.id}`, '"'))
  const inputKinds = kindsOf(inputs, (settings) =>
    JSON.stringify(
      settings.map(({ acts, ohm, fedFrom, bands, pairedWith, endOfLine_ohm }) => [
        acts,
        ohm,
        fedFrom?.ohm,
        bands,
        pairedWith?.discrepancy_s,
        endOfLine_ohm,
      ]),
    ),
  )
  const options = sensorKinds.map(({ first }) => sensorOptions(first, channels))
  const having = (use: 'presence' | 'opening') => sensors.filter(([sensor]) => sensor?.outputs.some(({ acts }) => acts === use)).length
  const inputsFor = (isFor: (input: ControlInput) => boolean) => inputs.filter(([input]) => input && isFor(input)).length
  const presenceLaid = waysToLay(having('presence'), inputsFor(protects) / channels)
  const openingLaid = waysToLay(
    having('opening'),
    inputsFor(({ acts }) => acts === 'open'),
  )
  const ends: readonly End[] = inputs.some(([input]) => input?.endOfLine_ohm !== undefined) ? ENDS : ['none']
  const counts = [
    ...options.map(({ length }) => length),
    ...inputKinds.map(({ first }) => first.length),
    tests.length,
    presenceLaid.length,
    openingLaid.length,
    ends.length,
  ]
  const at = (way: number): Way => {
    const digits = digitsOf(way, counts)
    const choices = sensors.map((settings, i) => {
      const kind = sensorKinds.findIndex(({ members }) => members.includes(i))
      return choiceOf(settings, options[kind]?.[digits[kind] ?? 0] as SensorOption)
    })
    const set = inputs.map((settings, i) => {
      const kind = inputKinds.findIndex(({ members }) => members.includes(i))
      return settings[digits[sensorKinds.length + kind] ?? 0] as ControlInput
    })
    const [test = 0, presence = 0, opening = 0, end = 0] = digits.slice(sensorKinds.length + inputKinds.length)
    const lines = [
      ...presenceLines(set.filter(protects), choices, channels, presenceLaid[presence] ?? 'series'),
      ...openingLines(
        set.filter((input) => !protects(input)),
        choices,
        openingLaid[opening] ?? 'series',
      ),
    ]
    const ended = set.map(({ id, endOfLine_ohm }): Line => {
      const line = lines.find(({ input }) => input.id === id) as Omit<Line, 'end'>
      return { ...line, end: endOfLine_ohm === undefined ? 'none' : (ends[end] ?? 'none') }
    })
    return { choices, lines: ended, test: tests[test] }
  }
  return { count: counts.reduce((product, count) => product * count, 1), at }
}

interface Kind<T> {
  readonly first: T
  readonly members: readonly number[]
}

function kindsOf<T>(all: readonly T[], nameless: (each: T) => string): readonly Kind<T>[] {
  const kinds = new Map<string, { first: T; members: number[] }>()
  for (const [i, each] of all.entries()) {
    const kind = kinds.get(nameless(each)) ?? { first: each, members: [] }
    kinds.set(nameless(each), kind)
    kind.members.push(i)
  }
  return [...kinds.values()]
}

/** A choice by numbers, so that it fits every sensor of a kind. */
interface SensorOption {
  readonly setting: number
  readonly presence: readonly number[]
  readonly presenceFeed: Feed
  readonly opening: number | undefined
  readonly openingFeed: Feed
  readonly testTie: TestTie
}

function sensorOptions(settings: readonly WiredSensor[], channels: number): readonly SensorOption[] {
  return settings.flatMap((sensor, setting) => {
    const contacts = (use: 'presence' | 'opening') => sensor.outputs.flatMap(({ acts }, i) => (acts === use ? [i] : []))
    const opening: readonly (number | undefined)[] = contacts('opening').length > 0 ? contacts('opening') : [undefined]
    const testTies: readonly TestTie[] = sensor.test ? TEST_TIES : ['nothing']
    return channelContacts(sensor, contacts('presence'), channels).flatMap((presence) =>
      feedsOf(sensor, presence).flatMap((presenceFeed) =>
        opening.flatMap((open) =>
          feedsOf(sensor, open === undefined ? [] : [open]).flatMap((openingFeed) =>
            testTies.map((testTie) => ({ setting, presence, presenceFeed, opening: open, openingFeed, testTie })),
          ),
        ),
      ),
    )
  })
}

/** Two channels take two contacts that different things move. */
function channelContacts({ outputs }: WiredSensor, contacts: readonly number[], channels: number): readonly (readonly number[])[] {
  if (contacts.length === 0) return [[]]
  if (channels === 1) return contacts.map((contact) => [contact])
  return contacts.flatMap((a) => contacts.filter((b) => outputs[a]?.output !== outputs[b]?.output).map((b) => [a, b]))
}

/** A transistor that hangs on a rail inside its sensor needs no feed; that counts as a link. */
function feedsOf({ outputs, power }: WiredSensor, contacts: readonly number[]): readonly Feed[] {
  const isFed = contacts.every((i) => {
    const { from, to } = outputs[i] ?? { from: '', to: '' }
    return [from, to].some((end) => end === power.plus || end === power.minus)
  })
  return isFed ? ['link'] : FEEDS
}

function choiceOf(settings: readonly WiredSensor[], option: SensorOption): SensorChoice {
  const sensor = settings[option.setting] as WiredSensor
  const { presenceFeed, openingFeed, testTie } = option
  const presence = option.presence.flatMap((i) => sensor.outputs[i] ?? [])
  return {
    sensor,
    presence,
    presenceFeed,
    opening: option.opening === undefined ? undefined : sensor.outputs[option.opening],
    openingFeed,
    testTie,
  }
}

type Laid = 'own' | 'series' | 'parallel'

/** On an input of its own each, or all on the first, in series or side by side. */
function waysToLay(sensors: number, inputs: number): readonly Laid[] {
  if (sensors <= 1) return ['own']
  return inputs >= sensors ? ['own', 'series', 'parallel'] : ['series', 'parallel']
}

function presenceLines(
  inputs: readonly ControlInput[],
  choices: readonly SensorChoice[],
  channels: number,
  laid: Laid,
): readonly Omit<Line, 'end'>[] {
  const firsts = channels === 1 ? inputs : inputs.filter(({ pairedWith }, i) => inputs.findIndex(({ id }) => id === pairedWith?.id) > i)
  const members = choices.flatMap(({ sensor, presence, presenceFeed }) =>
    presence.length > 0 ? [{ sensor, presence, feed: presenceFeed }] : [],
  )
  return inputs.map((input) => {
    const first = firsts.findIndex(({ id }) => id === input.id || id === input.pairedWith?.id)
    const channel = firsts[first]?.id === input.id ? 0 : 1
    const on = first < 0 ? [] : laid === 'own' ? members.slice(first, first + 1) : first === 0 ? members : []
    return {
      input,
      laid: laid === 'own' ? 'series' : laid,
      members: on.flatMap(({ sensor, presence, feed }) => {
        const contact = presence[channel]
        return contact ? [{ sensor, contact, feed }] : []
      }),
    }
  })
}

function openingLines(inputs: readonly ControlInput[], choices: readonly SensorChoice[], laid: Laid): readonly Omit<Line, 'end'>[] {
  const members = choices.flatMap(({ sensor, opening, openingFeed }) => (opening ? [{ sensor, contact: opening, feed: openingFeed }] : []))
  let opens = -1
  return inputs.map((input) => {
    if (input.acts === 'open') opens++
    const on = input.acts !== 'open' ? [] : laid === 'own' ? members.slice(opens, opens + 1) : opens === 0 ? members : []
    return { input, laid: laid === 'own' ? 'series' : laid, members: on }
  })
}

function digitsOf(number: number, counts: readonly number[]): readonly number[] {
  let rest = number
  return counts.map((count) => {
    const digit = rest % count
    rest = Math.floor(rest / count)
    return digit
  })
}
