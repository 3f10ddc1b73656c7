import { useState } from 'react'
import { Choose } from '../entry/choose.tsx'
import { Cross } from '../entry/cross.tsx'
import { hardly, USUAL_MM } from '../entry/doubts.ts'
import { Figure } from '../entry/figure.tsx'
import { freeId } from '../entry/free-id.ts'
import { shownFigure } from '../entry/kinds.ts'
import { useListed } from '../entry/listed.ts'
import { Name } from '../entry/name.tsx'
import { Pick } from '../entry/pick.tsx'
import { putAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import { useFacts } from '../words/facts.ts'
import { useReader } from '../words/reader.ts'
import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'
import { Lead } from './chapter.tsx'
import { Guards } from './guards.tsx'
import { dangersToLookFor } from './known.ts'

const PATH = 'survey/dangers'
const KINDS = ['tail', 'sweep', 'hinge', 'folding', 'draw-in', 'lifting', 'secondary-edge', 'leaf-opening'] as const
type Kind = (typeof KINDS)[number]

/** Where the leaf can hurt somebody otherwise: first what to look for with such a leaf, then each place that was found, with what is done against it. */
export function Dangers() {
  const words = useFacts().dangers
  const { door, snapshot } = useDoor()
  const listed = useListed(`${PATH}/points`)
  const points = snapshot.file.survey.dangers?.points ?? []
  const [made, setMade] = useState<string>()
  const add = (kind: Kind) => {
    const name = words.kinds[kind]
    const id = freeId(
      kind,
      points.map((point) => point.id),
    )
    setMade(id)
    door.edit({ deed: 'added', path: `${PATH}/points`, name }, (draft) => {
      const none = draft.survey.dangers?.none
      if (none?.includes(kind))
        putNone(
          draft,
          none.filter((each) => each !== kind),
        )
      if (draft.survey.dangers?.points === undefined) putAt(draft, `${PATH}/points`, [{ id, kind }])
      else (draft.survey.dangers.points as unknown[]).push({ id, kind })
    })
  }
  return (
    <>
      <Lead text={words.lead} />
      <LookedFor onThere={add} />
      {points.map((point, i) => (
        <Point key={point.id} index={i} isNew={point.id === made} onRemove={(name) => listed.remove(i, name)} />
      ))}
      <Pick label={words.add} options={words.kinds} at={`${PATH}/points`} onPick={add} />
    </>
  )
}

/** For each kind that such a leaf can have: whether somebody looked. */
function LookedFor({ onThere }: { readonly onThere: (kind: Kind) => void }) {
  const words = useFacts().dangers
  const { door, snapshot } = useDoor()
  const { expected } = dangersToLookFor(snapshot.file)
  const { dangers } = snapshot.file.survey
  const none = dangers?.none ?? []
  if (expected.length === 0) return <p>{words.noLeaf}</p>
  const say = (kind: Kind, answer: string | undefined) => {
    if (answer === 'there') return onThere(kind)
    const next = answer === 'none' ? [...none, kind] : none.filter((each) => each !== kind)
    door.edit(
      { deed: 'set', path: PATH, name: words.kinds[kind], typed: answer === 'none' ? words.answers.none : words.unlooked },
      (draft) => putNone(draft, next),
    )
  }
  return expected
    .filter((kind) => !dangers?.points?.some((point) => point.kind === kind))
    .map((kind) => (
      <p key={kind} className="looked">
        <Sentence
          text={words.looked}
          figures={{
            kind: words.kinds[kind],
            answer: (
              <Choose
                path={`${PATH}/none/${kind}`}
                label={words.answer(words.kinds[kind])}
                options={words.answers}
                unknown={words.unlooked}
                waiting={none.includes(kind) ? 'none' : undefined}
                onChoose={(answer) => say(kind, answer)}
                onUnknown={() => say(kind, undefined)}
              />
            ),
          }}
        />
      </p>
    ))
}

function putNone(draft: Parameters<typeof putAt>[0], next: readonly Kind[]): void {
  putAt(draft, `${PATH}/none`, next.length > 0 ? [...next] : undefined)
}

/** Kinds at which a gap says nothing: what rides up, and what reaches through the leaf. */
const WITHOUT_GAP: readonly Kind[] = ['lifting', 'leaf-opening']

function Point({ index, isNew, onRemove }: { readonly index: number; readonly isNew: boolean; readonly onRemove: (name: string) => void }) {
  const words = useFacts().dangers
  const all = useWords()
  const reader = useReader()
  const { door, snapshot } = useDoor()
  const path = `${PATH}/points/${index}`
  const point = snapshot.file.survey.dangers?.points?.[index]
  if (!point) return null
  const { kind } = point
  const obstacles = snapshot.file.survey.obstacles ?? []
  const runs = kind === 'tail' || kind === 'sweep'
  const computed = runs && point.obstacle !== undefined
  const name = point.name ?? words.kinds[kind]
  const doubt = hardly(all, USUAL_MM.dangerGap, (value) => shownFigure(value, 'length', reader))
  const figures = {
    kind: <Choose path={`${path}/kind`} label={words.kind} options={words.short} />,
    from: <Figure path={`${path}/from_mm`} label={words.from} missing={words.atFloor} optional />,
    part: <Choose path={`${path}/part`} label={words.part} options={words.parts} unknown={words.partUnknown} />,
    gap: <Figure path={`${path}/gap_mm`} label={words.gap} question={doubt} optional />,
    obstacle: (
      <Choose
        path={`${path}/obstacle`}
        label={words.obstacle}
        options={Object.fromEntries(obstacles.map(({ id, name: called = id }) => [id, called]))}
        unknown={words.noObstacle}
      />
    ),
    x: <Figure path={`${path}/x_mm`} label={words.x} missing={words.unplaced} signed optional />,
    y: <Figure path={`${path}/y_mm`} label={words.y} missing={words.unplaced} signed optional />,
  }
  return (
    <div className="thing danger" data-new={isNew || undefined}>
      <div>
        <h3>
          <Name path={`${path}/name`} label={all.measure.nameOf} missing={words.kinds[kind]} />
        </h3>
        {runs && obstacles.length > 0 && (
          <p>
            <Sentence text={words.against} figures={figures} />
          </p>
        )}
        {!computed && (
          <p>
            <Sentence text={words.words} figures={figures} />
          </p>
        )}
        {!WITHOUT_GAP.includes(kind) && (
          <p>
            <Sentence text={computed ? words.computed : words.getIn} figures={figures} />
          </p>
        )}
        <Guards path={`${path}/guards`} of={name} />
      </div>
      <Cross name={name} disabled={door === undefined} onAway={() => onRemove(name)} />
    </div>
  )
}
