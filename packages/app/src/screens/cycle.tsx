import { Choose } from '../entry/choose.tsx'
import { hardly, USUAL_IN_TIME } from '../entry/doubts.ts'
import { Figure } from '../entry/figure.tsx'
import { shownFigure } from '../entry/kinds.ts'
import { putAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import { useAround } from '../words/around.ts'
import { useReader } from '../words/reader.ts'
import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'

const DRIVE = 'survey/drive'
const CYCLE = `${DRIVE}/cycle`

/** How the leaf comes to rest: by a brake, or by friction. What belongs to the other way leaves the door with it. */
export function Slowing() {
  const words = useAround().cycle
  const { door, snapshot } = useDoor()
  const choose = (brake: 'brakes' | 'none') =>
    door.edit({ deed: 'set', path: `${DRIVE}/brake`, typed: words.brakes[brake] }, (draft) => {
      putAt(draft, `${DRIVE}/brake`, brake)
      for (const name of brake === 'none' ? ['stopDecel_m_per_s2'] : ['coastDecel_m_per_s2', 'coastWay_mm'])
        putAt(draft, `${DRIVE}/${name}`, undefined)
    })
  const drive = snapshot.file.survey.drive
  const figures = {
    brake: <Choose path={`${DRIVE}/brake`} label={words.brake} options={words.brakes} onChoose={choose} />,
    coastDecel: <Figure path={`${DRIVE}/coastDecel_m_per_s2`} label={words.coastDecel} kind="acceleration" optional />,
    coastWay: <Figure path={`${DRIVE}/coastWay_mm`} label={words.coastWay} optional />,
  }
  const measured = drive?.coastWay_mm === undefined ? words.coastingAt : words.coastingBy
  return (
    <p>
      <Sentence text={words.slowing} figures={figures} />{' '}
      {drive?.brake === 'none' && (
        <Sentence
          text={drive.coastDecel_m_per_s2 === undefined && drive.coastWay_mm === undefined ? words.coasting : measured}
          figures={figures}
        />
      )}
    </p>
  )
}

/** What the control does around a closing: nothing of it has to be known, and each sentence asks only for what can be true beside the others. */
export function AroundClosing() {
  const words = useAround().cycle
  const { door, snapshot } = useDoor()
  const { holdOpen_s, cycle = {}, afterStop, partialOpenings_mm = [] } = snapshot.file.survey.drive ?? {}
  const choice = <T extends string>(name: string, label: string, options: Readonly<Record<T, string>>) => (
    <Choose path={`${CYCLE}/${name}`} label={label} options={options} />
  )
  const figures = {
    holdOpenFrom: choice('holdOpenFrom', words.holdOpenFrom, words.holdOpenFroms),
    byTimer: choice('closesOnlyByTimer', words.byTimer, words.byTimers),
    preWarning: <Seconds path={`${CYCLE}/preWarning_s`} label={words.preWarning} usual="preWarning_s" />,
    inWarning: choice('outputInWarning', words.inWarning, words.inWarnings),
    attempts: (
      <Figure
        path={`${CYCLE}/attempts`}
        label={words.attempts}
        kind="count"
        optional
        put={(draft, value) => {
          putAt(draft, `${CYCLE}/attempts`, value)
          if (!value) for (const name of ['attemptPause_s', 'attemptWhileHeld']) putAt(draft, `${CYCLE}/${name}`, undefined)
        }}
      />
    ),
    pause: <Seconds path={`${CYCLE}/attemptPause_s`} label={words.pause} usual="holdOpen_s" />,
    whileHeld: choice('attemptWhileHeld', words.whileHeld, words.whileHelds),
    afterAttempts: choice('afterAttempts', words.afterAttempts, partialOpenings_mm.length > 0 ? words.afterAll : words.afterAllOpen),
  }
  const said = [
    words.holding,
    ...(holdOpen_s === undefined ? [] : [words.commanding]),
    words.warning,
    ...(cycle.preWarning_s === undefined ? [] : [words.duringWarning]),
    ...(afterStop === 'stay' ? [] : [words.trying]),
    ...(cycle.attempts ? [words.eachAttempt] : []),
  ]
  return (
    <>
      {said.map((text) => (
        <p key={text}>
          <Sentence text={text} figures={figures} />
        </p>
      ))}
      {Object.keys(cycle).length > 0 && (
        <div className="row">
          <button
            type="button"
            className="second"
            disabled={snapshot.readOnly !== undefined}
            onClick={() => door.edit({ deed: 'removed', path: CYCLE }, (draft) => putAt(draft, CYCLE, undefined))}
          >
            {words.forget}
          </button>
        </div>
      )}
    </>
  )
}

function Seconds({ path, label, usual }: { readonly path: string; readonly label: string; readonly usual: 'holdOpen_s' | 'preWarning_s' }) {
  const words = useWords()
  const reader = useReader()
  const question = hardly(words, USUAL_IN_TIME[usual], (value) => shownFigure(value, 'seconds', reader))
  return <Figure path={path} label={label} kind="seconds" question={question} optional />
}
