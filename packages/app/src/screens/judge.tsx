import { useMemo, useState } from 'react'
import { Stage } from '../drawing/stage.tsx'
import { Findings } from '../findings/findings.tsx'
import { useDoor } from './at-door.ts'

/** Will it work? The drawing is the stage; findings answer beside it. */
export function JudgeScreen() {
  const { answers } = useDoor()
  const [pointed, setPointed] = useState<string>()
  const [time, setTime] = useState<{ readonly finding: string; readonly at_s: number }>()
  const findings = answers.shown?.judgement.findings
  const finding = findings?.find(({ id }) => id === (time?.finding ?? pointed))
  const timed = finding !== undefined && finding.id === time?.finding ? finding : undefined
  const moment = useMemo(
    () => timed?.course && time && { finding: timed.id, course: timed.course, state: timed.state, at_s: time.at_s },
    [timed, time],
  )
  const zone = finding?.subject.kind === 'zone' || finding?.subject.kind === 'pocket' ? finding.subject.id.split('/')[0] : undefined
  return (
    <main className="stage-and-words" data-part="judge">
      <Stage first="plan" grips={false} state={finding?.state} zone={zone} moment={moment} />
      <Findings pointed={pointed} onPoint={setPointed} time={time} onTime={setTime} />
    </main>
  )
}
