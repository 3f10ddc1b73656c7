import { lazy } from 'react'
import { useBegunIn } from '../entry/begun.ts'
import { Choose } from '../entry/choose.tsx'
import { Cross } from '../entry/cross.tsx'
import { Figure } from '../entry/figure.tsx'
import { freeId } from '../entry/free-id.ts'
import { useListed } from '../entry/listed.ts'
import { Name } from '../entry/name.tsx'
import { pushAt, putAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import { Whole } from '../entry/whole.tsx'
import { Explained } from '../help/explained.tsx'
import { useFacts } from '../words/facts.ts'
import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'
import { Chapter } from './chapter.tsx'
import { Group } from './group.tsx'

const ZoneMore = lazy(() => import('./zone-more.tsx').then(({ ZoneMore }) => ({ default: ZoneMore })))
const Bodies = lazy(() => import('./bodies.tsx').then(({ Bodies }) => ({ default: Bodies })))

/** Where bodies must be seen, and with which bodies that is judged. */
export function Zones() {
  return (
    <>
      <ZonesGroup />
      <BodiesChapter />
    </>
  )
}

function BodiesChapter() {
  const { chapters } = useWords()
  const { bodies } = useDoor().snapshot.file
  return (
    <Chapter title={chapters.bodies} said={chapters.listed(bodies?.length ?? 0)} holds={['bodies']}>
      <Bodies />
    </Chapter>
  )
}

export function ZonesGroup() {
  const words = useWords()
  const { door, snapshot, answers } = useDoor()
  const zones = snapshot.file.zones
  const said = useFacts().zones
  const listed = useListed('zones')
  const begun = useBegunIn('zones')
  const id = freeId(
    'zone',
    (zones ?? []).map((zone) => zone.id),
  )
  const assumed = answers.shown?.door.zones ?? []
  const take = () =>
    door.edit({ deed: 'added', path: 'zones' }, (draft) =>
      putAt(
        draft,
        'zones',
        assumed.map(({ id, name, purpose, xMin_mm, xMax_mm, yMin_mm, yMax_mm }) => ({
          id,
          name,
          purpose,
          xMin_mm,
          xMax_mm,
          yMin_mm,
          yMax_mm,
        })),
      ),
    )
  return (
    <Group title={words.place.zones} holds={['zones']} said={words.chapters.named(zones?.map(({ name, id }) => name ?? id) ?? [])}>
      {!zones?.length && (
        <>
          <p>
            <Explained text={words.place.zonesAssumed} />
          </p>
          <button type="button" className="second" data-at="zones" onClick={take} disabled={assumed.length === 0}>
            {words.place.takeZones}
          </button>
        </>
      )}
      {zones?.map((zone, i) => {
        const path = `zones/${i}`
        const edge = (name: keyof typeof words.place.edges) => <Figure path={`${path}/${name}_mm`} label={words.place.edges[name]} signed />
        return (
          <div className="thing" key={zone.id}>
            <div>
              <p>
                <Sentence
                  text={words.place.zoneWords}
                  figures={{
                    name: <Name path={`${path}/name`} label={words.measure.nameOf} missing={zone.id} />,
                    purpose: <Choose path={`${path}/purpose`} label={words.place.purpose} options={words.place.purposes} />,
                    xMin: edge('xMin'),
                    xMax: edge('xMax'),
                    yMin: edge('yMin'),
                    yMax: edge('yMax'),
                  }}
                />
              </p>
              <p>
                <Sentence
                  text={words.place.stay}
                  figures={{
                    stay: <Figure path={`${path}/longestStay_s`} label={words.place.longestStay} kind="seconds" optional />,
                    pocket: <Figure path={`${path}/allowedPocket_mm`} label={words.place.pocket} missing="0 mm" optional />,
                  }}
                />
              </p>
              {zone.family && (
                <p>
                  <Sentence
                    text={words.place.family}
                    figures={{ size: <Figure path={`${path}/family/required_mm`} label={words.place.smallest} optional /> }}
                  />
                </p>
              )}
              <Chapter
                title={words.chapters.zone}
                said={words.chapters.zoneSaid}
                holds={['bodies', 'function', 'pitch_mm', 'family', 'allowedPocketSource'].map((name) => `${path}/${name}`)}
                isInner
              >
                <ZoneMore index={i} />
              </Chapter>
            </div>
            <Cross name={zone.name ?? zone.id} onAway={() => listed.remove(i, zone.name ?? zone.id)} />
          </div>
        )
      })}
      {zones !== undefined &&
        begun.places.map((place) => (
          <Whole
            key={place}
            text={said.reaches}
            place={place}
            called={said.made}
            figures={Object.fromEntries(
              (['xMin', 'xMax', 'yMin', 'yMax'] as const).map((name) => [`${name}_mm`, { label: words.place.edges[name], signed: true }]),
            )}
            put={(draft, edges) => pushAt(draft, 'zones', { id, name: said.made, purpose: 'presence-at-leaf', ...edges })}
            onDone={begun.done}
          />
        ))}
      {zones !== undefined && begun.places.length === 0 && (
        <div className="row">
          <button type="button" className="second" data-at="zones" disabled={snapshot.readOnly !== undefined} onClick={begun.ask}>
            {said.add}
          </button>
        </div>
      )}
    </Group>
  )
}
