import { Choose } from '../entry/choose.tsx'
import { Figure } from '../entry/figure.tsx'
import { putAt, valueAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import { useFacts } from '../words/facts.ts'
import { useDoor } from './at-door.ts'
import { Lead } from './chapter.tsx'
import { CONTROL_FACTS } from './known.ts'
import { KnownFrom } from './known-from.tsx'

const PATH = 'survey/control'

/** What the control does: a sentence for each fact, and under it how that is known. What nobody stated stays said so. */
export function Control() {
  const words = useFacts().control
  return (
    <>
      <Lead text={words.lead} />
      {CONTROL_FACTS.map((fact) => (
        <Fact key={fact} fact={fact} />
      ))}
    </>
  )
}

function Fact({ fact }: { readonly fact: (typeof CONTROL_FACTS)[number] }) {
  const words = useFacts().control
  const { door, snapshot } = useDoor()
  const path = `${PATH}/${fact}`
  const { name, words: text, does } = words.facts[fact]
  const stated = valueAt(snapshot.file, path) !== undefined
  // a word about the control rests on memory until somebody says better: it makes no pass so long
  const state = (chosen: string) =>
    door.edit({ deed: 'set', path, name, typed: (does as Readonly<Record<string, string>>)[chosen] ?? chosen }, (draft) =>
      stated ? putAt(draft, `${path}/does`, chosen) : putAt(draft, path, { does: chosen, source: { basis: 'from memory' } }),
    )
  const forget = () => door.edit({ deed: 'removed', path, name }, (draft) => putAt(draft, path, undefined))
  return (
    <div className="fact">
      <p>
        <Sentence
          text={text}
          figures={{
            does: (
              <Choose
                path={`${path}/does`}
                at={path}
                label={name}
                options={does as Readonly<Record<string, string>>}
                unknown={words.unknown}
                onChoose={state}
                onUnknown={forget}
              />
            ),
          }}
        />
      </p>
      {stated && fact === 'powerReturn' && (
        <p>
          <Sentence
            text={words.closing}
            figures={{ after: <Figure path={`${path}/closesAfter_s`} label={words.closesAfter} kind="seconds" optional /> }}
          />
        </p>
      )}
      {stated && <KnownFrom path={`${path}/source`} of={name} bases={words.bases} />}
    </div>
  )
}
