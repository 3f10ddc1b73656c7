import { Choose } from '../entry/choose.tsx'
import { putAt, valueAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import { useDoor } from '../screens/at-door.ts'
import { Group } from '../screens/group.tsx'
import { useWords } from '../words/words.ts'

/** Comes first, because limits follow from it: who passes, how the door is driven, what guards its edge. */
export function Concept() {
  const words = useWords()
  const { door, snapshot } = useDoor()
  const choose = (name: string, label: string, options: Readonly<Record<string, string>>) => (
    <Choose
      path={`concept/${name}`}
      label={label}
      options={options}
      onChoose={(chosen) =>
        door.edit({ deed: 'set', path: `concept/${name}`, typed: options[chosen] ?? chosen }, (draft) => {
          // The file wants all three or none: the ones nobody chose yet take the most demanding.
          if (valueAt(draft, 'concept') === undefined)
            putAt(draft, 'concept', { people: 'public', drive: 'automatic', closingEdge: 'none' })
          putAt(draft, `concept/${name}`, chosen)
        })
      }
    />
  )
  const asked = snapshot.file.concept
  return (
    <Group title={words.concept.title} path="concept">
      <p data-missing={asked === undefined || undefined}>
        <Sentence
          text={words.concept.words}
          figures={{
            people: choose('people', words.concept.people, words.concept.peopleNames),
            drive: choose('drive', words.concept.drive, words.concept.driveNames),
            edge: choose('closingEdge', words.concept.edge, words.concept.edgeNames),
          }}
        />
      </p>
    </Group>
  )
}
