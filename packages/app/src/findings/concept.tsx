import { EDITIONS } from '@sillsight/engine'
import { useBegun } from '../entry/begun.ts'
import { Choose } from '../entry/choose.tsx'
import { putAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import { useDoor } from '../screens/at-door.ts'
import { Group } from '../screens/group.tsx'
import { useWords } from '../words/words.ts'

const PARTS = ['people', 'drive', 'closingEdge'] as const

/**
 * Who passes, how the door is driven, what guards its edge: limits follow from it, so it comes before the findings until it is told, and after
 * them once it is. The door file wants all three or none: what is chosen is kept beside it until the last is.
 */
export function Concept() {
  const words = useWords()
  const { door, snapshot } = useDoor()
  const begun = useBegun('concept')
  const { concept, edition } = snapshot.file
  const known = [edition, ...EDITIONS.map(({ id }) => id)].flatMap((id) => (id === undefined ? [] : [[id, words.concept.editionOf(id)]]))
  const editions: Readonly<Record<string, string>> = Object.fromEntries(known)
  const choose = (name: (typeof PARTS)[number], label: string, options: Readonly<Record<string, string>>) => (
    <Choose
      path={`concept/${name}`}
      label={label}
      options={options}
      waiting={concept ? undefined : begun.text(name)}
      onChoose={(chosen) => {
        const deed = { deed: 'set', path: `concept/${name}`, typed: options[chosen] ?? chosen } as const
        const all = Object.fromEntries(PARTS.map((part) => [part, part === name ? chosen : begun.text(part)]))
        if (concept) door.edit(deed, (draft) => putAt(draft, `concept/${name}`, chosen))
        else if (PARTS.every((part) => all[part] !== undefined)) begun.whole(deed, (draft) => putAt(draft, 'concept', all))
        else begun.say(label, { [name]: { value: chosen } })
      }}
    />
  )
  return (
    <Group title={words.concept.title} holds={['concept', 'edition']} said={words.chapters.isKnown(concept !== undefined)}>
      <p>
        <Sentence
          text={words.concept.words}
          figures={{
            people: choose('people', words.concept.people, words.concept.peopleNames),
            drive: choose('drive', words.concept.drive, words.concept.driveNames),
            edge: choose('closingEdge', words.concept.edge, words.concept.edgeNames),
          }}
        />
      </p>
      {concept && (
        <p>
          <Sentence
            text={words.concept.more}
            figures={{
              separation: (
                <Choose
                  path="concept/separation"
                  label={words.concept.separation}
                  options={words.concept.editions}
                  unknown={words.concept.bothEditions}
                />
              ),
              lowEnergy: (
                <Choose
                  path="concept/lowEnergy"
                  label={words.concept.lowEnergy}
                  options={words.concept.lowEnergyNames}
                  unknown={words.concept.lowEnergyUnknown}
                />
              ),
              listing: (
                <Choose
                  path="concept/listing"
                  label={words.concept.listing}
                  options={words.concept.listingNames}
                  unknown={words.concept.listingUnknown}
                />
              ),
            }}
          />
        </p>
      )}
      {(concept || edition !== undefined) && (
        <p>
          <Sentence
            text={words.concept.rules}
            figures={{
              edition: <Choose path="edition" label={words.concept.edition} options={editions} unknown={words.concept.newest} />,
            }}
          />
        </p>
      )}
    </Group>
  )
}
