import { passingBodies } from '@sillsight/document'
import { called } from '@sillsight/report'
import { useState } from 'react'
import { Choose } from '../entry/choose.tsx'
import { hardly, USUAL_IN_TIME } from '../entry/doubts.ts'
import { Figure } from '../entry/figure.tsx'
import { type Kind, shownFigure } from '../entry/kinds.ts'
import { useListed } from '../entry/listed.ts'
import { Pick } from '../entry/pick.tsx'
import { putAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import { Whole } from '../entry/whole.tsx'
import { Explained } from '../help/explained.tsx'
import { Icon } from '../look/icons.tsx'
import type { Draft } from '../store/contract.ts'
import { useAround } from '../words/around.ts'
import { useReader } from '../words/reader.ts'
import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'

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
      <LaneBodies path={path} name={lane.name ?? lane.id} chosen={lane.bodies ?? []} />
      <p>
        <Sentence
          text={words.falls}
          figures={{
            falls: <Choose path={`${path}/falls`} label={words.whetherFalls} options={words.fallNames} unknown={words.fallsUnknown} />,
          }}
        />
      </p>
      {lane.who !== 'people' && <BrakingWords path={`${path}/braking`} isThere={lane.braking !== undefined} />}
    </>
  )
}

/** The bodies that stand in for whoever passes; a new one comes out of the invented ones that pass, and into the door with the lane. */
function LaneBodies({ path, name, chosen }: { readonly path: string; readonly name: string; readonly chosen: readonly string[] }) {
  const words = useAround().calls
  const reader = useReader()
  const { door, snapshot, answers } = useDoor()
  const listed = useListed(`${path}/bodies`)
  const own = snapshot.file.bodies ?? []
  const offered = new Map(passingBodies().map((body) => [body.id, body.name]))
  const nameOf = (id: string) => {
    const shown = answers.shown?.door.bodies.find((body) => body.id === id)?.name
    const use = own.find((body) => body.id === id)?.use ?? id
    return called(shown ?? offered.get(use) ?? id, reader)
  }
  const all = [...new Set([...own.map(({ id }) => id), ...offered.keys()])].filter((id) => !chosen.includes(id))
  const add = (id: string) =>
    door.edit({ deed: 'added', path: `${path}/bodies`, name: nameOf(id) }, (draft) => {
      bring(draft, id)
      putAt(draft, `${path}/bodies`, [...chosen, id])
    })
  return (
    <>
      <p>
        <Explained text={chosen.length === 0 ? words.bodies : words.chosen} />
      </p>
      {chosen.map((id, i) => (
        <div className="thing chosen" key={id}>
          <span>{nameOf(id)}</span>
          <button
            type="button"
            className="quiet-button"
            aria-label={words.removeBody(nameOf(id), name)}
            onClick={() => listed.remove(i, nameOf(id), true)}
          >
            <Icon name="cross" />
          </button>
        </div>
      ))}
      <Pick label={words.addBody} at={`${path}/bodies`} options={Object.fromEntries(all.map((id) => [id, nameOf(id)]))} onPick={add} />
    </>
  )
}

/** A body of the library in the door; the one that was assumed so far is written beside it, so that zones keep theirs. */
function bring(draft: Draft, id: string): void {
  const made = { id, use: id }
  if (draft.bodies === undefined) putAt(draft, 'bodies', [{ id: REFERENCE, use: REFERENCE }, made])
  else if (!draft.bodies.some((body) => body.id === id)) (draft.bodies as unknown[]).push(made)
}
const REFERENCE = 'presence-reference-body'

function BrakingWords({ path, isThere }: { readonly path: string; readonly isThere: boolean }) {
  const words = useAround().calls
  const all = useWords()
  const reader = useReader()
  const { door } = useDoor()
  const [asked, setAsked] = useState(false)
  const figureOf = (name: Braking) => ({
    label: words[name],
    kind: BRAKING[name],
    signed: name === 'gradient_percent',
    question: hardly(all, USUAL_IN_TIME[name], (value) => shownFigure(value, BRAKING[name], reader)),
  })
  const names = Object.keys(BRAKING) as Braking[]
  if (isThere)
    return (
      <p>
        <Sentence
          text={words.braking}
          figures={Object.fromEntries(names.map((name) => [name, <Figure key={name} path={`${path}/${name}`} {...figureOf(name)} />]))}
        />
      </p>
    )
  if (asked)
    return (
      <Whole
        text={words.braking}
        at={path}
        figures={Object.fromEntries(names.map((name) => [name, figureOf(name)]))}
        onWhole={(values) => door.edit({ deed: 'set', path }, (draft) => putAt(draft, path, values))}
      />
    )
  return (
    <div className="row">
      <button type="button" className="second" data-at={path} onClick={() => setAsked(true)}>
        {words.addBraking}
      </button>
    </div>
  )
}
