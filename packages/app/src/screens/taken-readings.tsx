import { measurable, type Standing, type Wiring } from '@sillsight/engine'
import { standingWords } from '@sillsight/report'
import type { ReactNode } from 'react'
import { AskedFigure } from '../entry/asked-figure.tsx'
import { Cross } from '../entry/cross.tsx'
import { Sentence } from '../entry/sentence.tsx'
import { useReader } from '../words/reader.ts'
import { useSearching } from '../words/searching.ts'
import { useWords } from '../words/words.ts'
import { isInWiring, type OnSite, SHOWN_BELIEFS, SHOWN_STATES, type SiteReading } from './site-readings.ts'

interface Props {
  readonly wiring: Wiring
  readonly onSite: OnSite
  readonly onChange: (by: (now: OnSite) => OnSite) => void
}

/** What was measured and seen on site, a sentence each, and what the meter is good to. */
export function TakenReadings({ wiring, onSite, onChange }: Props) {
  const words = useSearching().trace
  const { readings, meter } = onSite
  const nobody: Standing = { seenBy: [], asking: false }
  const [input] = wiring.control.inputs
  const [sensor] = wiring.sensors
  const add = (reading: SiteReading) => onChange((now) => ({ ...now, readings: [...now.readings, reading] }))
  const change = (index: number, next: SiteReading | undefined) =>
    onChange((now) => ({ ...now, readings: now.readings.flatMap((each, i) => (i !== index ? [each] : next ? [next] : [])) }))
  const off = (name: 'off_V' | 'off_percent', kind: 'volt' | 'percent', label: string) => (
    <AskedFigure
      asked={{
        label,
        kind,
        value: meter[name],
        onEnter: (value) => onChange((now) => ({ ...now, meter: { ...now.meter, [name]: value } })),
      }}
    />
  )
  return (
    <section aria-label={words.readings} className="taken-readings">
      <h3>{words.readings}</h3>
      {readings.length === 0 && <p>{words.noReadings}</p>}
      {readings.map((reading, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: readings have no names, and keep their order
        <Reading key={i} reading={reading} number={i + 1} wiring={wiring} onChange={(next) => change(i, next)} />
      ))}
      <div className="row">
        {input && (
          <button type="button" className="second" onClick={() => add({ ...nobody, kind: 'volt', plus: input.plus, minus: input.minus })}>
            {words.addVolt}
          </button>
        )}
        {sensor && (
          <button type="button" className="second" onClick={() => add({ ...nobody, kind: 'sensor', sensor: sensor.id })}>
            {words.addSensor}
          </button>
        )}
        {input && (
          <button type="button" className="second" onClick={() => add({ ...nobody, kind: 'input', input: input.id })}>
            {words.addInput}
          </button>
        )}
        {readings.length > 0 && (
          <button type="button" className="link" onClick={() => onChange((now) => ({ ...now, readings: [] }))}>
            {words.anew}
          </button>
        )}
      </div>
      <p>
        <Sentence
          text={words.meter}
          figures={{ off: off('off_V', 'volt', words.off), share: off('off_percent', 'percent', words.share) }}
        />
      </p>
    </section>
  )
}

interface OfReading {
  readonly reading: SiteReading
  readonly number: number
  readonly wiring: Wiring
  readonly onChange: (next: SiteReading | undefined) => void
}

function Reading({ reading, number, wiring, onChange }: OfReading) {
  const words = useSearching().trace
  return (
    <div className="thing">
      <div>
        <p>
          <ReadingWords reading={reading} number={number} wiring={wiring} onChange={onChange} />
        </p>
        {!isInWiring(wiring, reading) && <p className="entry-doubt">{words.gone}</p>}
      </div>
      <Cross name={words.name(number)} onAway={() => onChange(undefined)} />
    </div>
  )
}

