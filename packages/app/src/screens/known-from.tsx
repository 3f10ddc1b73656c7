import { Choose } from '../entry/choose.tsx'
import { Name } from '../entry/name.tsx'
import { valueAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import { useFacts } from '../words/facts.ts'
import { useDoor } from './at-door.ts'

interface Props {
  /** Place of the source in the door file. */
  readonly path: string
  /** What is known from it, for who cannot see where it stands. */
  readonly of?: string
  /** Another sentence than that the figures before it are known from there. */
  readonly text?: string
  readonly bases?: Readonly<Record<string, string>>
  readonly unknown?: string
  readonly onUnknown?: () => void
}

/** How something is known: of a sheet or a standard its document, edition and page, of anything else who says so. */
export function KnownFrom({ path, of, text, bases, unknown, onUnknown }: Props) {
  const { source, sensing } = useFacts()
  const { snapshot } = useDoor()
  const basis = valueAt(snapshot.file, `${path}/basis`)
  const label = (word: string) => (of === undefined ? word : `${word}: ${of}`)
  const name = (place: 'document' | 'edition' | 'clause' | 'note') => (
    <Name key={place} path={`${path}/${place}`} label={label(source[place])} missing={source[place]} />
  )
  const { invented, ...said } = bases ?? sensing.bases
  return (
    <p className="known-from">
      <Sentence
        text={text ?? source.known}
        figures={{
          basis: (
            <Choose
              path={`${path}/basis`}
              at={path}
              label={label(source.basis)}
              options={basis === 'invented' && invented !== undefined ? { ...said, invented } : said}
              {...(unknown !== undefined && { unknown })}
              {...(onUnknown && { onUnknown })}
            />
          ),
          where:
            basis === 'datasheet' || basis === 'published' ? (
              <span key="where">
                {name('document')}, {name('edition')}, {name('clause')}
              </span>
            ) : (
              name('note')
            ),
        }}
      />
    </p>
  )
}
