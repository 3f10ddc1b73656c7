import { useBegunIn } from '../entry/begun.ts'
import { Choose } from '../entry/choose.tsx'
import { Cross } from '../entry/cross.tsx'
import { hardly, USUAL_IN_TIME } from '../entry/doubts.ts'
import { Figure } from '../entry/figure.tsx'
import { type Kind, shownFigure } from '../entry/kinds.ts'
import { putAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import { Whole } from '../entry/whole.tsx'
import type { Draft } from '../store/contract.ts'
import { useAround } from '../words/around.ts'
import { useReader } from '../words/reader.ts'
import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'
import { AroundClosing, Slowing } from './cycle.tsx'
import { Group } from './group.tsx'
import { KnownFrom } from './known-from.tsx'

const PATH = 'survey/drive'
/** What its sentences ask for. */
const FIGURES = [
  ...(['closeSpeed_m_per_s', 'closeAccel_m_per_s2', 'stopDelay_s', 'stopDecel_m_per_s2', 'afterStop', 'reverseDelay_s'] as const),
  ...(['openSpeed_m_per_s', 'openAccel_m_per_s2', 'openDelay_s', 'holdOpen_s', 'movingMass_kg'] as const),
]

/** How the leaf is driven: each figure stands in a sentence; what is absent the findings ask for. */
export function DriveGroup() {
  const { drive, calls } = useAround()
  const words = { ...drive, ...calls }
  const of = (name: keyof typeof USUAL_IN_TIME, label: string, kind: Kind) => <DriveFigure name={name} label={label} kind={kind} />
  const known = useDoor().snapshot.file.survey.drive
  const { chapters } = useWords()
  const stated = FIGURES.filter((name) => known?.[name] !== undefined)
  const hasDrive = known !== undefined && Object.keys(known).length > 0
  const stopping = known?.brake === 'none' ? drive.stoppingFree : drive.stopping
  const figures = {
    closeSpeed: of('closeSpeed_m_per_s', words.closeSpeed, 'speed'),
    closeAccel: of('closeAccel_m_per_s2', words.closeAccel, 'acceleration'),
    closeJerk: of('closeJerk_m_per_s3', words.closeJerk, 'jerk'),
    stopDelay: of('stopDelay_s', words.stopDelay, 'seconds'),
    stopDecel: of('stopDecel_m_per_s2', words.stopDecel, 'acceleration'),
    afterStop: <Choose path={`${PATH}/afterStop`} label={words.afterStop} options={words.afterStops} />,
    reverseDelay: of('reverseDelay_s', words.reverseDelay, 'seconds'),
    openSpeed: of('openSpeed_m_per_s', words.openSpeed, 'speed'),
    openAccel: of('openAccel_m_per_s2', words.openAccel, 'acceleration'),
    openDelay: of('openDelay_s', words.openDelay, 'seconds'),
    holdOpen: of('holdOpen_s', words.holdOpen, 'seconds'),
    mass: of('movingMass_kg', words.mass, 'mass'),
  }
  return (
    <Group title={words.title} holds={[PATH]} said={chapters.known(stated.length, FIGURES.length)}>
      {[drive.closing, stopping, drive.opening, calls.words, drive.weight].map((text) => (
        <p key={text}>
          <Sentence text={text} figures={figures} />
        </p>
      ))}
      <Slowing />
      {hasDrive && <KnownFrom path={`${PATH}/source`} text={words.known} />}
      <AroundClosing />
      <Rows
        list="partialOpenings_mm"
        text={words.partial}
        add={words.addPartial}
        figures={{ way: { label: words.partialWay, kind: 'length' } }}
      />
      <Rows
        list="stoppingCurve"
        text={words.curve}
        add={words.addCurve}
        figures={{ at: { label: words.curveAt, kind: 'seconds' }, way: { label: words.curveWay, kind: 'length' } }}
      />
    </Group>
  )
}

function DriveFigure({ name, label, kind }: { readonly name: keyof typeof USUAL_IN_TIME; readonly label: string; readonly kind: Kind }) {
  const words = useWords()
  const facts = useAround().drive
  const reader = useReader()
  const question = hardly(words, USUAL_IN_TIME[name], (value) => shownFigure(value, kind, reader))
  const missing = name === 'closeJerk_m_per_s3' ? { missing: facts.atOnce } : {}
  return <Figure path={`${PATH}/${name}`} label={label} kind={kind} question={question} optional {...missing} />
}

interface RowsProps {
  readonly list: 'partialOpenings_mm' | 'stoppingCurve'
  readonly text: string
  readonly add: string
  readonly figures: Readonly<Record<string, { readonly label: string; readonly kind: Kind }>>
}

/** A list of figures, or of rows of them; a new row comes in whole. */
function Rows({ list, text, add, figures }: RowsProps) {
  const _words = useWords()
  const { door, snapshot } = useDoor()
  const path = `${PATH}/${list}`
  const begun = useBegunIn(path)
  const rows: readonly unknown[] = snapshot.file.survey.drive?.[list] ?? []
  const names = Object.keys(figures)
  const enter = (draft: Draft, values: Readonly<Record<string, number>>) => {
    const entered = names.map((name) => values[name] ?? 0)
    const row = names.length === 1 ? entered[0] : entered
    putAt(
      draft,
      path,
      [...structuredClone(rows), row].sort((a, b) => firstOf(a) - firstOf(b)),
    )
  }
  const remove = (index: number) =>
    door.edit({ deed: 'removed', path }, (draft) => {
      const left = structuredClone(rows).filter((_, i) => i !== index)
      putAt(draft, path, left.length > 0 ? left : undefined)
    })
  return (
    <>
      {rows.map((_, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: readings have no other name
        <div className="thing" key={i}>
          <p>
            <Sentence
              text={text}
              figures={Object.fromEntries(
                names.map((name, n) => [
                  name,
                  <Figure
                    key={name}
                    path={names.length === 1 ? `${path}/${i}` : `${path}/${i}/${n}`}
                    label={figures[name]?.label ?? name}
                    kind={figures[name]?.kind ?? 'length'}
                  />,
                ]),
              )}
            />
          </p>
          <Cross name={`${add} ${i + 1}`} onAway={() => remove(i)} />
        </div>
      ))}
      {begun.places.map((place) => (
        <Whole key={place} place={place} called={add} text={text} figures={figures} put={enter} onDone={begun.done} />
      ))}
      {begun.places.length === 0 && (
        <div className="row">
          <button type="button" className="second" onClick={begun.ask}>
            {add}
          </button>
        </div>
      )}
    </>
  )
}

function firstOf(row: unknown): number {
  return Number(Array.isArray(row) ? row[0] : row)
}
