import { Cross } from '../entry/cross.tsx'
import { Figure } from '../entry/figure.tsx'
import { freeId } from '../entry/free-id.ts'
import { useListed } from '../entry/listed.ts'
import { Name } from '../entry/name.tsx'
import { valueAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import { Explained } from '../help/explained.tsx'
import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'
import { Group } from './group.tsx'

const PATH = 'survey/obstacles'

/** What stands around the opening, each thing in one sentence. */
export function Obstacles() {
  const words = useWords()
  const { snapshot } = useDoor()
  const { obstacles = [] } = snapshot.file.survey
  return (
    <Group title={words.measure.obstacles} holds={[PATH]} said={words.chapters.named(obstacles.map(({ name, id }) => name ?? id))}>
      {obstacles.length === 0 && (
        <p>
          <Explained text={words.measure.noObstacles} />
        </p>
      )}
      <Things path={PATH} />
    </Group>
  )
}

interface Thing {
  readonly id: string
  readonly name?: string
  readonly shape: 'box' | 'post'
}

/**
 * A list of things that stand around, of the door or of one of its states.
 *
 * @param props.of whose they are, where that is not the door
 */
export function Things({ path, of }: { readonly path: string; readonly of?: string }) {
  const words = useWords()
  const { snapshot } = useDoor()
  const listed = useListed(path)
  const found = valueAt(snapshot.file, path)
  const things: readonly Thing[] = Array.isArray(found) ? found : []
  const { obstacles = [], states = [] } = snapshot.file.survey
  const add = (shape: 'post' | 'box') => {
    const taken = [...obstacles, ...states.flatMap((state) => state.addObstacles ?? [])].map(({ id }) => id)
    const id = freeId(shape, taken)
    const name = shape === 'post' ? words.measure.newPost : words.measure.newBox
    const place = { x_mm: 300, y_mm: -600, from_mm: 0, to_mm: 1000 }
    const made = shape === 'post' ? { id, name, shape, ...place, radius_mm: 60 } : { id, name, shape, ...place, size_mm: [800, 400] }
    listed.add(made, name)
  }
  const label = (word: string) => (of === undefined ? undefined : `${word}: ${of}`)
  return (
    <>
      {things.map(({ id, name = id, shape }, i) => (
        <div className="thing" key={id}>
          <ThingWords path={`${path}/${i}`} shape={shape} />
          <Cross name={name} onAway={() => listed.remove(i, name)} />
        </div>
      ))}
      <div className="row">
        <button type="button" className="second" data-at={path} aria-label={label(words.measure.addPost)} onClick={() => add('post')}>
          {words.measure.addPost}
        </button>
        <button type="button" className="second" aria-label={label(words.measure.addBox)} onClick={() => add('box')}>
          {words.measure.addBox}
        </button>
      </div>
    </>
  )
}

function ThingWords({ path, shape }: { readonly path: string; readonly shape: 'box' | 'post' }) {
  const words = useWords()
  const figure = (name: string, label: string, signed = false) => (
    // what the tape was good to is said once, where the thing stands
    <Figure path={`${path}/${name}`} label={label} signed={signed} {...(name === 'x_mm' && { tolerancePath: `${path}/tolerance_mm` })} />
  )
  return (
    <p>
      <Sentence
        text={shape === 'box' ? words.measure.boxWords : words.measure.postWords}
        figures={{
          name: <Name path={`${path}/name`} label={words.measure.nameOf} />,
          x: figure('x_mm', words.measure.along, true),
          y: figure('y_mm', words.measure.out, true),
          from: figure('from_mm', words.measure.from, true),
          to: figure('to_mm', words.measure.to, true),
          radius: figure('radius_mm', words.measure.radius),
          along: figure('size_mm/0', words.measure.alongSize),
          across: figure('size_mm/1', words.measure.acrossSize),
          yaw: <Figure path={`${path}/yaw_deg`} label={words.place.yaw} kind="angle" missing="0°" signed optional />,
        }}
      />
    </p>
  )
}
