import { useEffect, useRef, useState } from 'react'
import { Radio, RadioGroup } from 'react-aria-components'
import { type Kind, shownFigure } from '../entry/kinds.ts'
import { useReader } from '../words/reader.ts'
import { shownTime } from '../words/time.ts'
import { useWords } from '../words/words.ts'
import { Dial } from './dial.tsx'
import { useReading } from './listening.ts'
import { keepOwnError, LARGEST_ERROR_DEG, ownErrorOf } from './own-error.ts'
import { type Hold, turnedRound } from './rise.ts'
import type { LevelWish } from './wish.ts'

/** A hand that holds still against a housing stays within this. */
const STILL_DEG = 0.6

interface Props {
  readonly wish: LevelWish
  readonly kind: Kind
  /** What was taken, as it would be typed, and how far it is to be trusted. */
  readonly onTake: (text: string, said: string) => void
  readonly onBack: () => void
}

type Step = { readonly kind: 'measuring' } | { readonly kind: 'first' } | { readonly kind: 'second'; readonly first: Hold }

/** The device as a spirit level: held by an edge, read in degrees, turned round once to know its own error. */
export function Level({ wish, kind, onTake, onBack }: Props) {
  const words = useWords()
  const { level } = words
  const reader = useReader()
  const reading = useReading()
  const [end, setEnd] = useState(0)
  const [step, setStep] = useState<Step>({ kind: 'measuring' })
  const [told, setTold] = useState<string>()
  const start = useRef<HTMLParagraphElement>(null)
  useEffect(() => start.current?.focus(), [])

  const hold = reading.kind === 'held' ? reading : undefined
  const isStill = hold !== undefined && hold.spread_deg <= STILL_DEG
  const known = hold && step.kind === 'measuring' ? ownErrorOf(hold.edge) : undefined
  const rise_deg = hold && hold.rise_deg - (known?.error_deg ?? 0)
  const value = rise_deg === undefined ? undefined : wish.valueOf(end === 0 ? rise_deg : -rise_deg)
  const degrees = (angle_deg: number) => `${tenths(angle_deg).toFixed(1).replace('.', words.decimal)}°`

  const keep = () => {
    if (!hold || !isStill) return
    setTold(undefined)
    if (step.kind === 'first') return setStep({ kind: 'second', first: hold })
    if (step.kind !== 'second') return
    if (hold.edge !== step.first.edge) return setTold(level.otherEdge)
    const { error_deg } = turnedRound({ first_deg: step.first.rise_deg, second_deg: hold.rise_deg })
    if (Math.abs(error_deg) > LARGEST_ERROR_DEG) {
      setTold(level.tooFar(degrees(error_deg)))
      return setStep({ kind: 'first' })
    }
    keepOwnError(hold.edge, { error_deg, at_ms: Date.now() })
    setStep({ kind: 'measuring' })
  }
  const take = () => {
    if (value === undefined || !isStill) return
    onTake(tenths(value).toFixed(1).replace('.', words.decimal), known ? level.said.calibrated : level.said.notCalibrated)
  }
  const state = !hold
    ? level[reading.kind as 'waiting' | 'none' | 'flat']
    : !isStill
      ? level.unsteady
      : value === undefined
        ? level.outOfReach
        : level.steady(degrees(hold.spread_deg))
  const trust = known ? level.calibrated(degrees(known.error_deg), shownTime(known.at_ms).slice(0, 10)) : level.notCalibrated

  return (
    <div className="level">
      <p ref={start} tabIndex={-1} className="level-how">
        {step.kind === 'measuring' ? level.how : level[step.kind]}
      </p>
      {reading.kind !== 'none' && (
        <Dial hold={hold} rise_deg={rise_deg} shown={degrees} end={(step.kind === 'measuring' && wish.ends[end]) || ''} />
      )}
      <p className="level-state" role="status">
        {state}
      </p>
      {told !== undefined && (
        <p className="pad-doubt" role="alert">
          {told}
        </p>
      )}
      {step.kind === 'measuring' ? (
        <>
          {reading.kind !== 'none' && (
            <RadioGroup className="choice" aria-label={level.towards} value={String(end)} onChange={(chosen) => setEnd(Number(chosen))}>
              <span className="choice-label" aria-hidden="true">
                {level.towards}
              </span>
              <div className="switch level-ends">
                {wish.ends.map((words, i) => (
                  <Radio key={words} value={String(i)}>
                    {words}
                  </Radio>
                ))}
              </div>
            </RadioGroup>
          )}
          {wish.note !== undefined && <p className="quiet">{wish.note}</p>}
          {hold && (
            <p className="level-trust" data-calibrated={known !== undefined || undefined}>
              {trust}
            </p>
          )}
          <div className="row">
            {hold && (
              <button type="button" className="second" onClick={() => setStep({ kind: 'first' })}>
                {known ? level.calibrateAgain : level.calibrate}
              </button>
            )}
            <button type="button" className="second" onClick={onBack}>
              {level.back}
            </button>
          </div>
          {hold && (
            <div className="pad-done">
              <button type="button" className="primary" aria-disabled={!isStill || value === undefined} onClick={take}>
                {level.take(value === undefined ? '\u2013' : shownFigure(tenths(value), kind, reader))}
              </button>
            </div>
          )}
        </>
      ) : (
        <>
          <div className="row">
            <button type="button" className="second" onClick={() => setStep({ kind: 'measuring' })}>
              {level.cancel}
            </button>
          </div>
          <div className="pad-done">
            <button type="button" className="primary" aria-disabled={!isStill} onClick={keep}>
              {step.kind === 'first' ? level.keepFirst : level.keepSecond}
            </button>
          </div>
        </>
      )}
    </div>
  )
}

/** To one decimal; never minus zero. */
function tenths(value: number): number {
  return Math.round(value * 10) / 10 + 0
}
