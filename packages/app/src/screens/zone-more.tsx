import { called } from '@sillsight/report'
import { useAsked } from '../entry/begun.ts'
import { Choose } from '../entry/choose.tsx'
import { Chosen } from '../entry/chosen.tsx'
import { Figure } from '../entry/figure.tsx'
import type { Kind } from '../entry/kinds.ts'
import { putAt, valueAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import { Whole } from '../entry/whole.tsx'
import { useFacts } from '../words/facts.ts'
import { useReader } from '../words/reader.ts'
import { useDoor } from './at-door.ts'
import { KnownFrom } from './known-from.tsx'

/** What a zone can say besides where it lies: with which bodies it is judged, what must not see it, on what grid, which smallest body is looked for. */
export function ZoneMore({ index }: { readonly index: number }) {
  const words = useFacts().zones
  const reader = useReader()
  const { snapshot, answers } = useDoor()
  const path = `zones/${index}`
  const zone = snapshot.file.zones?.[index]
  if (!zone) return null
  const of = zone.name ?? zone.id
  const bodies = snapshot.file.bodies ?? []
  const nameOf = (id: string, name = id) => called(answers.shown?.door.bodies.find((body) => body.id === id)?.name ?? name, reader)
  return (
    <>
      {zone.purpose === 'must-not-see' && (
        <p>
          <Sentence
            text={words.mustNot}
            figures={{ function: <Choose path={`${path}/function`} label={`${words.function}: ${of}`} options={words.functions} /> }}
          />
        </p>
      )}
      {bodies.length > 0 && (
        <>
          <p>{zone.bodies === undefined ? words.allBodies : words.theseBodies}</p>
          <Chosen
            path={`${path}/bodies`}
            chosen={zone.bodies ?? []}
            options={Object.fromEntries(bodies.map(({ id, name }) => [id, nameOf(id, name)]))}
            add={words.addBody}
            of={of}
            remove={(body) => words.removeBody(body, of)}
          />
        </>
      )}
      {zone.allowedPocket_mm !== undefined && (
        <KnownFrom path={`${path}/allowedPocketSource`} text={words.pocketKnown} of={`${words.pocket}, ${of}`} />
      )}
      <p>
        <Sentence
          text={words.grid}
          figures={{ pitch: <Figure path={`${path}/pitch_mm`} label={`${words.pitch}: ${of}`} missing="25 mm" optional /> }}
        />
      </p>
      <Family path={`${path}/family`} of={of} />
    </>
  )
}

/** Figures of a family, by the words of their sentence, with where they stand below it. */
const PLACES = {
  along: ['proportions/0', 'number'],
  across: ['proportions/1', 'number'],
  high: ['proportions/2', 'number'],
  reflectance: ['reflectance', 'share'],
  largest: ['largest_mm', 'length'],
  step: ['step_mm', 'length'],
} as const
type Name = keyof typeof PLACES
const NAMES = Object.keys(PLACES) as Name[]

/** Similar boxes, of which the smallest that is seen everywhere is looked for. It comes into the door whole. */
function Family({ path, of }: { readonly path: string; readonly of: string }) {
  const words = useFacts().zones
  const { door, snapshot } = useDoor()
  const asked = useAsked(path)
  const figure = (name: Name) => {
    const [, kind] = PLACES[name]
    return { label: `${words.family[name]}: ${of}`, kind: (kind === 'number' ? 'share' : kind) as Kind }
  }
  const forget = () => door.edit({ deed: 'removed', path }, (draft) => putAt(draft, path, undefined))
  if (valueAt(snapshot.file, path) !== undefined)
    return (
      <>
        <p>
          <Sentence
            text={words.familyWords}
            figures={Object.fromEntries(
              NAMES.map((name) => [name, <Figure key={name} path={`${path}/${PLACES[name][0]}`} {...figure(name)} />]),
            )}
          />
        </p>
        <div className="row">
          <button
            type="button"
            className="second"
            aria-label={`${words.forgetFamily}: ${of}`}
            disabled={snapshot.readOnly !== undefined}
            onClick={forget}
          >
            {words.forgetFamily}
          </button>
        </div>
      </>
    )
  if (asked.is)
    return (
      <Whole
        text={words.familyWords}
        place={path}
        called={`${words.addFamily}: ${of}`}
        figures={Object.fromEntries(NAMES.map((name) => [name, figure(name)]))}
        put={(draft, { along, across, high, reflectance, largest, step }) =>
          putAt(draft, path, { proportions: [along, across, high], reflectance, largest_mm: largest, step_mm: step })
        }
        onDone={asked.done}
      />
    )
  return (
    <div className="row">
      <button
        type="button"
        className="second"
        data-at={path}
        aria-label={`${words.addFamily}: ${of}`}
        disabled={snapshot.readOnly !== undefined}
        onClick={asked.ask}
      >
        {words.addFamily}
      </button>
    </div>
  )
}
