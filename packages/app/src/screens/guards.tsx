import { useBegunIn } from '../entry/begun.ts'
import { Choose } from '../entry/choose.tsx'
import { Cross } from '../entry/cross.tsx'
import { Figure } from '../entry/figure.tsx'
import { useListed } from '../entry/listed.ts'
import { Pick } from '../entry/pick.tsx'
import { pushAt, valueAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import { Whole } from '../entry/whole.tsx'
import { useFacts } from '../words/facts.ts'
import { useDoor } from './at-door.ts'

const HOWS = ['cover', 'presence', 'edge', 'nothing-to-hold', 'load-stop'] as const
type How = (typeof HOWS)[number]
interface Guard {
  readonly how: How
}

/** What is done against one danger, each in a sentence; what needs a zone or a sensor is offered where there is one. */
export function Guards({ path, of }: { readonly path: string; readonly of: string }) {
  const words = useFacts().dangers
  const { snapshot } = useDoor()
  const listed = useListed(path)
  const begun = useBegunIn(path)
  const found = valueAt(snapshot.file, path)
  const guards: readonly Guard[] = Array.isArray(found) ? found : []
  const zone = snapshot.file.zones?.[0]?.id
  const sensor = snapshot.file.sensors?.find(({ id }) => id !== undefined)?.id
  const put = (made: Guard & object) => listed.add(made, words.guardNames[made.how])
  const add = (how: How) => {
    if (how === 'cover') begun.ask()
    else if (how === 'presence') put({ how, zone: zone ?? '' } as Guard)
    else if (how === 'edge') put({ how, sensor: sensor ?? '' } as Guard)
    else put({ how })
  }
  const offered = HOWS.filter((how) => (how !== 'presence' || zone !== undefined) && (how !== 'edge' || sensor !== undefined))
  return (
    <div className="guards">
      {guards.length === 0 && begun.places.length === 0 && <p>{words.nothing}</p>}
      {guards.map(({ how }, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: guards have no other name
        <div className="thing" key={i}>
          <GuardWords path={`${path}/${i}`} how={how} />
          <Cross name={`${words.guardNames[how]}, ${of}`} onAway={() => listed.remove(i, words.guardNames[how])} />
        </div>
      ))}
      {begun.places.map((place) => (
        <Whole
          key={place}
          place={place}
          called={`${words.guardNames.cover}, ${of}`}
          text={words.guards.cover.replace('{shape}', words.shapeUnknown)}
          figures={{ upTo: { label: words.upTo }, opening: { label: words.opening }, distance: { label: words.distance } }}
          put={(draft, { upTo, opening, distance }) =>
            pushAt(draft, path, { how: 'cover', upTo_mm: upTo, opening_mm: opening, distance_mm: distance })
          }
          onDone={begun.done}
        />
      ))}
      <Pick
        label={`${words.addGuard}: ${of}`}
        shown={words.addGuard}
        options={Object.fromEntries(offered.map((how) => [how, words.guardNames[how]])) as Readonly<Record<How, string>>}
        at={path}
        onPick={add}
      />
    </div>
  )
}

function GuardWords({ path, how }: { readonly path: string; readonly how: How }) {
  const words = useFacts().dangers
  const { snapshot } = useDoor()
  const { zones = [], sensors = [] } = snapshot.file
  const figures = {
    upTo: <Figure path={`${path}/upTo_mm`} label={words.upTo} />,
    opening: <Figure path={`${path}/opening_mm`} label={words.opening} />,
    distance: <Figure path={`${path}/distance_mm`} label={words.distance} />,
    shape: <Choose path={`${path}/shape`} label={words.shape} options={words.shapes} unknown={words.shapeUnknown} />,
    zone: <Choose path={`${path}/zone`} label={words.zone} options={Object.fromEntries(zones.map(({ id, name = id }) => [id, name]))} />,
    sensor: (
      <Choose
        path={`${path}/sensor`}
        label={words.sensor}
        options={Object.fromEntries(sensors.flatMap(({ id, name = id }) => (id === undefined || name === undefined ? [] : [[id, name]])))}
      />
    ),
    stops: <Choose path={`${path}/stops`} label={words.stops} options={words.stopNames} unknown={words.stopsUnknown} />,
  }
  return (
    <p>
      <Sentence text={words.guards[how]} figures={figures} />
    </p>
  )
}
