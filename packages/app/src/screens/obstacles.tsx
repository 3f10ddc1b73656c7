import { Figure } from '../entry/figure.tsx'
import { freeId } from '../entry/free-id.ts'
import { useListed } from '../entry/listed.ts'
import { Name } from '../entry/name.tsx'
import { Sentence } from '../entry/sentence.tsx'
import { Explained } from '../help/explained.tsx'
import { Icon } from '../look/icons.tsx'
import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'
import { Group } from './group.tsx'

/** What stands around the opening, each thing in one sentence. */
export function Obstacles() {
  const words = useWords()
  const { snapshot } = useDoor()
  const listed = useListed('survey/obstacles')
  const obstacles = snapshot.file.survey.obstacles ?? []
  const add = (shape: 'post' | 'box') => {
    const id = freeId(
      shape,
      obstacles.map((obstacle) => obstacle.id),
    )
    const name = shape === 'post' ? words.measure.newPost : words.measure.newBox
    const place = { x_mm: 300, y_mm: -600, from_mm: 0, to_mm: 1000 }
    const made = shape === 'post' ? { id, name, shape, ...place, radius_mm: 60 } : { id, name, shape, ...place, size_mm: [800, 400] }
    listed.add(made, name)
  }
  return (
    <Group title={words.measure.obstacles} path="survey/obstacles">
      {obstacles.length === 0 && (
        <p>
          <Explained text={words.measure.noObstacles} />
        </p>
      )}
      {obstacles.map((obstacle, i) => {
        const path = `survey/obstacles/${i}`
        const figure = (name: string, label: string, signed = false) => (
          // what the tape was good to is said once, where the thing stands
          <Figure
            path={`${path}/${name}`}
            label={label}
            signed={signed}
            {...(name === 'x_mm' && { tolerancePath: `${path}/tolerance_mm` })}
          />
        )
        return (
          <div className="thing" key={obstacle.id}>
            <p>
              <Sentence
                text={obstacle.shape === 'box' ? words.measure.boxWords : words.measure.postWords}
                figures={{
                  name: <Name path={`${path}/name`} label={words.measure.nameOf} />,
                  x: figure('x_mm', words.measure.along, true),
                  y: figure('y_mm', words.measure.out, true),
                  from: figure('from_mm', words.measure.from, true),
                  to: figure('to_mm', words.measure.to, true),
                  radius: figure('radius_mm', words.measure.radius),
                  along: figure('size_mm/0', words.measure.alongSize),
                  across: figure('size_mm/1', words.measure.acrossSize),
                }}
              />
            </p>
            <button
              type="button"
              className="quiet-button"
              aria-label={words.entry.remove(obstacle.name ?? obstacle.id)}
              onClick={() => listed.remove(i, obstacle.name ?? obstacle.id)}
            >
              <Icon name="cross" />
            </button>
          </div>
        )
      })}
      <div className="row">
        <button type="button" className="second" data-at="survey/obstacles" onClick={() => add('post')}>
          {words.measure.addPost}
        </button>
        <button type="button" className="second" onClick={() => add('box')}>
          {words.measure.addBox}
        </button>
      </div>
    </Group>
  )
}
