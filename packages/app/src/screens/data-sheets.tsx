import type { DoorFile } from '@sillsight/document'
import { Choose } from '../entry/choose.tsx'
import { Figure } from '../entry/figure.tsx'
import { Sentence } from '../entry/sentence.tsx'
import { useFacts } from '../words/facts.ts'
import { KnownFrom } from './known-from.tsx'
import { SheetOfControl } from './sheet-of-control.tsx'
import { SheetOfSensor } from './sheet-of-sensor.tsx'

const PATH = 'wiring'

/** What the data sheets say of supply, sensors and control, each value where it is entered. */
export function DataSheets({ wiring }: { readonly wiring: NonNullable<DoorFile['wiring']> }) {
  const { wiring: words, sheets } = useFacts()
  const volt = (path: string, name: 'least_V' | 'largest_V', of: string) => (
    <Figure path={`${path}/${name}`} label={name === 'least_V' ? words.leastVolt(of) : words.largestVolt(of)} kind="volt" />
  )
  return (
    <>
      <p>
        <Sentence
          text={words.gives}
          figures={{
            least: volt(`${PATH}/supply`, 'least_V', words.ofSupply),
            largest: volt(`${PATH}/supply`, 'largest_V', words.ofSupply),
          }}
        />
      </p>
      <p>
        <Sentence
          text={sheets.supply}
          figures={{
            inner: <Figure path={`${PATH}/supply/inner_ohm`} label={sheets.inner} kind="ohm" />,
            earthed: <Choose path={`${PATH}/supply/earthed`} label={sheets.earthedOf} options={sheets.earthed} />,
          }}
        />
      </p>
      <KnownFrom path={`${PATH}/supply/source`} of={words.ofSupply} />
      {wiring.sensors.map((each, i) => {
        const { sensor } = each
        const path = `${PATH}/sensors/${i}`
        return (
          <div key={sensor}>
            <p>
              <Sentence
                text={words.power}
                figures={{
                  name: sensor,
                  least: volt(`${path}/power`, 'least_V', sensor),
                  largest: volt(`${path}/power`, 'largest_V', sensor),
                  current: <Figure path={`${path}/power/largest_A`} label={words.current(sensor)} kind="ampere" />,
                }}
              />
            </p>
            <SheetOfSensor sensor={each} index={i} />
            <KnownFrom path={`${path}/source`} of={sensor} />
          </div>
        )
      })}
      {wiring.control.test ? (
        <p>
          <Sentence
            text={words.test}
            figures={{
              every: <Figure path={`${PATH}/control/test/every_s`} label={words.every} kind="seconds" />,
              does: <Choose path={`${PATH}/control/test/whenFailed`} label={words.whenFailed} options={words.failed} />,
            }}
          />
        </p>
      ) : (
        <p>{words.noTest}</p>
      )}
      <SheetOfControl control={wiring.control} />
      <KnownFrom path={`${PATH}/control/source`} of={words.control} />
    </>
  )
}
