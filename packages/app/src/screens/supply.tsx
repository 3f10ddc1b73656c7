import type { DoorFile } from '@sillsight/document'
import { Choose } from '../entry/choose.tsx'
import { Figure } from '../entry/figure.tsx'
import { putAt, valueAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import { useFacts } from '../words/facts.ts'
import { useDoor } from './at-door.ts'
import { KnownFrom } from './known-from.tsx'

type FileWiring = NonNullable<DoorFile['wiring']>

/** What the voltages and currents of a wiring rest on besides its cores: copper, source, and what each contact may switch. */
export function Supply({ wiring }: { readonly wiring: FileWiring }) {
  const words = useFacts().wiring.supply
  return (
    <>
      <p>
        <Sentence
          text={words.copper}
          figures={{
            coldest: <Coldest isKnown={wiring.copper !== undefined} label={words.coldest} />,
            hottest: <Figure path="wiring/copper/hottest_degC" label={words.hottest} kind="temperature" signed />,
          }}
        />
      </p>
      <p>
        <Sentence
          text={words.source}
          figures={{
            limited: (
              <Choose path="wiring/supply/limited" label={words.limited} options={words.limitedNames} unknown={words.limitedUnknown} />
            ),
            largest: <Figure path="wiring/supply/largest_A" label={words.largest} kind="ampere" optional />,
            fuse: <Figure path="wiring/supply/fuse_A" label={words.fuse} kind="ampere" optional missing={words.noFuse} />,
          }}
        />
      </p>
      {wiring.sensors.flatMap(({ sensor, outputs }, i) =>
        outputs.map(({ kind, name }, k) => (
          <Contact
            key={`${sensor} ${name}`}
            path={`wiring/sensors/${i}/outputs/${k}/rating`}
            sensor={sensor}
            name={name}
            text={kind === 'contact' || kind === 'change-over' ? words.contact : words.transistor}
          />
        )),
      )}
      <HandTest />
    </>
  )
}

/** Only beside the hottest: that is what is judged. */
function Coldest({ isKnown, label }: { readonly isKnown: boolean; readonly label: string }) {
  const path = 'wiring/copper/coldest_degC'
  return isKnown ? <Figure path={path} label={label} kind="temperature" signed optional /> : <span>?</span>
}

interface ContactOf {
  readonly path: string
  readonly sensor: string
  readonly name: string
  readonly text: string
}

function Contact({ path, sensor, name, text }: ContactOf) {
  const words = useFacts().wiring.supply
  return (
    <p>
      <Sentence
        text={text}
        figures={{
          name,
          sensor,
          volt: <Figure path={`${path}/largest_V`} label={words.volt(name)} kind="volt" />,
          most: <Figure path={`${path}/largest_A`} label={words.most(name)} kind="ampere" />,
          least: (
            <Figure
              path={`${path}/least_A`}
              label={words.least(name)}
              kind="ampere"
              optional
              put={(draft, value) => putAt(draft, `${path}/least_A`, value)}
            />
          ),
        }}
      />
    </p>
  )
}

/** What it takes to say how often somebody has to test by hand for what nothing else finds. */
function HandTest() {
  const words = useFacts().wiring.handTest
  const { snapshot } = useDoor()
  const path = 'wiring/handTest'
  const isStated = valueAt(snapshot.file, path) !== undefined
  const figure = (name: 'mostHidden_percent' | 'cable_y' | 'supply_y' | 'resistor_y' | 'control_y') => (
    <Figure
      path={`${path}/${name}`}
      label={words.figures[name]}
      kind={name === 'mostHidden_percent' ? 'percent' : 'count'}
      optional
      missing={words.unsaid}
      put={(draft, value) => {
        // what is entered rests on memory until somebody says where it stands
        if (!isStated && value !== undefined) putAt(draft, `${path}/source`, { basis: 'from memory' })
        putAt(draft, `${path}/${name}`, value)
      }}
    />
  )
  return (
    <>
      <p>
        <Sentence
          text={words.says}
          figures={{
            share: figure('mostHidden_percent'),
            cable: figure('cable_y'),
            supply: figure('supply_y'),
            resistor: figure('resistor_y'),
            control: figure('control_y'),
          }}
        />
      </p>
      {isStated && <KnownFrom path={`${path}/source`} of={words.of} />}
    </>
  )
}
