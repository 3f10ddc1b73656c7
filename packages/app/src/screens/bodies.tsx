import { passingBodies } from '@sillsight/document'
import type { Posture } from '@sillsight/engine'
import { called } from '@sillsight/report'
import { useAsked } from '../entry/begun.ts'
import { Cross } from '../entry/cross.tsx'
import { Figure } from '../entry/figure.tsx'
import { useListed } from '../entry/listed.ts'
import { Pick } from '../entry/pick.tsx'
import { putAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import { Whole } from '../entry/whole.tsx'
import type { Draft } from '../store/contract.ts'
import { useFacts } from '../words/facts.ts'
import { useReader } from '../words/reader.ts'
import { useDoor } from './at-door.ts'
import { KnownFrom } from './known-from.tsx'

const REFERENCE = { id: 'presence-reference-body', use: 'presence-reference-body' }

/** With which bodies the door is judged; how each lies after a fall, for lanes that say somebody may fall. */
export function Bodies() {
  const words = useFacts().bodies
  const reader = useReader()
  const { door, snapshot, answers } = useDoor()
  const listed = useListed('bodies')
  const bodies = snapshot.file.bodies
  const nameOf = (id: string, given?: string) =>
    called(answers.shown?.door.bodies.find((body) => body.id === id)?.name ?? given ?? id, reader)
  const isReadOnly = snapshot.readOnly !== undefined
  return (
    <>
      {bodies === undefined && (
        <>
          <p>{words.assumed}</p>
          <div className="row">
            <button
              type="button"
              className="second"
              data-at="bodies"
              disabled={isReadOnly}
              onClick={() => door.edit({ deed: 'added', path: 'bodies' }, (draft) => putAt(draft, 'bodies', [REFERENCE]))}
            >
              {words.take}
            </button>
          </div>
        </>
      )}
      {bodies?.map((body, i) => (
        <div className="thing" key={body.id}>
          <BodyWords index={i} name={nameOf(body.id, body.name)} />
          <Cross name={nameOf(body.id, body.name)} onAway={() => listed.remove(i, nameOf(body.id, body.name))} />
        </div>
      ))}
      {bodies !== undefined && (
        <Pick
          label={words.add}
          at="bodies"
          options={Object.fromEntries(
            passingBodies()
              .filter(({ id }) => !bodies.some((body) => body.id === id))
              .map(({ id, name }) => [id, called(name, reader)]),
          )}
          onPick={(id) => listed.add({ id, use: id }, nameOf(id))}
        />
      )}
    </>
  )
}

function BodyWords({ index, name }: { readonly index: number; readonly name: string }) {
  const words = useFacts().bodies
  const { snapshot, answers } = useDoor()
  const path = `bodies/${index}`
  const asked = useAsked(`${path}/postures`)
  const body = snapshot.file.bodies?.[index]
  if (!body) return null
  const own = body.postures ?? []
  const fallen = own.findIndex((posture) => posture.how === 'fallen')
  const lying = own[fallen]
  const known = answers.shown?.door.bodies.find(({ id }) => id === body.id)
  const figures = { along: { label: words.along }, across: { label: words.across }, high: { label: words.high } }
  /** The other postures stay as they are: what a library says of them is written beside it, from memory until somebody says better. */
  const lie = (draft: Draft, { along = 0, across = 0, high = 0 }: Readonly<Record<string, number>>) => {
    const standing: readonly object[] = body.postures ?? known?.postures.map(inFile) ?? []
    putAt(draft, `${path}/postures`, [
      ...structuredClone(standing),
      { shape: 'box', name: words.fallenName, how: 'fallen', size_mm: [along, across, high] },
    ])
    if (body.source === undefined) putAt(draft, `${path}/source`, { basis: 'from memory' })
  }
  const mayBeGiven = known?.postures.every((posture) => posture.shape === 'cylinder' || posture.parts === undefined) ?? false
  return (
    <div>
      <p>
        <Sentence
          text={words.words}
          figures={{
            name: <strong key="name">{name}</strong>,
            reflectance: (
              <Figure
                path={`${path}/reflectance`}
                label={`${words.reflectance}: ${name}`}
                kind="share"
                {...(body.use !== undefined && { missing: words.asLibrary })}
                put={(draft, value) => {
                  putAt(draft, `${path}/reflectance`, value)
                  if (body.use !== undefined && body.source === undefined) putAt(draft, `${path}/source`, { basis: 'from memory' })
                }}
              />
            ),
          }}
        />
      </p>
      {(body.use === undefined || body.source !== undefined) && <KnownFrom path={`${path}/source`} of={name} text={words.known} />}
      {lying?.shape === 'box' ? (
        <p>
          <Sentence
            text={words.fallen}
            figures={Object.fromEntries(
              (['along', 'across', 'high'] as const).map((each, i) => [
                each,
                <Figure key={each} path={`${path}/postures/${fallen}/size_mm/${i}`} label={`${words[each]}: ${name}`} />,
              ]),
            )}
          />
        </p>
      ) : asked.is ? (
        <Whole
          text={words.fallen}
          place={`${path}/postures`}
          called={`${words.addFallen}: ${name}`}
          figures={figures}
          put={lie}
          onDone={asked.done}
        />
      ) : (
        mayBeGiven && (
          <div className="row">
            <button
              type="button"
              className="second"
              data-at={`${path}/postures`}
              disabled={snapshot.readOnly !== undefined}
              aria-label={`${words.addFallen}: ${name}`}
              onClick={asked.ask}
            >
              {words.addFallen}
            </button>
          </div>
        )
      )}
    </div>
  )
}

/** A posture of one part as the door file writes it. */
function inFile(posture: Posture): object {
  const { name } = posture
  if (posture.shape === 'cylinder') return { shape: 'cylinder', name, radius_mm: posture.radius_mm, height_mm: posture.height_mm }
  const { a_mm, b_mm, c_mm, yawFrom_rad, yawTo_rad } = posture
  const [from, to] = [yawFrom_rad, yawTo_rad].map((rad) => Math.round((rad * 180e9) / Math.PI) / 1e9)
  const yaw = from === to ? (from === 0 ? {} : { yaw_deg: from }) : { yaw_deg: [from, to] }
  return { shape: 'box', name, size_mm: [a_mm, b_mm, c_mm], ...yaw }
}
