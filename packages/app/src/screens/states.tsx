import { Chosen } from '../entry/chosen.tsx'
import { Cross } from '../entry/cross.tsx'
import { Figure } from '../entry/figure.tsx'
import { freeId } from '../entry/free-id.ts'
import { Name } from '../entry/name.tsx'
import { pushAt, putAt, takeAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import { useAround } from '../words/around.ts'
import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'
import { Lead } from './chapter.tsx'
import { FloorPoints } from './floor.tsx'
import { Things } from './obstacles.tsx'

const PATH = 'survey/states'

/** The ways in which the doorway stands, such as a leveller up or down: each is judged, with a floor and things of its own where it has them. */
export function States() {
  const words = useAround().states
  const { door, snapshot } = useDoor()
  const states = snapshot.file.survey.states ?? []
  /** With the first one the doorway as it was surveyed gets a name of its own, so that it stays judged. */
  const add = () =>
    door.edit({ deed: 'added', path: PATH, name: words.made }, (draft) => {
      const ids = states.map(({ id }) => id)
      const first = states.length > 0 ? [] : [{ id: freeId('state', ids, words.usual), name: words.usual }]
      const made = { id: freeId('state', [...ids, ...first.map(({ id }) => id)]), name: words.made }
      for (const each of [...first, made]) pushAt(draft, PATH, each)
    })
  /** A sensor that learned its background in it learned it in none that is left. */
  const remove = (index: number, name: string) =>
    door.edit({ deed: 'removed', path: PATH, name }, (draft) => {
      takeAt(draft, PATH, index)
      for (const [i, sensor] of (draft.sensors ?? []).entries())
        if (sensor.learnedIn === states[index]?.id) putAt(draft, `sensors/${i}/learnedIn`, undefined)
    })
  return (
    <>
      <Lead text={words.lead} />
      {states.map(({ id, name = id }, i) => (
        <State key={id} index={i} onRemove={() => remove(i, name)} />
      ))}
      <div className="row">
        <button type="button" className="second" data-at={PATH} disabled={snapshot.readOnly !== undefined} onClick={add}>
          {words.add}
        </button>
      </div>
    </>
  )
}

function State({ index, onRemove }: { readonly index: number; readonly onRemove: () => void }) {
  const words = useAround().states
  const { measure } = useWords()
  const { snapshot, answers } = useDoor()
  const path = `${PATH}/${index}`
  const state = snapshot.file.survey.states?.[index]
  if (!state) return null
  const name = state.name ?? state.id
  const shown = answers.shown?.door.states.find(({ id }) => id === state.id)?.obstacles ?? []
  const implied = shown.filter((each) => each.implied).map((each) => [each.id, each.name] as const)
  const gone = (state.removeObstacles ?? []).map((id) => [id, id] as const)
  const listed = (snapshot.file.survey.obstacles ?? []).map((each) => [each.id, each.name ?? each.id] as const)
  return (
    <div className="thing state">
      <div>
        <h3>
          <Name path={`${path}/name`} label={measure.nameOf} missing={state.id} />
        </h3>
        <StateFloor path={`${path}/floor`} of={name} />
        <p>{gone.length === 0 ? words.allThere : words.gone}</p>
        <Chosen
          path={`${path}/removeObstacles`}
          chosen={state.removeObstacles ?? []}
          options={Object.fromEntries([...gone, ...implied, ...listed])}
          add={words.addGone}
          of={name}
          remove={(thing) => words.removeGone(thing, name)}
        />
        {(state.addObstacles ?? []).length > 0 && <p>{words.onlyThere}</p>}
        <Things path={`${path}/addObstacles`} of={name} />
      </div>
      <Cross name={name} onAway={onRemove} />
    </div>
  )
}

/** The floor of one state: as surveyed, or its own. */
function StateFloor({ path, of }: { readonly path: string; readonly of: string }) {
  const words = useAround().states
  const { measure } = useWords()
  const { door, snapshot } = useDoor()
  const { floor, states = [] } = snapshot.file.survey
  const own = states.find((_, i) => path === `${PATH}/${i}/floor`)?.floor
  const begin = () =>
    door.edit({ deed: 'added', path }, (draft) => putAt(draft, path, structuredClone(floor ?? { profile_mm: [[0, 0]], slopeX_percent: 0 })))
  if (own === undefined)
    return (
      <>
        <p>{words.floorAsSurveyed}</p>
        <div className="row">
          <button
            type="button"
            className="second"
            data-at={path}
            aria-label={`${words.ownFloor}: ${of}`}
            disabled={snapshot.readOnly !== undefined}
            onClick={begin}
          >
            {words.ownFloor}
          </button>
        </div>
      </>
    )
  return (
    <>
      <p>
        <Sentence
          text={words.floor}
          figures={{
            slope: <Figure path={`${path}/slopeX_percent`} label={measure.slope} kind="percent" signed optional />,
            tolerance: <Figure path={`${path}/tolerance_mm`} label={measure.floorTolerance} optional />,
          }}
        />
      </p>
      <FloorPoints path={path} points={own.profile_mm} of={of} />
    </>
  )
}
