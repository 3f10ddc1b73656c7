import { useAsked, useBegun } from '../entry/begun.ts'
import { Cross } from '../entry/cross.tsx'
import { Figure } from '../entry/figure.tsx'
import { putAt, valueAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import { Whole } from '../entry/whole.tsx'
import { useAround } from '../words/around.ts'
import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'
import { Group } from './group.tsx'

/** Figures of each part of the building, by their names in the door file. */
const PARTS = {
  walls: ['beyondZero_mm', 'beyondWidth_mm', 'yMin_mm', 'yMax_mm', 'top_mm'],
  lintel: ['yMin_mm', 'yMax_mm', 'top_mm'],
  jambs: ['width_mm', 'yMin_mm', 'yMax_mm'],
  guides: ['width_mm', 'yMin_mm', 'yMax_mm'],
  hood: ['yMin_mm', 'yMax_mm', 'from_mm', 'to_mm'],
} as const
type Part = keyof typeof PARTS
/** What may be said of a part besides: absent it follows from the opening. */
const BESIDES = {
  walls: undefined,
  lintel: 'underside_mm',
  jambs: 'top_mm',
  guides: 'top_mm',
  hood: 'beyond_mm',
} as const satisfies Record<Part, string | undefined>

/** The building around the opening: beams end on it, and bodies hide behind it. Of each part it may be said that it is not there. */
export function Building() {
  const words = useAround().building
  const { chapters } = useWords()
  const { survey } = useDoor().snapshot.file
  const parts = Object.keys(PARTS) as Part[]
  const known = parts.filter((part) => survey[part] !== undefined).length
  return (
    <Group title={words.title} holds={parts.map((part) => `survey/${part}`)} said={chapters.known(known, parts.length)}>
      {parts.map((part) => (
        <PartWords key={part} part={part} />
      ))}
    </Group>
  )
}

function PartWords({ part }: { readonly part: Part }) {
  const { building } = useAround()
  const { snapshot } = useDoor()
  const said = building.parts[part]
  const path = `survey/${part}`
  const found = valueAt(snapshot.file, path)
  const asked = useAsked(path)
  const begun = useBegun(path)
  const set = (value: 'none' | undefined) => {
    asked.done()
    begun.whole({ deed: value === undefined ? 'removed' : 'set', path, name: said.name }, (draft) => putAt(draft, path, value))
  }
  const beside = BESIDES[part]
  if (typeof found === 'object')
    return (
      <div className="thing">
        <p>
          <Sentence
            text={said.words}
            figures={Object.fromEntries(
              PARTS[part].map((name) => [
                name,
                <Figure
                  key={name}
                  path={`${path}/${name}`}
                  label={`${said.name}: ${building.figures[name]}`}
                  signed={/^y|^top|^from|^to/.test(name)}
                />,
              ]),
            )}
          />{' '}
          {beside !== undefined && (
            <Sentence
              text={building.besides[beside].words}
              figures={{
                besides: (
                  <Figure
                    path={`${path}/${beside}`}
                    label={`${said.name}: ${building.besides[beside].name}`}
                    missing={beside === 'beyond_mm' ? '0 mm' : building.clearHeight}
                    signed={beside !== 'beyond_mm'}
                    optional
                  />
                ),
              }}
            />
          )}
        </p>
        <Cross name={said.name} onAway={() => set(undefined)} />
      </div>
    )
  return (
    <>
      <p>{found === 'none' ? said.none : said.unknown}</p>
      {asked.is && (
        <Whole
          text={said.words}
          place={path}
          called={said.name}
          figures={Object.fromEntries(
            PARTS[part].map((name) => [name, { label: `${said.name}: ${building.figures[name]}`, signed: /^y|^top|^from|^to/.test(name) }]),
          )}
          put={(draft, values) => putAt(draft, path, values)}
          onDone={asked.done}
        />
      )}
      <div className="row">
        {!asked.is && (
          <button type="button" className="second" data-at={path} onClick={asked.ask}>
            {said.there}
          </button>
        )}
        {found !== 'none' && (
          <button type="button" className="second" onClick={() => set('none')}>
            {said.notThere}
          </button>
        )}
      </div>
    </>
  )
}