function ReadingWords({ reading, number, wiring, onChange }: OfReading) {
  const words = useSearching().trace
  const { language } = useReader()
  const { states, beliefs } = language.wiring
  const standings = new Map(standingsOf(wiring).map((each) => [keyOf(each), each]))
  const standing = (
    <Pick
      label={words.standingOf(number)}
      value={keyOf(reading)}
      options={new Map([...standings].map(([key, each]) => [key, standingWords(each, language)]))}
      onPick={(key) => onChange({ ...reading, ...(standings.get(key) ?? { seenBy: [], asking: false }) })}
    />
  )
  const named = (names: readonly string[]) => new Map(names.map((name) => [name, name]))
  if (reading.kind === 'volt') {
    const lead = (name: 'plus' | 'minus', label: string) => (
      <Pick
        label={label}
        value={reading[name]}
        options={named(measurable(wiring))}
        onPick={(terminal) => onChange({ ...reading, [name]: terminal })}
      />
    )
    return (
      <Sentence
        text={words.volt}
        figures={{
          plus: lead('plus', words.plusOf(number)),
          minus: lead('minus', words.minusOf(number)),
          volt: (
            <AskedFigure
              asked={{
                label: words.voltOf(number),
                hint: words.hint(reading.plus, reading.minus, standingWords(reading, language)),
                kind: 'volt',
                value: reading.volt,
                signed: true,
                onEnter: (volt) => onChange({ ...reading, volt }),
              }}
            />
          ),
          standing,
        }}
      />
    )
  }
  const shown: ReadonlyMap<string, string> =
    reading.kind === 'sensor'
      ? new Map(SHOWN_STATES.map((state) => [state, states[state]]))
      : new Map(SHOWN_BELIEFS.map((belief) => [belief, beliefs[belief]]))
  const shows = (
    <Pick
      label={words.showsOf(number)}
      value={reading.shows ?? ''}
      options={shown}
      onPick={(each) => onChange({ ...reading, shows: each })}
    />
  )
  return reading.kind === 'sensor' ? (
    <Sentence
      text={words.sensor}
      figures={{
        sensor: (
          <Pick
            label={words.sensorOf(number)}
            value={reading.sensor}
            options={named(wiring.sensors.map(({ id }) => id))}
            onPick={(sensor) => onChange({ ...reading, sensor })}
          />
        ),
        shows,
        standing,
      }}
    />
  ) : (
    <Sentence
      text={words.input}
      figures={{
        input: (
          <Pick
            label={words.inputOf(number)}
            value={reading.input}
            options={named(wiring.control.inputs.map(({ id }) => id))}
            onPick={(input) => onChange({ ...reading, input })}
          />
        ),
        shows,
        standing,
      }}
    />
  )
}

/** A word that is chosen and is not part of the door; one that is no longer offered stays until another is. */
function Pick(props: {
  readonly label: string
  readonly value: string
  readonly options: ReadonlyMap<string, string>
  readonly onPick: (value: string) => void
}): ReactNode {
  const { label, value, options, onPick } = props
  const { entry } = useWords()
  return (
    <select
      className="choose"
      aria-label={label}
      data-missing={value === '' || undefined}
      value={value}
      onChange={(event) => onPick(event.target.value)}
    >
      {!options.has(value) && (
        <option value={value} disabled>
          {value === '' ? entry.choose : value}
        </option>
      )}
      {[...options].map(([key, word]) => (
        <option key={key} value={key}>
          {word}
        </option>
      ))}
    </select>
  )
}

/** How a door can be made to stand by one person on site. */
function standingsOf({ sensors, control }: Wiring): readonly Standing[] {
  const seen = sensors.map(({ id }) => ({ seenBy: [id], asking: false }))
  return [{ seenBy: [], asking: false }, ...seen, ...(control.test ? [{ seenBy: [], asking: true }] : [])]
}

const keyOf = ({ seenBy, asking }: Standing) => JSON.stringify([seenBy, asking])
