import { useAsked } from '../entry/begun.ts'
import { Choose } from '../entry/choose.tsx'
import { hardly, USUAL_IN_TIME } from '../entry/doubts.ts'
import { Figure } from '../entry/figure.tsx'
import { type Kind, shownFigure } from '../entry/kinds.ts'
import { putAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import { Whole } from '../entry/whole.tsx'
import { useAround } from '../words/around.ts'
import { useReader } from '../words/reader.ts'
import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'
import { ChosenBodies } from './chosen-bodies.tsx'
import { KnownFrom } from './known-from.tsx'

const BRAKING = { reaction_s: 'seconds', decel_m_per_s2: 'acceleration', gradient_percent: 'percent' } as const satisfies Record<
  string,
  Kind
>
type Braking = keyof typeof BRAKING

/** What a lane can say besides where it runs: with which bodies it is judged, whether somebody falls, how its vehicles stop. */
export function LaneMore({ index }: { readonly index: number }) {
  const words = useAround().calls
  const { snapshot } = useDoor()
  const path = `survey/lanes/${index}`
  const lane = snapshot.file.survey.lanes?.[index]
  if (!lane) return null
  return (
    <>
      <ChosenBodies path={`${path}/bodies`} of={lane.name ?? lane.id} chosen={lane.bodies ?? []} all={words.bodies} />
      <p>
        <Sentence
          text={words.falls}
          figures={{
            falls: <Choose path={`${path}/falls`} label={words.whetherFalls} options={words.fallNames} unknown={words.fallsUnknown} />,
          }}
        />
      </p>
      <p>
        <Sentence
          text={words.follow}
          figures={{ gap: <Figure path={`${path}/followGap_mm`} label={words.followGap} missing={words.followUnknown} optional /> }}
        />
      </p>
      {lane.who !== 'people' && <BrakingWords path={`${path}/braking`} isThere={lane.braking !== undefined} />}
    </>
  )
}

function BrakingWords({ path, isThere }: { readonly path: string; readonly isThere: boolean }) {
  const words = useAround().calls
  const all = useWords()
  const reader = useReader()
  const asked = useAsked(path)
  const figureOf = (name: Braking) => ({
    label: words[name],
    kind: BRAKING[name],
    signed: name === 'gradient_percent',
    question: hardly(all, USUAL_IN_TIME[name], (value) => shownFigure(value, BRAKING[name], reader)),
  })
  const names = Object.keys(BRAKING) as Braking[]
  if (isThere)
    return (
      <>
        <p>
          <Sentence
            text={words.braking}
            figures={Object.fromEntries(names.map((name) => [name, <Figure key={name} path={`${path}/${name}`} {...figureOf(name)} />]))}
          />
        </p>
        <KnownFrom path={`${path}/source`} of={words.addBraking} />
      </>
    )
  if (asked.is)
    return (
      <Whole
        text={words.braking}
        place={path}
        called={words.addBraking}
        figures={Object.fromEntries(names.map((name) => [name, figureOf(name)]))}
        put={(draft, values) => putAt(draft, path, values)}
        onDone={asked.done}
      />
    )
  return (
    <div className="row">
      <button type="button" className="second" data-at={path} onClick={asked.ask}>
        {words.addBraking}
      </button>
    </div>
  )
}
