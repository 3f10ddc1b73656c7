import { useBegun } from '../entry/begun.ts'
import { Figure } from '../entry/figure.tsx'
import { putAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import { Whole } from '../entry/whole.tsx'
import { useAround } from '../words/around.ts'
import { useDoor } from './at-door.ts'

const PATH = 'survey/leaf/parked'
/** Figures by the words of their sentence, with where they stand below the leaf. */
const PLACES = { along: 'size_mm/0', across: 'size_mm/1', from: 'from_mm', to: 'to_mm', x: 'x_mm', y: 'y_mm' } as const
type Name = keyof typeof PLACES
const NAMES = Object.keys(PLACES) as Name[]
const SIGNED: readonly Name[] = ['x', 'y', 'from', 'to']

/** Where the open leaf stands: as a thing that hides bodies, and as what a tail runs to. */
export function Parked() {
  const words = useAround().parked
  const { snapshot } = useDoor()
  const begun = useBegun(PATH)
  const found = snapshot.file.survey.leaf?.parked
  const sayNone = () => begun.whole({ deed: 'set', path: PATH, name: words.name }, (draft) => putAt(draft, PATH, 'none'))
  const label = (name: Name) => ({ label: words.figures[name], signed: SIGNED.includes(name) })
  if (typeof found === 'object')
    return (
      <p>
        <Sentence
          text={words.turned}
          figures={{
            ...Object.fromEntries(NAMES.map((name) => [name, <Figure key={name} path={`${PATH}/${PLACES[name]}`} {...label(name)} />])),
            yaw: <Figure path={`${PATH}/yaw_deg`} label={words.yaw} kind="angle" missing="0°" signed optional />,
          }}
        />
      </p>
    )
  return (
    <>
      <p>{found === 'none' ? words.none : words.unknown}</p>
      <Whole
        text={words.words}
        place={PATH}
        called={words.name}
        figures={Object.fromEntries(NAMES.map((name) => [name, label(name)]))}
        put={(draft, { along, across, from, to, x, y }) =>
          putAt(draft, PATH, { x_mm: x, y_mm: y, size_mm: [along, across], from_mm: from, to_mm: to })
        }
      />
      {found !== 'none' && (
        <div className="row">
          <button type="button" className="second" data-at={PATH} onClick={sayNone}>
            {words.notThere}
          </button>
        </div>
      )}
    </>
  )
}
