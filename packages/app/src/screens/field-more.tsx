import type { FileSensor } from '@sillsight/document'
import { useAsked, useBegunIn } from '../entry/begun.ts'
import { Choose } from '../entry/choose.tsx'
import { Chosen } from '../entry/chosen.tsx'
import { Cross } from '../entry/cross.tsx'
import { Figure } from '../entry/figure.tsx'
import { useListed } from '../entry/listed.ts'
import { pushAt, putAt, valueAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import { Whole } from '../entry/whole.tsx'
import { useFacts } from '../words/facts.ts'
import { useDoor } from './at-door.ts'
import { KnownFrom } from './known-from.tsx'

interface Props {
  readonly path: string
  readonly name: string
  readonly isRanging: boolean
  /** Ids of the planes of its sensor. */
  readonly planes: readonly string[]
  /** The outputs of its sensor, where the door file lists them. */
  readonly outputs: NonNullable<FileSensor['outputs']>
}

/** What a field's sentence leaves out: its limits, planes and output, how people come to it, what it leaves out for the leaf's sake. */
export function FieldMore({ path, name, isRanging, planes, outputs }: Props) {
  const words = useFacts().sensing
  const { door, snapshot } = useDoor()
  const named = (ids: readonly string[]) => Object.fromEntries(ids.map((id) => [id, id]))
  const used = valueAt(snapshot.file, `${path}/planes`)
  /** A field that says a function of its own says that of its output. */
  const switches = (output: string) =>
    door.edit({ deed: 'set', path: `${path}/output`, typed: output }, (draft) => {
      putAt(draft, `${path}/output`, output)
      const acts = outputs.find((each) => each.name === output)?.function
      if (acts !== undefined && valueAt(draft, `${path}/function`) !== undefined) putAt(draft, `${path}/function`, acts)
    })
  /** Open ends are said with a word in the file; across the leaf they are open where nothing is said. */
  const isOpen = (place: string) => {
    const found = valueAt(snapshot.file, `${path}/${place}_mm`)
    return found === 'open' || (found === undefined && place.startsWith('y'))
  }
  const end = (place: 'xMin' | 'xMax' | 'yMin' | 'yMax' | 'top', signed: boolean) => (
    <Figure
      path={`${path}/${place}_mm`}
      label={`${words.ends[place]}: ${name}`}
      signed={signed}
      optional
      {...(isOpen(place) && { missing: words.openEnd })}
      put={(draft, value) => putAt(draft, `${path}/${place}_mm`, value ?? 'open')}
    />
  )
  return (
    <>
      {isRanging && (
        <p>
          <Sentence
            text={words.limits}
            figures={{
              name,
              xMin: end('xMin', true),
              xMax: end('xMax', true),
              yMin: end('yMin', true),
              yMax: end('yMax', true),
              top: end('top', false),
            }}
          />
        </p>
      )}
      {planes.length > 1 && (
        <>
          <p>{Array.isArray(used) ? words.planesOf(name) : words.allPlanes(name)}</p>
          <Chosen
            path={`${path}/planes`}
            chosen={Array.isArray(used) ? used : []}
            options={named(planes)}
            add={words.addPlane}
            of={name}
            remove={(plane) => words.removePlane(plane, name)}
          />
        </>
      )}
      {outputs.length > 1 && (
        <p>
          <Sentence
            text={words.switches}
            figures={{
              output: (
                <Choose
                  path={`${path}/output`}
                  label={`${words.outputOf}: ${name}`}
                  options={named(outputs.map((each) => each.name))}
                  onChoose={switches}
                />
              ),
            }}
          />
        </p>
      )}
      <Approach path={`${path}/approach`} of={name} />
      <ForTheLeaf path={path} of={name} isRanging={isRanging} />
    </>
  )
}

/** What the separation-distance standard asks about a field; what this program does not have is read off the page by whoever holds it. */
function Approach({ path, of }: { readonly path: string; readonly of: string }) {
  const words = useFacts().sensing
  const { door, snapshot } = useDoor()
  const way = valueAt(snapshot.file, `${path}/way`)
  const hasSource = valueAt(snapshot.file, `${path}/source`) !== undefined
  const page = (name: 'addend_mm' | 'supplement_mm', label: string) => (
    <Figure
      path={`${path}/${name}`}
      label={`${label}: ${of}`}
      missing={words.notRead}
      optional
      put={(draft, value) => {
        putAt(draft, `${path}/${name}`, value)
        if (!hasSource && value !== undefined) putAt(draft, `${path}/source`, { basis: 'from memory' })
      }}
    />
  )
  return (
    <>
      <p>
        <Sentence
          text={way === undefined ? words.approachFirst : words.approach}
          figures={{
            way: (
              <Choose
                path={`${path}/way`}
                at={path}
                label={`${words.way}: ${of}`}
                options={words.ways}
                unknown={words.wayUnknown}
                onUnknown={() => door.edit({ deed: 'removed', path }, (draft) => putAt(draft, path, undefined))}
              />
            ),
            capability: <Figure path={`${path}/capability_mm`} label={`${words.capability}: ${of}`} optional />,
          }}
        />
      </p>
      {way === 'parallel' && (
        <p>
          <Sentence
            text={words.height}
            figures={{ height: <Figure path={`${path}/height_mm`} label={`${words.heightLabel}: ${of}`} optional /> }}
          />
        </p>
      )}
      {way !== undefined && (
        <p>
          <Sentence
            text={words.addend}
            figures={{
              addend: page('addend_mm', words.addendLabel),
              supplement: page('supplement_mm', words.supplementLabel),
            }}
          />
        </p>
      )}
      {hasSource && (
        <KnownFrom
          path={`${path}/source`}
          of={`${words.pageBasis}, ${of}`}
          unknown={words.notRead}
          onUnknown={() => door.edit({ deed: 'removed', path: `${path}/source` }, (draft) => putAt(draft, `${path}/source`, undefined))}
        />
      )}
    </>
  )
}

const BLANKED = { from_mm: 'blankFrom', to_mm: 'blankTo' } as const
const BESIDE = { beside_mm: 'beside', before_mm: 'before' } as const

/** What a field leaves out for the leaf's sake, and whether the leaf hides somebody from it. */
function ForTheLeaf({ path, of, isRanging }: { readonly path: string; readonly of: string; readonly isRanging: boolean }) {
  const words = useFacts().leaving
  const { door, snapshot } = useDoor()
  const listed = useListed(`${path}/blanking`)
  const begun = useBegunIn(`${path}/blanking`)
  const asked = useAsked(`${path}/leafBlanking`)
  const found = valueAt(snapshot.file, `${path}/blanking`)
  const windows: readonly unknown[] = Array.isArray(found) ? found : []
  const follows = valueAt(snapshot.file, `${path}/leafBlanking`) !== undefined
  const ofField = (word: string) => `${word}: ${of}`
  const figures = (at: string, names: Readonly<Record<string, keyof typeof words.figures>>) =>
    Object.fromEntries(
      Object.entries(names).map(([name, word]) => [
        name,
        <Figure key={name} path={`${at}/${name}`} label={ofField(words.figures[word])} />,
      ]),
    )
  const lacking = (names: Readonly<Record<string, keyof typeof words.figures>>) =>
    Object.fromEntries(Object.entries(names).map(([name, word]) => [name, { label: ofField(words.figures[word]) }]))
  const forget = () =>
    door.edit({ deed: 'removed', path: `${path}/leafBlanking` }, (draft) => putAt(draft, `${path}/leafBlanking`, undefined))
  const cross = (label: string, take: () => void) => <Cross name={ofField(label)} onAway={take} />
  return (
    <>
      {windows.map((_, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: windows have no other name
        <div className="thing" key={i}>
          <p>
            <Sentence text={words.blanked} figures={figures(`${path}/blanking/${i}`, BLANKED)} />
          </p>
          {cross(words.addBlanked, () => listed.remove(i, words.addBlanked))}
        </div>
      ))}
      {begun.places.map((place) => (
        <Whole
          key={place}
          place={place}
          called={ofField(words.addBlanked)}
          text={words.blanked}
          figures={lacking(BLANKED)}
          put={(draft, values) => pushAt(draft, `${path}/blanking`, values)}
          onDone={begun.done}
        />
      ))}
      {follows && (
        <div className="thing">
          <p>
            <Sentence text={words.follows} figures={figures(`${path}/leafBlanking`, BESIDE)} />
          </p>
          {cross(words.addFollows, forget)}
        </div>
      )}
      {asked.is && !follows && (
        <Whole
          place={`${path}/leafBlanking`}
          called={ofField(words.addFollows)}
          text={words.follows}
          figures={lacking(BESIDE)}
          put={(draft, values) => putAt(draft, `${path}/leafBlanking`, values)}
          onDone={asked.done}
        />
      )}
      <p>
        <Sentence
          text={words.hides}
          figures={{
            hides: (
              <Choose
                path={`${path}/leafHides`}
                label={ofField(words.whetherHides)}
                options={words.hidesNames}
                unknown={windows.length > 0 || follows ? words.hidesWithWindows : words.hidesUnknown}
              />
            ),
          }}
        />
      </p>
      <div className="row">
        <button type="button" className="second" data-at={`${path}/blanking`} aria-label={ofField(words.addBlanked)} onClick={begun.ask}>
          {words.addBlanked}
        </button>
        {isRanging && !follows && (
          <button
            type="button"
            className="second"
            data-at={`${path}/leafBlanking`}
            aria-label={ofField(words.addFollows)}
            onClick={asked.ask}
          >
            {words.addFollows}
          </button>
        )}
      </div>
    </>
  )
}
