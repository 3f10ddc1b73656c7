import { Choose } from '../entry/choose.tsx'
import { Figure } from '../entry/figure.tsx'
import { putAt, valueAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import { useFacts } from '../words/facts.ts'
import { useDoor } from './at-door.ts'
import { KnownFrom } from './known-from.tsx'

const asThemselves = (signs: readonly string[]) => Object.fromEntries(signs.map((sign) => [sign, sign]))
/** Signs that are the same in every language. */
const SIGNS = { performanceLevel: asThemselves(['a', 'b', 'c', 'd', 'e']), category: asThemselves(['B', '1', '2', '3', '4']) }

/** What its maker declares of a sensor as a part of a safety function. What nobody said stays said so. */
export function Declares({ path: sensor }: { readonly path: string }) {
  const words = useFacts().declares
  const { door, snapshot } = useDoor()
  const path = `${sensor}/declares`
  const isStated = valueAt(snapshot.file, path) !== undefined
  // what is entered rests on memory until somebody says where it stands: it makes no pass so long
  const put = (draft: Parameters<typeof putAt>[0], name: string, value: string | number | undefined) => {
    if (!isStated && value !== undefined) putAt(draft, `${path}/source`, { basis: 'from memory' })
    putAt(draft, `${path}/${name}`, value)
  }
  const choose = (name: 'device' | 'performanceLevel' | 'category' | 'testedBy' | 'listedFor', at?: string) => {
    const options: Readonly<Record<string, string>> = name === 'performanceLevel' || name === 'category' ? SIGNS[name] : words[name].options
    return (
      <Choose
        path={`${path}/${name}`}
        {...(at !== undefined && { at })}
        label={words[name].label}
        options={options}
        unknown={words.unknown}
        onChoose={(chosen) =>
          door.edit({ deed: 'set', path: `${path}/${name}`, typed: options[chosen] ?? chosen }, (draft) => put(draft, name, chosen))
        }
      />
    )
  }
  const figure = (name: keyof typeof words.figures, kind: 'count' | 'percent' = 'count') => (
    <Figure path={`${path}/${name}`} label={words.figures[name]} kind={kind} optional put={(draft, value) => put(draft, name, value)} />
  )
  return (
    <>
      <p>
        <Sentence
          text={words.kind}
          figures={{
            device: choose('device', isStated ? undefined : path),
            level: choose('performanceLevel'),
            category: choose('category'),
          }}
        />
      </p>
      <p>
        <Sentence text={words.test} figures={{ testedBy: choose('testedBy'), listedFor: choose('listedFor') }} />
      </p>
      <p>
        <Sentence
          text={words.numbers}
          figures={{
            mttfd: figure('mttfd_y'),
            b10d: figure('b10d'),
            operations: figure('operations_per_y'),
            coverage: figure('diagnosticCoverage_percent', 'percent'),
            common: figure('commonCause'),
          }}
        />
      </p>
      {isStated && <KnownFrom path={`${path}/source`} text={words.known} bases={words.bases} />}
    </>
  )
}
